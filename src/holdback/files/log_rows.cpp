#include "holdback/files/log_rows.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "holdback/files/decimal.hpp"
#include "holdback/files/log_cells.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/model/date.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

/// Reads the lines of one piece. The usual cell is a number and nothing else, read in cell_number(); every other one
/// goes the slow way through odd_cell().
class RowReader {
 public:
  RowReader(std::string_view text, const LogPlan& plan, bool cut_off, LogRows& out)
      : at_(text.data()), end_(text.data() + text.size()), plan_(plan), cut_off_(cut_off), out_(out) {
    for (const CellPlan& cell : plan.cells) has_date_ = has_date_ || cell.role == CellRole::date;
    if (out.room > 0) find_room();
  }

  void run() {
    while (at_ < end_) {
      if (out_.rows == out_.room) find_room();
      line_ = at_;
      ++out_.lines;
      if (!is_empty_line() && read_line())
        ++out_.rows;
      else
        skip_line();
    }
  }

 private:
  bool is_empty_line() const {
    if (*at_ == '#' || *at_ == '%') return true;  // a comment
    const char* at = at_;
    while (*at == ' ' || *at == '\t' || *at == '\r' || *at == plan_.delimiter) ++at;
    return *at == '\n';
  }

  /// Room for rows, and where each cell goes.
  void find_room() {
    if (out_.rows == out_.room) out_.reserve(std::max<std::size_t>(4096, 2 * out_.room), plan_);
    to_.clear();
    for (const CellPlan& cell : plan_.cells) {
      if (cell.role == CellRole::skipped)
        to_.push_back(nullptr);
      else
        to_.push_back(cell.role == CellRole::reading ? out_.channel[static_cast<std::size_t>(cell.channel)].data()
                      : cell.role == CellRole::date  ? &days_
                                                     : out_.time.data());
    }
  }

  /// The cells of the line, and whether the row counts; leaves at_ inside the line when it does not.
  bool read_line() {
    const std::size_t count = plan_.cells.size();
    for (std::size_t i = 0; i < count; ++i) {
      const CellPlan& cell = plan_.cells[i];
      if (cell.role == CellRole::skipped ? !skip_cell() : !read_cell(cell, i)) return false;
      if (*at_ == plan_.delimiter) {
        ++at_;
      } else if (i + 1 < count) {
        return trouble(in_cut_line() ? RowTrouble::cut_off : RowTrouble::too_few, 0, at_, {}), false;
      }
    }
    if (has_date_) out_.time[out_.rows] += days_;
    if (*at_ == '\n' && at_ + 1 != end_) return ++at_, true;
    return ends_well();
  }

  /// Behind the last cell: the line end, or empty cells.
  bool ends_well() {
    while (*at_ == '\r' || *at_ == ' ' || *at_ == '\t' || *at_ == plan_.delimiter) ++at_;
    if (*at_ != '\n') return trouble(RowTrouble::too_many, 0, at_, {}), false;
    ++at_;
    if (at_ == end_ && cut_off_) return trouble(RowTrouble::cut_off, 0, line_, {}), false;
    return true;
  }

  bool in_cut_line() const { return cut_off_ && std::find(at_, end_, '\n') + 1 == end_; }

  bool read_cell(const CellPlan& cell, std::size_t index) {
    double& value = cell.role == CellRole::date ? days_ : to_[index][out_.rows];
    if (cell.role <= CellRole::number_of_time && !cell.own_unit) {
      const char* const begin = at_;
      while (*at_ == ' ') ++at_;
      double number = 0;
      if (scan_decimal(at_, plan_.point, number)) {
        while (*at_ == ' ') ++at_;
        const double si = number * cell.factor + cell.offset;
        if ((*at_ == plan_.delimiter || *at_ == '\n' || *at_ == '\r') && std::fabs(si) <= largest_of(cell)) {
          value = si;
          return true;
        }
      }
      at_ = begin;
    }
    return odd_cell(cell, index, value);
  }

  bool at_end_of_cell() const { return *at_ == plan_.delimiter || *at_ == '\n'; }

  bool skip_cell() {
    if (*at_ == '"') {
      std::string_view text;
      return quoted(text);
    }
    while (!at_end_of_cell()) ++at_;
    return true;
  }

  bool quoted(std::string_view& text) {
    const char* const begin = ++at_;
    while (*at_ != '"' && *at_ != '\n') ++at_;
    if (*at_ == '\n') return trouble(RowTrouble::open_quote, 0, begin - 1, {}), false;
    text = {begin, static_cast<std::size_t>(at_ - begin)};
    ++at_;
    while (!at_end_of_cell()) ++at_;
    return true;
  }

  std::string_view text_of_cell(bool& sound) {
    while (*at_ == ' ' || (*at_ == '\t' && plan_.delimiter != '\t')) ++at_;
    std::string_view text;
    sound = true;
    if (*at_ == '"') {
      sound = quoted(text);
    } else {
      const char* const begin = at_;
      while (!at_end_of_cell()) ++at_;
      text = {begin, static_cast<std::size_t>(at_ - begin)};
      if (!text.empty() && text.back() == '\r') text.remove_suffix(1);
    }
    return trimmed(text);
  }

  bool odd_cell(const CellPlan& cell, std::size_t index, double& value) {
    const char* const begin = at_;
    bool sound = true;
    const std::string_view text = text_of_cell(sound);
    if (!sound) return false;
    switch (cell.role) {
      case CellRole::reading:
        return reading(cell, index, text, begin, value), true;
      case CellRole::number_of_time:
        return number_of_time(cell, index, text, begin, value);
      case CellRole::clock:
      case CellRole::date:
      case CellRole::date_and_clock:
        return stamp(cell, index, text, begin, value);
      case CellRole::skipped:
        break;
    }
    return true;
  }

  static double largest_of(const CellPlan& cell) {
    return cell.role == CellRole::reading ? largest_reading(cell.channel) : largest_number;
  }

  void take(double si, const CellPlan& cell, std::size_t index, std::string_view text, const char* begin,
            double& value) {
    if (std::fabs(si) <= largest_of(cell))
      value = si;
    else
      trouble(RowTrouble::too_large, index + 1, begin, text);
  }

  void reading(const CellPlan& cell, std::size_t index, std::string_view text, const char* begin, double& value) {
    value = none;
    if (text.empty()) return;
    double number = 0;
    if (!cell.own_unit && whole_number(text, number)) {
      take(number * cell.factor + cell.offset, cell, index, text, begin, value);
      return;
    }
    if (is_no_reading(text)) return;
    std::string with_point(text.substr(0, most_of_cell));
    if (plan_.point == ',') std::replace(with_point.begin(), with_point.end(), ',', '.');
    const auto read = units::parse(with_point, cell.kind);
    if (const double* si = std::get_if<double>(&read))
      take(*si * cell.more, cell, index, text, begin, value);
    else
      trouble(RowTrouble::no_number, index + 1, begin, text);
  }

  bool number_of_time(const CellPlan& cell, std::size_t index, std::string_view text, const char* begin,
                      double& value) {
    double number = 0;
    if (whole_number(text, number) && std::fabs(number) <= largest_number) {
      value = number * cell.factor;
      return true;
    }
    return trouble(is_no_reading(text) ? RowTrouble::no_stamp : RowTrouble::wrong_stamp, index + 1, begin, text), false;
  }

  bool stamp(const CellPlan& cell, std::size_t index, std::string_view text, const char* begin, double& value) {
    const auto read = read_stamp(text, plan_.order);
    const bool fits = read && (cell.role == CellRole::clock ? read->has_clock : read->day.has_value());
    if (!fits)
      return trouble(is_no_reading(text) ? RowTrouble::no_stamp : RowTrouble::wrong_stamp, index + 1, begin, text),
             false;
    const double days =
        read->day && !plan_.ignores_date ? seconds_a_day * static_cast<double>(*read->day - plan_.first_day) : 0;
    value = cell.role == CellRole::date ? days : (cell.role == CellRole::clock ? 0 : days) + read->seconds;
    return true;
  }

  bool whole_number(std::string_view text, double& number) const {
    if (text.empty() || text.size() > most_of_cell) return false;
    const char* at = text.data();
    return scan_decimal(at, plan_.point, number) && at == text.data() + text.size();
  }

  void skip_line() {
    if (at_ == line_ || at_[-1] != '\n') {
      while (*at_ != '\n') ++at_;
      ++at_;
    }
    out_.line_breaks.push_back(static_cast<std::uint32_t>(out_.rows));
  }

  void trouble(RowTrouble kind, std::size_t column, const char* at, std::string_view value) {
    TroubleCount& count = out_.troubles.of(kind, column);
    if (++count.times > 1) return;
    const char* stop = line_;
    while (*stop != '\n' && *stop != '\r') ++stop;
    count.line = static_cast<double>(out_.lines);
    count.text = as_utf8({line_, static_cast<std::size_t>(std::min<std::ptrdiff_t>(stop - line_, most_of_line))});
    count.column = static_cast<int>(length_of(as_utf8({line_, static_cast<std::size_t>(at - line_)}))) + 1;
    count.value = clipped(as_utf8(value));
  }

  static constexpr double largest_number = 1e30;  // of a time; beyond it an SI factor could overflow
  static constexpr std::size_t most_of_cell = 100;
  static constexpr std::ptrdiff_t most_of_line = 200;

  const char* at_;
  const char* end_;
  const char* line_{};
  std::vector<double*> to_{};  // the first row of each cell's list
  double days_{};              // [s] of the date cell
  bool has_date_{};
  const LogPlan& plan_;
  bool cut_off_;
  LogRows& out_;
};

}  // namespace

void Troubles::add(const Troubles& piece, double lines) {
  for (std::size_t i = 0; i < counts_.size(); ++i) {
    const TroubleCount& other = piece.counts_[i];
    if (other.times == 0) continue;
    TroubleCount& mine = counts_[i];
    if (mine.times == 0) {
      mine = other;
      mine.line += lines;
    } else {
      mine.times += other.times;
    }
  }
}

double Troubles::rows_lost() const {
  double lost = 0;
  for (std::size_t i = 0; i < counts_.size(); ++i)
    if (loses_row(static_cast<RowTrouble>(i / (columns_ + 1)))) lost += counts_[i].times;
  return lost;
}

void LogRows::clear() {
  rows = 0;
  lines = 0;
  line_breaks.clear();
  troubles = Troubles(troubles.columns());
}

void LogRows::reserve(std::size_t more, const LogPlan& plan) {
  room = std::max(room, more);
  if (plan.has_time) time.resize(room);
  for (std::size_t i = 1; i < log_channels; ++i)
    if (plan.has[i]) channel[i].resize(room);
}

double LogRows::line_of(std::size_t row) const {
  const auto skipped = std::upper_bound(line_breaks.begin(), line_breaks.end(), row) - line_breaks.begin();
  return static_cast<double>(row) + static_cast<double>(skipped) + 1;
}

void read_rows(std::string_view text, const LogPlan& plan, bool cut_off, LogRows& out) {
  RowReader(text, plan, cut_off, out).run();
}

}  // namespace holdback::files
