// The one table of commands. The parser, the help, the man page and the completions are all derived from it.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "settings.hpp"

namespace holdback::cli {

/// Where an option's value goes, and by that what it must be: a switch, text, a whole number, a ratio.
using Target = std::variant<bool Settings::*, std::string Settings::*, std::optional<int> Settings::*,
                            std::optional<double> Settings::*>;

/// What may stand for a value, for the completion.
enum class Completes { nothing, file, words };

/// An option by its names ("--help,-h"), with the name of its value and the words it accepts, if it accepts only some.
struct Option {
  std::string names{};
  std::string value{};
  std::string help{};
  Target target{};
  Completes completes{Completes::nothing};
  std::vector<std::string> words{};
};

/// What stands on the line without an option's name.
struct Argument {
  std::string name{};
  std::string help{};
  std::string Settings::*target{};
  bool required{true};
  Completes completes{Completes::file};
  std::vector<std::string> words{};
  std::vector<std::string> Settings::*several{};  // instead of `target`: all words that are left
};

/// A call to copy, and what it does.
struct Sample {
  std::string call{};
  std::string what{};
};

/// An exit code and what it means.
struct ExitCode {
  int code{};
  std::string meaning{};
};

/// Entries under a heading of their own in a command's help: a word and what it stands for.
struct HelpGroup {
  std::string title{};
  std::vector<Sample> entries{};  // call: the word
};

/// A command with all that its help and its parser need, and the function that does it.
struct Command {
  std::string name{};
  std::string summary{};
  std::string description{};
  std::vector<Argument> arguments{};
  std::vector<Option> options{};
  std::vector<Sample> samples{};
  std::vector<ExitCode> codes{};
  int (*run)(const Settings&){};
  std::vector<HelpGroup> groups{};
};

/// The commands for readings that were taken on site: measure, fit, diagnose, history.
std::vector<Command> on_site_commands();

/// The command that writes PDFs.
Command papers_command();

/// Every command, in the order of use.
const std::vector<Command>& commands();

/// The command of that name; null when there is none.
const Command* find_command(const std::string& name);

/// Options that stand before any command.
const std::vector<Option>& general_options();

/// An environment variable and what it does.
struct Variable {
  std::string name{};
  std::string help{};
};
/// The variables that the program heeds.
const std::vector<Variable>& variables();

/// One sentence on what the program is for.
std::string purpose();

}  // namespace holdback::cli
