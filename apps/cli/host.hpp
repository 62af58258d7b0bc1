// What the program needs from its host: files, standard input and output, the terminal.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "holdback/api/answer.hpp"
#include "holdback/report/report.hpp"
#include "settings.hpp"

namespace holdback::cli {

/// Reads a whole file; "-" is standard input. A file that cannot be read is a Problem with the host's reason.
std::variant<api::Source, Problem> read(const std::string& path);

/// Writes to standard output, or to the file that --out names: beside it first, then renamed, so that a reader finds
/// the old file or the whole new one. A reader that went away (broken pipe) is no fault. Throws Refusal when --out
/// cannot be written, std::runtime_error when standard output fails.
void write(const std::string& text, const Settings& settings);

/// Refuses an --out that is one of the files that are read.
void protect_inputs(const Settings& settings);

/// True when a file of that name is there.
bool exists(const std::string& path);

/// How text is set, from the options, the environment and the terminal: on standard output, and on standard error.
struct Styles {
  report::Style out{};
  report::Style err{};
};
/// The styles of this call.
Styles styles_of(const Settings& settings);

}  // namespace holdback::cli
