// Long logs: read once from their beginning, block by block, in SI, with
// everything that is wrong told and counted.
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "holdback/model/log.hpp"
#include "holdback/model/problem.hpp"
#include "holdback/results/answer.hpp"
#include "holdback/results/log_reading.hpp"

namespace holdback::files {

/// How a log is to be read. Texts are as a person writes them; what is wrong
/// with them becomes a problem.
struct LogOptions {
  std::string columns{};          // "time=t,tension=F1 [N],speed=3 [m/min]": a header or
                                  // a number for a channel
  std::string rate{};             // rows a second, "1000 Hz"; of a log without times, or
                                  // with times too coarse
  std::string from{};             // only rows from this time of the log on: "10 min";
                                  // empty: from the first
  std::string to{};               // … up to this one; empty: to the last
  std::optional<double> width{};  // [m] of the web, for a tension per width
  std::size_t threads{0};         // 0: as many as the machine has; the rows are the same on any number
};

/// The next bytes of a log: at most `most` of them to `to`; 0 at the end. It is
/// called on any thread, once at a time.
using LogBytes = std::function<std::size_t(char* to, std::size_t most)>;

/// Reads a CSV text: a head that names channels and units, found below any
/// preamble; rows of numbers. See docs/guide.md for what is understood. Memory
/// stays below about 50 MB whatever the length.
class LogReader {
 public:
  LogReader(std::string name, LogBytes read, LogOptions options);
  ~LogReader();
  LogReader(const LogReader&) = delete;
  LogReader& operator=(const LogReader&) = delete;

  /// The next rows: `block_rows` of them, fewer only in the last block. False
  /// at the end, or when the log cannot be read; problems() then says why.
  bool next(LogBlock& block);

  /// Everything that is wrong; complete when next() has returned false. Errors:
  /// what was handed on is not the log.
  const Problems& problems() const;

  /// What was read; complete when next() has returned false.
  const LogReading& reading() const;

  /// What each column was read as; known after the first next().
  const std::vector<ColumnRead>& columns() const;

  /// Bytes behind the rows that were handed on so far, for telling how far the
  /// work is.
  double bytes() const;

  static constexpr std::size_t block_rows = 65'536;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace holdback::files
