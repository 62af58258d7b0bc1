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

std::string counted(std::ptrdiff_t count, std::string_view word) {
  return fmt::format("{} {}{}", count, word, count == 1 ? "" : "s");
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

std::string problems_text(const Problems& problems, const Style& style) {
  std::string out;
  for (const auto& problem : problems) out += text_of(problem, style);
  return problems.empty() ? out : out + total_of(problems);
}

}  // namespace holdback::report
