// What the command line says, as plain values. Names follow the options.
#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace holdback::cli {

/// One call of the program, parsed.
struct Settings {
  std::string command{};
  std::string file{};   // FILE; "-" is standard input
  std::string topic{};  // of describe, or the example's name
  std::string shell{};  // of describe completion
  std::string stand{};  // of the on-site commands: the stand file; FILE is then what was read
  std::string jobs{};   // CSV or workbook with more jobs
  std::string sheet{};  // of that workbook; empty: the first one that is shown
  std::string job{};
  std::string brake{};
  std::string grade{};
  std::optional<int> brakes{};
  std::optional<int> threads{};
  std::optional<double> tolerance{};    // [1]
  std::string scenario{};               // of simulate; empty: the usual one
  std::string compare{};                // of simulate: controls, comma between them
  std::string idlers{};                 // of simulate; empty: as needed
  std::vector<std::string> readings{};  // of measure: key=value
  std::string recording{};              // of measure pluck: a .wav file
  bool instruction{};                   // of measure: how to take the readings
  std::string columns{};                // of diagnose: what the header does not tell
  std::string rate{};                   // of diagnose: rows a second of a log without times
  std::string from{};                   // of diagnose: only what comes later in the log
  std::string to{};                     // of diagnose: only up to here
  std::string stand_name{};             // of history: the name under which a stand is kept
  std::string date{};                   // of history add: year-month-day; empty: today; of papers: empty: none
  std::string corrects{};               // of history add: number of an entry
  std::string fit_answer{};             // of history add: the answer of fit as JSON
  std::string units{};                  // "si", "us"; empty: as the environment says, else si
  std::string colour{"auto"};
  std::string out{};                  // empty: standard output
  std::string svg{};                  // folder for figures; empty: none
  std::string traces{};               // folder for the traces of simulate; empty: none
  std::string xlsx{};                 // workbook to write beside the answer; empty: none
  std::string sheet_size{};           // of papers: a4, letter; empty: by the units
  std::string only{};                 // of papers: which, with commas between them; empty: all
  std::string beside{};               // of papers: another stand file to compare with
  std::string before{};               // of papers: an earlier revision of the stand file
  std::string other_brake{};          // of papers: another fit of the stand to compare with
  std::string other_grade{};          //
  std::optional<int> other_brakes{};  //
  bool write{};                       // of fit: into the stand file
  bool json{};
  bool csv{};
  bool all{};
  bool force{};
  bool help{};
  bool version{};
};

/// The user asked for something that cannot be done; the message says what and what would be accepted.
class Refusal : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

}  // namespace holdback::cli
