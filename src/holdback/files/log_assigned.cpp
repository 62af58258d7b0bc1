#include "holdback/files/log_assigned.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "holdback/files/header_parts.hpp"
#include "holdback/files/log_cells.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {

AssignedColumns::AssignedColumns(LogAssignment& assignment)
    : work(assignment), plan(assignment.out.plan), taken(assignment.head.size(), false) {
  for (std::size_t i = 0; i < work.head.size(); ++i)
    meanings.push_back(log_meaning_of(work.head[i].text, i < work.units.size() ? work.units[i] : ""));
}

Problem AssignedColumns::problem_at(std::size_t column, std::string what, std::string accepted) const {
  Problem problem;
  problem.file = work.file;
  problem.what.text = std::move(what);
  problem.accepted.text = std::move(accepted);
  if (column < work.head.size() && !work.head[column].text.empty()) {
    problem.where = work.head[column].where;
    problem.value = clipped(one_line(work.head[column].text));
    problem.source_line = work.head_line;
  } else {
    problem.where = {work.out.line, 1};
  }
  return problem;
}

void AssignedColumns::tell(std::size_t column, std::string what, std::string accepted) {
  work.out.problems.push_back(problem_at(column, std::move(what), std::move(accepted)));
}

void AssignedColumns::warn(std::size_t column, std::string what, std::string accepted) {
  Problem problem = problem_at(column, std::move(what), std::move(accepted));
  problem.severity = Severity::warning;
  work.out.problems.push_back(std::move(problem));
}

std::vector<std::string> AssignedColumns::head_texts() const {
  std::vector<std::string> texts;
  for (const Cell& cell : work.head) texts.push_back(one_line(cell.text));
  return texts;
}

std::string AssignedColumns::first_value(std::size_t column) const {
  for (const auto& row : work.rows)
    if (column < row.size() && !is_no_reading(row[column].text)) return row[column].text;
  return {};
}

std::optional<std::size_t> AssignedColumns::column_of_what(LogMeaning::What what) const {
  for (std::size_t i = 0; i < meanings.size(); ++i)
    if (!taken[i] && meanings[i] && meanings[i]->what == what) return i;
  return std::nullopt;
}

void AssignedColumns::tell_missing(std::string what, std::string accepted) {
  tell(work.head.size(), std::move(what), std::move(accepted));
  if (work.head_line.empty()) return;
  work.out.problems.back().where = {work.head.front().where.line, 1};
  work.out.problems.back().source_line = work.head_line;
}

std::string ways_of(LogChannel channel) {
  const std::string word = word_of(channel);
  const std::string example = units::accepted_examples(kind_of(channel));
  return fmt::format(
      "units such as in {}; in the head as {} [unit], or as "
      "--columns \"{}=COLUMN [unit]\"",
      example, word, word);
}

}  // namespace holdback::files
