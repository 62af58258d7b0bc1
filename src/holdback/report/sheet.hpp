// A sheet of text that is filled from the top: title, sections, paragraphs, tables.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "holdback/draw/ink.hpp"
#include "holdback/report/report.hpp"
#include "holdback/report/table.hpp"

namespace holdback::report {

/// The text with blanks at which no line is broken: "312 N·m" stays on one line. A sheet shows them as blanks.
std::string kept_together(std::string text);

/// A label with its value, for facts() in two columns.
struct Fact {
  std::string label{};
  std::string value{};
};

/// Collects the lines of one answer. Text may come from a file: what a terminal would act on is taken out.
class Sheet {
 public:
  /// An empty sheet.
  explicit Sheet(const Style& style) : style_(style) {}

  /// How the sheet is set, for those who fill it.
  const Style& style() const { return style_; }

  /// The first line of an answer.
  void title(std::string_view text);
  /// A heading with a blank line above.
  void section(std::string_view text);
  /// Text wrapped to the width; lines after the first start two columns further right when `hanging`.
  void paragraph(std::string_view text, draw::Ink ink = draw::Ink::plain, int indent = 2, bool hanging = false);
  /// Lines that are set already.
  void block(const std::vector<std::string>& lines, int indent = 2);
  /// A table, set to the room that is left.
  void table(const Table& table, int indent = 2);
  /// Label and value, in two columns where there is room.
  void facts(const std::vector<Fact>& facts);
  /// An empty line.
  void blank() { text_ += "\n"; }

  /// All that was filled in.
  const std::string& text() const { return text_; }

 private:
  Style style_;
  std::string text_;
};

}  // namespace holdback::report
