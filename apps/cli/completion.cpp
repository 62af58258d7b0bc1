#include "completion.hpp"

#include <algorithm>

#include "commands.hpp"

namespace holdback::cli {

namespace {

std::vector<std::string> parts(const std::string& names) {
  std::vector<std::string> out;
  std::size_t start = 0;
  for (auto comma = names.find(','); comma != std::string::npos; comma = names.find(',', start)) {
    out.push_back(names.substr(start, comma - start));
    start = comma + 1;
  }
  out.push_back(names.substr(start));
  return out;
}

std::string joined(const std::vector<std::string>& words, const std::string& between) {
  std::string out;
  for (const auto& word : words) out += (out.empty() ? "" : between) + word;
  return out;
}

std::string all_names(const std::vector<Option>& options) {
  std::vector<std::string> names;
  names.reserve(options.size());
  for (const auto& option : options) names.push_back(joined(parts(option.names), " "));
  return joined(names, " ");
}

std::string command_names() {
  std::vector<std::string> names;
  for (const auto& command : commands()) names.push_back(command.name);
  return joined(names, " ");
}

std::string bash_reply(Completes completes, const std::vector<std::string>& words) {
  if (completes == Completes::file) return R"(compopt -o filenames; mapfile -t COMPREPLY < <(compgen -f -- "$word"))";
  if (completes == Completes::words)
    return R"(mapfile -t COMPREPLY < <(compgen -W ")" + joined(words, " ") + R"(" -- "$word"))";
  return ":";
}

/// The words of all arguments of a command, and files when one of them is a file.
std::string bash_arguments(const Command& command) {
  std::vector<std::string> words;
  for (const auto& argument : command.arguments) {
    if (argument.completes == Completes::file) return bash_reply(Completes::file, {});
    words.insert(words.end(), argument.words.begin(), argument.words.end());
  }
  return bash_reply(Completes::words, words);
}

std::string bash_command(const Command& command) {
  std::string out = "    " + command.name + ")\n      case $before in\n";
  for (const auto& option : command.options) {
    if (option.value.empty()) continue;
    out += "        " + joined(parts(option.names), "|") + ") " + bash_reply(option.completes, option.words) +
           "; return ;;\n";
  }
  out += "      esac\n      if [[ $word == -* ]]; then\n        ";
  out += bash_reply(Completes::words, {all_names(command.options)});
  return out + "\n      else\n        " + bash_arguments(command) + "\n      fi ;;\n";
}

/// Help inside a zsh specification: what ends it or splits it is escaped.
std::string zsh_text(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '\'') {
      out += "'\\''";
      continue;
    }
    if (c == '[' || c == ']' || c == ':' || c == '\\') out += '\\';
    out += c;
  }
  return out;
}

std::string zsh_action(Completes completes, const std::vector<std::string>& words) {
  if (completes == Completes::file) return "_files";
  return completes == Completes::words ? "(" + joined(words, " ") + ")" : " ";
}

std::string zsh_option(const Option& option) {
  std::string out;
  for (const auto& name : parts(option.names)) {
    out += " \\\n        '" + name + "[" + zsh_text(option.help) + "]";
    if (!option.value.empty()) out += ":" + zsh_text(option.value) + ":" + zsh_action(option.completes, option.words);
    out += "'";
  }
  return out;
}

std::string zsh_command(const Command& command) {
  std::string out = "    " + command.name + ")\n      _arguments";
  for (const auto& option : command.options) out += zsh_option(option);
  for (const auto& argument : command.arguments) {
    out += " \\\n        ':" + zsh_text(argument.name) + ":" + zsh_action(argument.completes, argument.words) + "'";
  }
  return out + " ;;\n";
}

}  // namespace

std::string bash_completion() {
  std::string out =
      "# Completion of holdback for bash; written by: holdback describe completion bash\n"
      "_holdback() {\n"
      "  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}\n"
      "  COMPREPLY=()\n"
      "  if ((COMP_CWORD == 1)); then\n    ";
  out += bash_reply(Completes::words, {command_names(), all_names(general_options())});
  out += "\n    return\n  fi\n  case ${COMP_WORDS[1]} in\n";
  for (const auto& command : commands()) out += bash_command(command);
  return out + "  esac\n}\ncomplete -F _holdback holdback\n";
}

std::string zsh_completion() {
  std::string out =
      "#compdef holdback\n"
      "# Completion of holdback for zsh; written by: holdback describe completion zsh\n"
      "_holdback() {\n"
      "  if ((CURRENT == 2)); then\n    local -a names=(";
  for (const auto& command : commands()) out += "\n      '" + command.name + ":" + zsh_text(command.summary) + "'";
  out += ")\n    _describe command names\n    return\n  fi\n";
  out += "  shift words\n  ((CURRENT--))\n  case $words[1] in\n";
  for (const auto& command : commands()) out += zsh_command(command);
  return out +
         "  esac\n}\nif [[ $funcstack[1] == _holdback ]]; then _holdback \"$@\"; else compdef _holdback holdback; fi\n";
}

}  // namespace holdback::cli
