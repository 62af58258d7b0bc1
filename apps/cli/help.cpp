#include "help.hpp"

#include "holdback/draw/cells.hpp"

namespace holdback::cli {

namespace {

constexpr int width = 96;

/// "  name   text", the text wrapped beside the name.
std::string entry(const std::string& name, const std::string& text, int room) {
  std::string out;
  for (const auto& line : draw::wrapped(text, width - room - 4)) {
    out += "  " + draw::pad_right(out.empty() ? name : "", room) + "  " + line + "\n";
  }
  return out;
}

std::string paragraph(const std::string& text) {
  std::string out;
  for (const auto& line : draw::wrapped(text, width)) out += line + "\n";
  return out;
}

std::string option_name(const Option& option) {
  std::string name = option.names;
  for (auto at = name.find(','); at != std::string::npos; at = name.find(',', at + 2)) name.replace(at, 1, ", ");
  return name + (option.value.empty() ? "" : " " + option.value);
}

std::string options_text(const std::vector<Option>& options) {
  int room = 0;
  for (const auto& option : options) room = std::max(room, draw::columns(option_name(option)));
  std::string out = "\nOptions:\n";
  for (const auto& option : options) out += entry(option_name(option), option.help, room);
  return out;
}

std::string group_text(const HelpGroup& group) {
  int room = 0;
  for (const auto& each : group.entries) room = std::max(room, draw::columns(each.call));
  std::string out = "\n" + group.title + ":\n";
  for (const auto& each : group.entries) out += entry(each.call, each.what, room);
  return out;
}

std::string samples_text(const std::vector<Sample>& samples) {
  std::string out = "\nExamples:\n";
  for (const auto& sample : samples) out += "  " + sample.call + "\n      " + sample.what + "\n";
  return out;
}

}  // namespace

std::string usage(const Command& command) {
  std::string out = "holdback " + command.name;
  for (const auto& argument : command.arguments)
    out +=
        argument.required ? " " + argument.name : " [" + argument.name + (argument.several != nullptr ? "...]" : "]");
  return out + " [options]";
}

std::string help(const Command& command) {
  std::string out = "holdback " + command.name + ": " + command.summary + "\n\nusage: " + usage(command) + "\n\n";
  out += paragraph(command.description);
  out += "\nArguments:\n";
  for (const auto& argument : command.arguments) out += entry(argument.name, argument.help, 8);
  for (const auto& group : command.groups) out += group_text(group);
  out += options_text(command.options);
  out += samples_text(command.samples);
  out += "\nExit codes:\n";
  for (const auto& code : command.codes) out += entry(std::to_string(code.code), code.meaning, 2);
  return out;
}

std::string overview() {
  std::string out = "holdback: " + purpose() + "\n\nusage: holdback COMMAND [arguments] [options]\n\nCommands:\n";
  for (const auto& command : commands()) out += entry(command.name, command.summary, 9);
  out += options_text(general_options());
  out += "\nEnvironment:\n";
  for (const auto& variable : variables()) out += entry(variable.name, variable.help, 14);
  out += samples_text({{"holdback example label-slitter --out stand.toml", "an invented stand to edit"},
                       {"holdback check stand.toml", "is it read as meant?"},
                       {"holdback size stand.toml", "the fit for the mix of jobs"},
                       {"holdback size --help", "all about one command"}});
  return out;
}

}  // namespace holdback::cli
