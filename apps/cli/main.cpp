// holdback: arguments → settings → command → exit code.
#include <csignal>
#include <cstdio>
#include <exception>
#include <string>
#include <vector>

#include "commands.hpp"
#include "help.hpp"
#include "host.hpp"
#include "parse.hpp"

namespace {

using namespace holdback::cli;

enum Exit { done = 0, bad_input = 2, internal = 3 };

int run(const Settings& settings) {
  const auto* command = find_command(settings.command);
  if (settings.version) {
    write("holdback " HOLDBACK_VERSION "\n", settings);
  } else if (settings.help) {
    write(command != nullptr ? help(*command) : overview(), settings);
  } else if (command != nullptr) {
    return command->run(settings);
  } else {
    std::fputs(overview().c_str(), stderr);
    return bad_input;
  }
  return done;
}

}  // namespace

int main(int argc, char** argv) {
  std::signal(SIGPIPE, SIG_IGN);  // a reader that went away is met where the output is written
  try {
    return run(parse(std::vector<std::string>(argv + 1, argv + argc)));
  } catch (const Refusal& refusal) {
    std::fprintf(stderr, "holdback: %s\nTry: holdback --help\n", refusal.what());
    return bad_input;
  } catch (const std::exception& fault) {
    std::fprintf(stderr, "holdback: a fault of the program itself: %s\n", fault.what());
    return internal;
  }
}
