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

constexpr int two_columns = 80;  // facts stand in two columns from this width on

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

void Sheet::facts(const std::vector<Fact>& facts) {
  int label = 0;
  for (const auto& fact : facts) label = std::max(label, draw::columns(fact.label));
  const int room = style_.width >= two_columns ? style_.width / 2 - 3 : style_.width - 2;
  std::vector<std::string> lines;
  for (const auto& fact : facts) {
    const auto value = draw::cut(draw::plain(fact.value), room - label - 2);
    lines.push_back(draw::pad_right(fact.label, label) + "  " + value);
  }
  if (style_.width < two_columns) return block(lines);
  const auto half = static_cast<std::ptrdiff_t>((lines.size() + 1) / 2);
  const std::vector<std::string> left(lines.begin(), lines.begin() + half);
  const std::vector<std::string> right(lines.begin() + half, lines.end());
  std::vector<std::string> padded;
  for (const auto& line : left) padded.push_back(draw::pad_right(line, room));
  block(beside(padded, right, 3));
}

}  // namespace holdback::report
