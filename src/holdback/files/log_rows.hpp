// Lines of a log turned into numbers: the part that runs over every byte, on several threads.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/files/log_plan.hpp"

namespace holdback::files {

/// Why a cell or a row of a log cannot be read.
enum class RowTrouble { no_number, too_large, wrong_stamp, no_stamp, too_few, too_many, open_quote, cut_off };
inline constexpr std::size_t row_troubles = static_cast<std::size_t>(RowTrouble::cut_off) + 1;

/// True when the row is left out; else only a reading is.
constexpr bool loses_row(RowTrouble trouble) {
  return trouble != RowTrouble::no_number && trouble != RowTrouble::too_large;
}

/// The first place of one trouble in one column, and how often it occurs there.
struct TroubleCount {
  double times{};
  double line{};        // counted from one, in the piece or in the file
  int column{};         // character of the cell in its line, counted from one
  std::string value{};  // as written
  std::string text{};   // of the line
};

/// Troubles by kind and column (0 for the row as a whole, else 1 + the column's index).
class Troubles {
 public:
  explicit Troubles(std::size_t columns) : counts_(row_troubles * (columns + 1)), columns_(columns) {}
  TroubleCount& of(RowTrouble trouble, std::size_t column) {
    return counts_[static_cast<std::size_t>(trouble) * (columns_ + 1) + column];
  }
  /// Adds those of a piece that begins behind `lines` lines.
  void add(const Troubles& piece, double lines);
  std::size_t columns() const { return columns_; }
  double rows_lost() const;

 private:
  std::vector<TroubleCount> counts_;
  std::size_t columns_;
};

/// The rows of a piece of a log, in the order of its lines. The lists may be longer than there are rows: their memory
/// is used again. Each stands in cache lines of its own: two threads that count rows side by side would else wait for
/// each other.
struct alignas(128) LogRows {
  explicit LogRows(std::size_t columns) : troubles(columns) {}
  void clear();
  /// Makes room for so many rows.
  void reserve(std::size_t rows, const LogPlan& plan);

  std::size_t rows{};
  std::size_t room{};
  std::vector<double> time{};  // [s] as stamped, days from the plan's first; empty when rows are counted
  std::array<std::vector<double>, log_channels> channel{};  // SI
  std::size_t lines{};
  std::vector<std::uint32_t> line_breaks{};  // rows before which a line was skipped, once for each such line
  Troubles troubles;

  /// The line of a row in the piece, counted from one.
  double line_of(std::size_t row) const;
};

/// Reads whole lines. `text` ends with a line end, and decimal_padding bytes behind it are readable. `cut_off`: the
/// last line did not end in the file, so that it may be a part of one.
void read_rows(std::string_view text, const LogPlan& plan, bool cut_off, LogRows& out);

}  // namespace holdback::files
