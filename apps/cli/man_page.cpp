#include "man_page.hpp"

#include "commands.hpp"
#include "help.hpp"

namespace holdback::cli {

namespace {

/// Text that roff shows as it is.
std::string literal(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\') {
      out += "\\e";
    } else if (c == '-') {
      out += "\\-";
    } else {
      out += c;
    }
  }
  if (!out.empty() && (out[0] == '.' || out[0] == '\'')) out.insert(0, "\\&");
  return out;
}

std::string section(const std::string& name) { return ".SH " + name + "\n"; }

std::string tagged(const std::string& tag, const std::string& text) {
  return ".TP\n" + tag + "\n" + literal(text) + "\n";
}

std::string bold(const std::string& text) { return "\\fB" + literal(text) + "\\fR"; }

std::string tag_of(const Option& option) {
  return bold(option.names) + (option.value.empty() ? "" : " \\fI" + literal(option.value) + "\\fR");
}

std::string command_text(const Command& command) {
  std::string out = ".SS " + literal(usage(command)) + "\n" + literal(command.description) + "\n";
  for (const auto& argument : command.arguments) out += tagged("\\fI" + literal(argument.name) + "\\fR", argument.help);
  for (const auto& option : command.options) out += tagged(tag_of(option), option.help);
  for (const auto& group : command.groups) {
    out += ".PP\n" + literal(group.title) + ":\n";
    for (const auto& each : group.entries) out += tagged(bold(each.call), each.what);
  }
  return out;
}

std::string samples_text() {
  std::string out;
  for (const auto& command : commands()) {
    for (const auto& sample : command.samples) out += tagged(bold(sample.call), sample.what);
  }
  return out;
}

/// Each exit code once, with every meaning it has.
std::string codes_text() {
  std::string out;
  for (const auto& code : find_command("size")->codes) out += tagged(bold(std::to_string(code.code)), code.meaning);
  return out;
}

}  // namespace

std::string man_page() {
  std::string out = ".TH HOLDBACK 1 \"\" \"holdback " HOLDBACK_VERSION "\" \"User Commands\"\n";
  out += section("NAME") + "holdback \\- " + literal(purpose()) + "\n";
  out += section("SYNOPSIS");
  for (const auto& command : commands()) out += bold(usage(command)) + "\n.br\n";
  out += section("DESCRIPTION") +
         literal(
             "Holdback reads a stand file (TOML) that describes an unwind with its air supply, line, webs, rolls, jobs "
             "and "
             "candidate brakes, and answers in tables, JSON, CSV or a workbook (.xlsx). Every answer names its "
             "assumptions and cautions.") +
         "\n";
  out += section("COMMANDS");
  for (const auto& command : commands()) out += command_text(command);
  out += section("ENVIRONMENT");
  for (const auto& variable : variables()) out += tagged(bold(variable.name), variable.help);
  out += section("EXIT STATUS") + codes_text();
  out += section("EXAMPLES") + samples_text();
  return out;
}

}  // namespace holdback::cli
