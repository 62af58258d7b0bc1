// The times of a log: which column holds them, and in which form.
#include <fmt/format.h>

#include "holdback/files/log_assigned.hpp"
#include "holdback/files/log_cells.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

using What = LogMeaning::What;

class TimeAssigner {
 public:
  explicit TimeAssigner(AssignedColumns& columns) : c_(columns) {}

  void take_time() {
    if (c_.work.options.rows_per_second) return count_rows();
    if (!c_.time && !c_.declined[0]) c_.time = best_time();
    if (c_.told[0]) return;
    if (!c_.time) return tell_no_time();
    const std::string first = c_.first_value(c_.time->column);
    CellPlan& cell = c_.plan.cells[c_.time->column];
    cell.name = "time";
    if (is_number(first, c_.plan.point) || is_number(first, '.')) return take_numbers(cell);
    take_stamps(cell, first);
  }

 private:
  std::optional<Chosen> best_time() const {
    std::optional<Chosen> best;
    for (std::size_t i = 0; i < c_.meanings.size(); ++i) {
      const auto& meaning = c_.meanings[i];
      if (c_.taken[i] || !meaning || meaning->channel != LogChannel::time || meaning->what != What::channel) continue;
      if (!meaning->unit_fits) continue;
      if (!best || meaning->rank < best->meaning.rank) best = Chosen{i, *meaning};
    }
    if (!best)
      if (const auto date = c_.column_of_what(What::date); date && has_clock(*date))
        best = Chosen{*date, *c_.meanings[*date]};
    return best;
  }

  bool has_clock(std::size_t column) const { return c_.first_value(column).find(':') != std::string::npos; }

  /// By --rate: row after row, or by a column that counts them.
  void count_rows() {
    c_.plan.seconds_per_row = 1 / *c_.work.options.rows_per_second;
    const auto column = c_.column_of_what(What::row_number);
    if (column && is_number(c_.first_value(*column), '.')) {
      CellPlan& cell = c_.plan.cells[*column];
      cell.role = CellRole::number_of_time;
      cell.factor = c_.plan.seconds_per_row;
      cell.name = "row number";
      c_.plan.has_time = true;
      c_.plan.seconds_per_row = 0;
      c_.plan.first_stamp = c_.first_value(*column);
      c_.read_as[*column] = LogMeaning{};
    }
    c_.work.out.assumptions.push_back({fmt::format("the times follow from {} at {{0}} rows a second",
                                                   c_.plan.has_time ? "the row numbers" : "counting the rows"),
                                       {{*c_.work.options.rows_per_second, Quantity::number}}});
  }

  void tell_no_time() {
    const std::string accepted =
        "a column such as time [s], or --columns \"time=COLUMN [s]\"; or --rate with the rows a second, such as --rate "
        "100Hz";
    if (const auto counted = c_.column_of_what(What::row_number))
      return c_.tell(*counted, "the log counts its rows but has no time", accepted);
    c_.tell_missing("the log has no time", accepted);
  }

  void take_numbers(CellPlan& cell) {
    const LogMeaning& meaning = c_.time->meaning;
    if (!meaning.unit_fits) {
      const auto read = units::parse_unit(meaning.unit, Quantity::duration);
      const auto* fault = std::get_if<units::Fault>(&read);
      return c_.tell(c_.time->column, fault != nullptr ? fault->what : "the unit is none of a time",
                     ways_of(LogChannel::time));
    }
    cell.role = CellRole::number_of_time;
    if (meaning.unit.empty()) {
      c_.warn(c_.time->column, "the time has no unit and is read in seconds",
              "a head such as time [s] or time [ms], or --columns \"time=COLUMN "
              "[ms]\"");
    } else {
      cell.factor = std::get<units::UnitValue>(units::parse_unit(meaning.unit, Quantity::duration)).factor;
    }
    accept_time();
  }

  void accept_time() {
    c_.plan.has_time = true;
    c_.plan.first_stamp = clipped(c_.first_value(c_.time->column));
    c_.read_as[c_.time->column] = c_.time->meaning;
    c_.taken[c_.time->column] = true;
  }

  void take_stamps(CellPlan& cell, const std::string& first) {
    c_.plan.order = order_of(c_.time->column);
    const auto date = c_.column_of_what(What::date);
    if (c_.plan.order == DateOrder::unknown && date && *date != c_.time->column) c_.plan.order = order_of(*date);
    const auto stamp = read_stamp(first, c_.plan.order);
    if (!stamp && looks_like_stamp(first)) return take_clock_of_unclear_date(cell);
    if (!stamp) {
      c_.tell(c_.time->column, fmt::format("the time \"{}\" below it cannot be read", clipped(first)),
              "12.50, 06:00:00.250, 2026-03-01T06:00:00.250 or 01.03.2026 "
              "06:00:00,250");
      return;
    }
    cell.role = stamp->day ? CellRole::date_and_clock : CellRole::clock;
    c_.plan.clock_alone = !stamp->day;
    if (stamp->day) c_.plan.first_day = *stamp->day;
    if (!stamp->day && date && *date != c_.time->column) take_date(*date);
    accept_time();
    tell_clock();
  }

  /// The order that any date of the first rows shows; an hour by twelve (AM,
  /// PM) goes with the month first.
  DateOrder order_of(std::size_t column) const {
    bool halves = false;
    for (const auto& row : c_.work.rows) {
      if (column >= row.size()) continue;
      if (const DateOrder shown = order_shown(row[column].text); shown != DateOrder::unknown) return shown;
      const std::string& text = row[column].text;
      halves = halves || (text.size() > 2 && (text.back() == 'M' || text.back() == 'm'));
    }
    return halves ? DateOrder::month_first : DateOrder::unknown;
  }

  /// 03/04/2026 may be of March or of April: the times of day alone are read,
  /// over midnight where they fall.
  void take_clock_of_unclear_date(CellPlan& cell) {
    c_.plan.order = DateOrder::month_first;  // any order reads the clock; the day
                                             // is then left aside
    c_.plan.ignores_date = true;
    c_.plan.clock_alone = true;
    cell.role = CellRole::date_and_clock;
    accept_time();
    c_.work.out.assumptions.push_back(
        {"the dates do not show whether the day or the month stands first; the "
         "times of day alone are read, a day later "
         "each time they fall by more than half a day"});
  }

  void take_date(std::size_t column) {
    const auto day = read_stamp(c_.first_value(column), c_.plan.order);
    if (!day || !day->day) return;  // the clock alone then
    CellPlan& cell = c_.plan.cells[column];
    cell.role = CellRole::date;
    cell.name = "date";
    c_.taken[column] = true;
    c_.read_as[column] = LogMeaning{};
    c_.plan.clock_alone = false;
    c_.plan.first_day = *day->day;
  }

  void tell_clock() {
    if (c_.plan.clock_alone)
      c_.work.out.assumptions.push_back(
          {"the times are times of day; a day is counted each time they fall "
           "by more than half a day"});
  }

  AssignedColumns& c_;
};

}  // namespace

void assign_time(AssignedColumns& columns) { TimeAssigner(columns).take_time(); }

}  // namespace holdback::files
