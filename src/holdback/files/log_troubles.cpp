#include "holdback/files/log_troubles.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdback::files {
namespace {

/// "; 12 rows are left out", "; the row is left out".
std::string left_out(double rows) {
  return rows == 1 ? "; the row is left out" : fmt::format("; {:.0f} such rows are left out", rows);
}

std::string no_reading(double cells) {
  return cells == 1 ? ", and counts as no reading"
                    : fmt::format(", as in {:.0f} cells in all; they count as no reading", cells);
}

struct Words {
  std::string what;
  std::string accepted;
};

Words words_of(RowTrouble trouble, const std::string& name, double times, const LogPlan& plan) {
  switch (trouble) {
    case RowTrouble::no_number:
      return {fmt::format("the {} is no number here{}", name, no_reading(times)),
              fmt::format("a number such as 12{}5, or an empty cell where there is no reading", plan.point)};
    case RowTrouble::too_large:
      return {fmt::format("the {} is beyond any reading here{}", name, no_reading(times)),
              "a reading that a web line can have; is the unit in the head right?"};
    case RowTrouble::wrong_stamp:
      return {fmt::format("the {} cannot be read here{}", name, left_out(times)),
              fmt::format("as in the first row: {}", plan.first_stamp)};
    case RowTrouble::no_stamp:
      return {fmt::format("the {} is missing here{}", name, left_out(times)),
              fmt::format("as in the first row: {}", plan.first_stamp)};
    case RowTrouble::too_few:
      return {fmt::format("the row has fewer cells than the head, which has {}{}", plan.cells.size(), left_out(times)),
              fmt::format("{} cells; empty ones where there is no reading", plan.cells.size())};
    case RowTrouble::too_many:
      return {fmt::format("the row goes on behind the last column of the head, which has {} cells{}", plan.cells.size(),
                          left_out(times)),
              fmt::format("{} cells; with a comma as the decimal sign the cells are parted by semicolons or tabs",
                          plan.cells.size())};
    case RowTrouble::open_quote:
      return {"a quote opens here and does not close in its line" + left_out(times), "a second quote"};
    case RowTrouble::cut_off:
      break;
  }
  return {"the last line has no end and may be cut off; it is left out", "a whole line with its line end"};
}

Problem problem_of(const TroubleCount& count, const std::string& file, Words words) {
  Problem problem;
  problem.severity = Severity::warning;
  problem.file = file;
  problem.where = {static_cast<int>(std::min(count.line, 2e9)), count.column};
  problem.value = count.value;
  problem.source_line = count.text;
  problem.what.text = std::move(words.what);
  problem.accepted.text = std::move(words.accepted);
  return problem;
}

constexpr const char* reason_of(RowTrouble trouble) {
  switch (trouble) {
    case RowTrouble::wrong_stamp:
      return "the time cannot be read";
    case RowTrouble::no_stamp:
      return "the time is missing";
    case RowTrouble::too_few:
      return "fewer cells than the head";
    case RowTrouble::too_many:
      return "more cells than the head";
    case RowTrouble::open_quote:
      return "a quote that does not close";
    case RowTrouble::cut_off:
      return "the last line has no end";
    case RowTrouble::no_number:
    case RowTrouble::too_large:
      break;
  }
  return "";
}

template <class Visit>
void for_each(Troubles& troubles, Visit visit) {
  for (std::size_t kind = 0; kind < row_troubles; ++kind)
    for (std::size_t column = 0; column <= troubles.columns(); ++column) {
      const TroubleCount& count = troubles.of(static_cast<RowTrouble>(kind), column);
      if (count.times > 0) visit(static_cast<RowTrouble>(kind), column, count);
    }
}

std::string name_of(const LogPlan& plan, std::size_t column) {
  return column == 0 ? "row" : plan.cells[column - 1].name;
}

Problem stamp_problem(const std::string& file, double line, std::string what) {
  TroubleCount count;
  count.line = line;
  return problem_of(count, file,
                    {std::move(what),
                     "stamps that rise from row to row; or --rate with the rows a second, "
                     "where the stamps are too coarse to part the rows"});
}

}  // namespace

Problems told(Troubles& troubles, const LogPlan& plan, const std::string& file, LogReading& reading) {
  Problems problems;
  for_each(troubles, [&](RowTrouble trouble, std::size_t column, const TroubleCount& count) {
    if (loses_row(trouble)) reading.left_out.push_back({reason_of(trouble), count.times, count.line});
    // A text that does not end with a line end is common; one row less is nothing to worry about.
    if (trouble == RowTrouble::cut_off) return;
    problems.push_back(problem_of(count, file, words_of(trouble, name_of(plan, column), count.times, plan)));
  });
  return problems;
}

Problems told(const ClockFacts& clock, const std::string& file, LogReading& reading) {
  Problems problems;
  reading.repeated = clock.repeated;
  reading.clock_set_back = clock.set_back;
  if (clock.before > 0)
    reading.left_out.push_back({"the stamp lies before that of the row above", clock.before, clock.before_line});
  if (clock.repeated > 0)
    problems.push_back(stamp_problem(
        file, clock.repeated_line,
        clock.repeated == 1
            ? "the row has the stamp of the row above; only readings that the row above lacks are taken from it"
            : fmt::format("{:.0f} rows from here on have the stamp of the row above; only readings that the row above "
                          "lacks are taken from them",
                          clock.repeated)));
  if (clock.before > 0)
    problems.push_back(
        stamp_problem(file, clock.before_line, "the stamp lies before that of the row above" + left_out(clock.before)));
  if (clock.set_back > 0)
    problems.push_back(stamp_problem(
        file, clock.set_back_line,
        fmt::format("the clock was set back here{}; the rows go on as if it had not been",
                    clock.set_back == 1 ? "" : fmt::format(", and {:.0f} times in all", clock.set_back))));
  return problems;
}

Problems bad_throughout(Troubles& troubles, const LogPlan& plan, double lines, double rows, const std::string& file) {
  Problems problems;
  const auto as_error = [&](const TroubleCount& count, Words words) {
    problems.push_back(problem_of(count, file, std::move(words)));
    problems.back().severity = Severity::error;
  };
  const double lost = troubles.rows_lost();
  constexpr double few = 3;
  for_each(troubles, [&](RowTrouble trouble, std::size_t column, const TroubleCount& count) {
    const bool row = loses_row(trouble) && trouble != RowTrouble::cut_off;
    const Words words = words_of(trouble, name_of(plan, column), count.times, plan);
    if (row && lost >= few && 2 * lost > lines && 3 * count.times >= lost)
      as_error(count, {fmt::format("{:.0f} of {:.0f} rows cannot be read: {}", lost, lines, reason_of(trouble)),
                       words.accepted});
    if (!row && count.times >= few && 2 * count.times > rows)
      as_error(count,
               {fmt::format("the {} is no number in {:.0f} of {:.0f} rows", name_of(plan, column), count.times, rows),
                words.accepted + "; or another column by --columns"});
  });
  return problems;
}

}  // namespace holdback::files
