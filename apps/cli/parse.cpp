#include "parse.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <charconv>

#include "commands.hpp"
#include "holdback/units/near_miss.hpp"
#include "holdback/units/units.hpp"

namespace holdback::cli {

namespace {

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (const auto& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

/// ": did you mean X?" when a word is near; empty otherwise.
std::string suggestion(const std::string& wrong, const std::vector<std::string>& words) {
  const std::string* best = nullptr;
  std::size_t least = std::max<std::size_t>(wrong.size() / 3, 1) + 1;
  for (const auto& word : words) {
    const bool begun = wrong.size() > 2 && word.rfind(wrong, 0) == 0;
    const auto distance = begun ? 0 : units::edit_distance(wrong, word);
    if (distance < least) {
      least = distance;
      best = &word;
    }
  }
  return best == nullptr ? std::string{} : "; did you mean " + *best + "?";
}

std::vector<std::string> option_names(const std::vector<Option>& options) {
  std::vector<std::string> names;
  for (const auto& option : options) {
    for (const auto& name : CLI::detail::split(option.names, ',')) names.push_back(name);
  }
  return names;
}

int whole_number(const std::string& text, const std::string& name) {
  int value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (read.ec != std::errc{} || read.ptr != text.data() + text.size() || value < 1 || value > 1024) {
    throw Refusal(name + ": a whole number from 1 on is needed, not '" + text + "'");
  }
  return value;
}

double ratio(const std::string& text, const std::string& name) {
  const auto read = units::parse(text, Quantity::ratio);
  if (const auto* fault = std::get_if<units::Fault>(&read)) {
    throw Refusal(name + ": " + fault->what + "; accepted: " + fault->accepted);
  }
  return std::get<double>(read);
}

/// Gives an option its value, as the kind of its target asks.
struct Setter {
  Settings& settings;
  const Option& option;
  const std::string& text;

  void operator()(bool Settings::*member) const { settings.*member = true; }
  void operator()(std::string Settings::*member) const {
    if (!option.words.empty() && std::find(option.words.begin(), option.words.end(), text) == option.words.end()) {
      throw Refusal(option.names + ": '" + text + "' is not one of " + listed(option.words) +
                    suggestion(text, option.words));
    }
    settings.*member = text;
  }
  void operator()(std::optional<int> Settings::*member) const { settings.*member = whole_number(text, option.names); }
  void operator()(std::optional<double> Settings::*member) const { settings.*member = ratio(text, option.names); }
};

void add(CLI::App& app, const Option& option, Settings& settings) {
  if (std::holds_alternative<bool Settings::*>(option.target)) {
    app.add_flag(option.names, settings.*std::get<bool Settings::*>(option.target));
    return;
  }
  app.add_option_function<std::string>(option.names,
                                       [&](const std::string& text) {
                                         std::visit(Setter{settings, option, text}, option.target);
                                       })
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeLast)
      ->type_name(option.value);
}

void add(CLI::App& app, const Command& command, Settings& settings) {
  auto* sub = app.add_subcommand(command.name);
  sub->set_help_flag();
  sub->allow_extras();
  sub->positionals_at_end(false);
  for (const auto& argument : command.arguments) {
    if (argument.several != nullptr)
      sub->add_option(argument.name, settings.*argument.several);
    else
      sub->add_option(argument.name, settings.*argument.target);
  }
  for (const auto& option : command.options) add(*sub, option, settings);
}

/// The name of an option without "=value".
std::string bare(const std::string& word) { return word.substr(0, word.find('=')); }

void refuse_extra(const std::string& word, const Command* command) {
  const bool option = word.size() > 1 && word[0] == '-';
  if (option) {
    const auto known = option_names(command != nullptr ? command->options : general_options());
    throw Refusal("unknown option " + bare(word) + suggestion(bare(word), known));
  }
  if (command != nullptr) throw Refusal("'" + word + "' is one argument too many");
  std::vector<std::string> names;
  for (const auto& each : commands()) names.push_back(each.name);
  throw Refusal("unknown command '" + word + "'" + suggestion(word, names) + " There are: " + listed(names));
}

/// What CLI11 cannot know: arguments that are due, words of an argument, options that exclude each other.
void check(const Settings& settings, const Command& command) {
  for (const auto& argument : command.arguments) {
    if (argument.several != nullptr) continue;
    const auto& value = settings.*argument.target;
    if (argument.required && value.empty())
      throw Refusal(command.name + " needs " + argument.name + ": " + argument.help);
    if (value.empty() || argument.words.empty()) continue;
    if (std::find(argument.words.begin(), argument.words.end(), value) == argument.words.end()) {
      throw Refusal("'" + value + "' is not one of " + listed(argument.words) + suggestion(value, argument.words));
    }
  }
  if (!settings.sheet.empty() && settings.jobs.empty())
    throw Refusal("--sheet goes with --jobs, and names a sheet of it");
  if (settings.json && settings.csv) throw Refusal("--json and --csv exclude each other");
  if (settings.file == "-" && settings.jobs == "-") throw Refusal("only one of FILE and --jobs can be standard input");
}

}  // namespace

Settings parse(const std::vector<std::string>& arguments) {
  Settings settings;
  CLI::App app;
  app.set_help_flag();
  app.allow_extras();
  app.require_subcommand(0, 1);
  for (const auto& option : general_options()) add(app, option, settings);
  for (const auto& command : commands()) add(app, command, settings);
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::ParseError& error) {
    throw Refusal(error.what());
  }
  const auto chosen = app.get_subcommands();
  if (!chosen.empty()) settings.command = chosen.front()->get_name();
  const auto* command = find_command(settings.command);
  for (const auto& word : app.remaining(true)) refuse_extra(word, command);
  if (command != nullptr && !settings.help && !settings.version) check(settings, *command);
  return settings;
}

}  // namespace holdback::cli
