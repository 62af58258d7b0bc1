// Problems as a compiler tells them: where, what, the line with an arrow, then field, value and what is accepted.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/cells.hpp"
#include "holdback/draw/ink.hpp"
#include "holdback/report/report.hpp"
#include "holdback/units/text.hpp"

namespace holdback::report {

namespace {

using draw::Ink;
using draw::inked;

/// A source line cut to what fits, with the column of the arrow under it.
struct Excerpt {
  std::string text;
  int arrow{};  // from 0
};

/// The text without its first `count` code points.
std::string after(const std::string& text, int count) {
  std::size_t at = 0;
  for (int i = 0; i < count && at < text.size(); ++i) at += units::code_point_at(text, at).size;
  return text.substr(at);
}

Excerpt excerpt(const Problem& problem, int width) {
  std::string text = draw::plain(problem.source_line);
  int arrow = std::clamp(problem.where.column - 1, 0, draw::columns(text));  // columns of a file are code points
  const int lead = std::max(width / 3, 1);
  if (draw::columns(text) > width && arrow > width - lead) {
    text = "…" + after(text, arrow - lead + 1);
    arrow = lead;
  }
  return {draw::cut(text, width), arrow};
}

std::string place_of(const Problem& problem) {
  std::string place = draw::plain(problem.file);
  const std::string cell = cell_name(problem.where);
  if (!cell.empty()) return fmt::format("{}{}{}: ", place, place.empty() ? "" : ":", cell);
  if (problem.where.line > 0) place += fmt::format("{}{}", place.empty() ? "line " : ":", problem.where.line);
  if (problem.where.line > 0 && problem.where.column > 0) place += fmt::format(":{}", problem.where.column);
  return place.empty() ? place : place + ": ";
}

std::string source_of(const Problem& problem, const Style& style) {
  if (problem.source_line.empty() || problem.where.line <= 0) return {};
  const std::string number = fmt::format("{:>5} | ", problem.where.line);
  const auto shown = excerpt(problem, std::max(style.width - draw::columns(number), 20));
  std::string out = number + shown.text + "\n";
  if (problem.where.column > 0) {
    out += "      | " + std::string(static_cast<std::size_t>(shown.arrow), ' ') + inked("^", Ink::bad, style.colour) +
           "\n";
  }
  return out;
}

std::string facts_of(const Problem& problem, const Style& style) {
  std::vector<std::string> facts;
  const auto accepted = draw::plain(units::fill(problem.accepted, style.system));
  if (!problem.field.empty()) facts.push_back("field: " + draw::plain(problem.field));
  if (!problem.value.empty()) facts.push_back("value: " + draw::cut(draw::plain(problem.value), 60));
  if (!accepted.empty()) facts.push_back("accepted: " + accepted);
  std::string line;
  for (const auto& fact : facts) line += (line.empty() ? "" : " · ") + fact;
  std::string out;
  if (line.empty()) return out;
  for (const auto& part : draw::wrapped(line, style.width - 6)) out += "      " + part + "\n";
  return out;
}

std::string text_of(const Problem& problem, const Style& style) {
  const bool error = problem.severity == Severity::error;
  return inked(place_of(problem), Ink::strong, style.colour) +
         inked(error ? "error: " : "warning: ", error ? Ink::bad : Ink::warning, style.colour) +
         draw::plain(units::fill(problem.what, style.system)) + "\n" + source_of(problem, style) +
         facts_of(problem, style);
}

/// "99800" → "99 800".
std::string thousands_apart(std::string digits) {
  for (auto at = std::ssize(digits) - 3; at > 0; at -= 3) digits.insert(static_cast<std::size_t>(at), " ");
  return digits;
}

std::string counted(std::ptrdiff_t count, std::string_view word) {
  return fmt::format("{} {}{}", thousands_apart(std::to_string(count)), word, count == 1 ? "" : "s");
}

std::string total_of(const Problems& problems) {
  const auto errors = std::count_if(problems.begin(), problems.end(),
                                    [](const Problem& problem) { return problem.severity == Severity::error; });
  const auto warnings = static_cast<std::ptrdiff_t>(problems.size()) - errors;
  std::string line;
  if (errors > 0) line = counted(errors, "error");
  if (warnings > 0) line += (line.empty() ? "" : ", ") + counted(warnings, "warning");
  return line + "\n";
}

}  // namespace

Problems first_problems(const Problems& problems, std::size_t most) {
  Problems first = problems;
  if (first.size() <= most) return first;
  std::stable_partition(first.begin(), first.end(),
                        [](const Problem& problem) { return problem.severity == Severity::error; });
  first.resize(most);
  return first;
}

std::string problems_text(const Problems& problems, const Style& style) {
  constexpr std::size_t most = 200;  // nobody reads on; what is mended first is often the cause of the rest
  std::string out;
  const Problems first = first_problems(problems, most);
  for (const auto& problem : first) out += text_of(problem, style);
  if (problems.size() > first.size())
    out += fmt::format("… and {} more\n", thousands_apart(std::to_string(problems.size() - first.size())));
  return problems.empty() ? out : out + total_of(problems);
}

}  // namespace holdback::report
