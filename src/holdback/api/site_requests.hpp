// What is asked of readings that were taken on site.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace holdback::api {

/// A text with the name that messages give it. The core opens no files: hosts do.
struct Source {
  std::string name{};
  std::string text{};
  bool sheet{false};  // of jobs: a worksheet written as CSV, one line a row; messages then name cells
};

/// One reading by its key, as a person writes it: "push" and "10 mm".
struct Reading {
  std::string key{};
  std::string text{};
};

/// `measure`: a method and what was read; a key that stands several times is a reading that was repeated.
struct MeasureRequest {
  std::string method{};  // "push", "sag", "pluck", "pull", "cell"
  std::vector<Reading> readings{};
  std::optional<Source> recording{};  // of a plucked span: the bytes of a .wav file
  bool instruction{};                 // only how to take the readings, with a drawing; none are needed
};

/// `fit`: a table of readings.
struct FitRequest {
  Source readings{};  // CSV
  bool write{};       // the changed text of the stand file too
};

/// `diagnose`: a log that is read once, from its beginning; it may be longer than memory.
struct LogRequest {
  std::string name{};
  std::function<std::size_t(char* to, std::size_t most)> read{};  // the next bytes; 0 at the end
  std::string columns{};  // "time=t,tension=F1 [N]": what the header does not tell
  std::string rate{};     // rows a second, "1000 Hz", of a log without times
  std::string from{};     // "10 min": only what comes later; empty: from the first row
  std::string to{};       // … and only up to here; empty: to the last row
  double bytes{};         // of all of it, for telling how far the work is; 0: not known
};

/// `history`: entries as `history show --csv` writes them.
struct HistoryRequest {
  Source entries{};     // CSV
  std::string stand{};  // whose entries; may be empty when the table holds those of one stand
};

}  // namespace holdback::api
