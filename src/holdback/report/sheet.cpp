#include "holdback/report/sheet.hpp"

#include <algorithm>

#include "holdback/draw/cells.hpp"

namespace holdback::report {

namespace {

constexpr std::string_view no_break = "\u00A0";

std::string blanks(int count) { return std::string(static_cast<std::size_t>(std::max(count, 0)), ' '); }

/// Blanks at which a line may not break have done their work once the lines are set.
std::string loosened(std::string text) {
  for (auto at = text.find(no_break); at != std::string::npos; at = text.find(no_break, at))
    text.replace(at, no_break.size(), " ");
  return text;
}

}  // namespace

std::string kept_together(std::string text) {
  for (auto at = text.find(' '); at != std::string::npos; at = text.find(' ', at)) text.replace(at, 1, no_break);
  return text;
}

void Sheet::title(std::string_view text) {
  for (const auto& line : draw::wrapped(draw::plain(text), style_.width)) {
    text_ += draw::inked(loosened(line), draw::Ink::strong, style_.colour) + "\n";
  }
}

void Sheet::section(std::string_view text) {
  blank();
  title(text);
}

void Sheet::paragraph(std::string_view text, draw::Ink ink, int indent, bool hanging) {
  const int further = hanging ? 2 : 0;
  bool later = false;
  for (const auto& line : draw::wrapped(draw::plain(text), style_.width - indent - further)) {
    text_ += blanks(indent + (later ? further : 0)) + draw::inked(loosened(line), ink, style_.colour) + "\n";
    later = true;
  }
}

void Sheet::block(const std::vector<std::string>& lines, int indent) {
  for (const auto& line : lines) text_ += (line.empty() ? "" : blanks(indent) + loosened(line)) + "\n";
}

void Sheet::table(const Table& table, int indent) { block(table.lines(style_.width - indent, style_.colour), indent); }

namespace {

/// Label and value of each, the values in one column.
std::vector<std::string> fact_lines(const std::vector<Fact>& facts) {
  int label = 0;
  for (const auto& fact : facts) label = std::max(label, draw::columns(fact.label));
  std::vector<std::string> lines;
  lines.reserve(facts.size());
  for (const auto& fact : facts) lines.push_back(draw::pad_right(fact.label, label) + "  " + draw::plain(fact.value));
  return lines;
}

}  // namespace

void Sheet::facts(const std::vector<Fact>& facts) {
  constexpr int gap = 4;
  const auto half = static_cast<std::ptrdiff_t>((facts.size() + 1) / 2);
  const int room = style_.width - 2;
  auto lines =
      beside(fact_lines({facts.begin(), facts.begin() + half}), fact_lines({facts.begin() + half, facts.end()}), gap);
  const auto wide = [room](const std::string& line) { return draw::columns(line) > room; };
  if (std::any_of(lines.begin(), lines.end(), wide)) lines = fact_lines(facts);
  for (auto& line : lines) line = draw::cut(line, room);
  block(lines);
}

}  // namespace holdback::report
