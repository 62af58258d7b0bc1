// What the program needs from its host: files, standard input and output, the terminal.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <variant>

#include "holdback/api/answer.hpp"
#include "holdback/report/report.hpp"
#include "settings.hpp"

namespace holdback::cli {

/// Reads a whole file; "-" is standard input. A file that cannot be read is a Problem with the host's reason.
std::variant<api::Source, Problem> read(const std::string& path);

/// The same; what cannot be read is added to `problems`.
api::Source read_or_note(const std::string& path, Problems& problems);

/// Writes to standard output, or to the file that --out names: beside it first, then renamed, so that a reader finds
/// the old file or the whole new one. A reader that went away (broken pipe) is no fault. Throws Refusal when --out
/// cannot be written, std::runtime_error when standard output fails.
void write(const std::string& text, const Settings& settings);

/// Makes the folder, with those that it lies in, when it is not there. Throws Refusal when it cannot be made.
void make_folder(const std::string& path);

/// Writes a file of that name in the folder, as write() writes the file that --out names.
void write_in(const std::string& folder, const std::string& name, const std::string& text);

/// Writes a file beside, then renames it; see above.
void write_file(const std::string& bytes, const std::string& path);

/// Refuses an --out or --xlsx that is one of the files that are read, and one file for both.
void protect_inputs(const Settings& settings);

/// True when a file of that name is there.
bool exists(const std::string& path);

/// Tells on standard error how far long work is, in one line that is written over; empty when that is no terminal.
std::function<void(const std::string& what, double share)> progress_bar();

/// How text is set, from the options, the environment and the terminal: on standard output, and on standard error.
struct Styles {
  report::Style out{};
  report::Style err{};
};
/// The styles of this call.
Styles styles_of(const Settings& settings);

}  // namespace holdback::cli
