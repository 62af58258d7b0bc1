#include "xlsx_sheet.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <map>

#include "holdback/model/problem.hpp"
#include "holdback/units/text.hpp"
#include "xlsx_parts.hpp"

namespace holdback::cli {

namespace {

using pugi::xml_node;

constexpr int most_rows = 100'000;
constexpr int most_columns = 256;
constexpr std::size_t most_text = 64'000'000;  // bytes of the sheet as CSV

constexpr auto xlsx_wanted = "a workbook saved as .xlsx, or the sheet as CSV";

// ---- texts ----------------------------------------------------------------------------------------------------------

std::string in_utf8(unsigned code) {
  std::string out;
  if (code < 0x80) return {static_cast<char>(code)};
  if (code >= 0x800) out += static_cast<char>(0xE0U | (code >> 12U));
  out += static_cast<char>(code >= 0x800 ? 0x80U | ((code >> 6U) & 0x3FU) : 0xC0U | (code >> 6U));
  return out + static_cast<char>(0x80U | (code & 0x3FU));
}

/// Sheets write characters that XML does not take as "_x000D_".
std::string without_escapes(const std::string& text) {
  std::string out;
  for (std::size_t at = 0; at < text.size(); ++at) {
    unsigned code = 0;
    const char* digits = text.data() + at + 2;
    const bool escape = at + 7 <= text.size() && text[at] == '_' && text[at + 1] == 'x' && text[at + 6] == '_' &&
                        std::from_chars(digits, digits + 4, code, 16).ptr == digits + 4;
    const bool half = code >= 0xD800 && code < 0xE000;  // of a character pair: no character of its own
    out += escape ? in_utf8(half ? 0xFFFD : code) : std::string(1, text[at]);
    if (escape) at += 6;
  }
  return out;
}

// ---- numbers --------------------------------------------------------------------------------------------------------

/// The shortest text that is a hundredth of itself again: 0.07 → "7 %".
std::string in_per_cent(double value) {
  for (int digits = 1; digits <= 17; ++digits) {
    const std::string text = fmt::format("{:.{}g}", value * 100, digits);
    double back = 0;
    std::from_chars(text.data(), text.data() + text.size(), back);
    if (back / 100 == value) return text + " %";
  }
  return fmt::format("{} %", value * 100);
}

std::string number_text(const std::string& stored, bool per_cent) {
  double value = 0;
  const auto read = std::from_chars(stored.data(), stored.data() + stored.size(), value);
  const bool whole = read.ec == std::errc{} && read.ptr == stored.data() + stored.size() && std::isfinite(value);
  if (!whole) return clean(stored);
  return per_cent ? in_per_cent(value) : fmt::format("{}", value);
}

// ---- cells ----------------------------------------------------------------------------------------------------------

/// "B7" → {7, 2}; {0, 0} when it is no cell.
Position place_of(const std::string& name) {
  Position where{0, 0, true};
  std::size_t at = 0;
  for (; at < name.size() && name[at] >= 'A' && name[at] <= 'Z' && where.column < 1'000'000; ++at)
    where.column = where.column * 26 + (name[at] - 'A' + 1);
  const char* end = name.data() + name.size();
  const auto read = std::from_chars(name.data() + at, end, where.line);
  const bool whole = at > 0 && read.ec == std::errc{} && read.ptr == end && where.line > 0;
  return whole ? where : Position{};
}

std::string quoted(const std::string& cell) {
  if (cell.find_first_of(",\"\n") == std::string::npos) return cell;
  std::string out = "\"";
  for (const char c : cell) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + "\"";
}

/// One worksheet, cell by cell, into lines of CSV.
class SheetReader {
 public:
  explicit SheetReader(const Shared& shared) : shared_(shared) {}

  std::string read(const xml_node& sheet) {
    int row = 0;
    for (const auto& node : child(sheet, "sheetData").children()) {
      if (local_name(node.name()) != "row") continue;
      const std::string number = attribute(node, "r");
      row = number.empty() ? row + 1 : row_number(number);
      read_row(node, row);
    }
    return text();
  }

 private:
  static int row_number(const std::string& text) {
    const Position where = place_of("A" + text);
    if (where.line == 0) throw Unreadable("the sheet has a row \"" + text.substr(0, 20) + "\"", xlsx_wanted);
    return where.line;
  }

  void read_row(const xml_node& node, int row) {
    std::map<int, std::string> cells;
    int column = 0;
    for (const auto& cell : node.children()) {
      if (local_name(cell.name()) != "c") continue;
      const std::string name = attribute(cell, "r");
      const Position where = name.empty() ? Position{row, column + 1, true} : place_of(name);
      if (where.line != row)
        throw Unreadable(fmt::format("row {} of the sheet holds a cell \"{}\"", row, name.substr(0, 20)), xlsx_wanted);
      column = where.column;
      std::string value = value_of(cell, where);
      if (value.empty()) continue;
      if (row > most_rows || column > most_columns)
        throw Unreadable(fmt::format("the sheet has cells beyond {} rows and {} columns", most_rows, most_columns),
                         "the jobs alone, on a sheet of their own", where);
      cells[column] = std::move(value);
    }
    if (!cells.empty()) add_line(row, cells);
  }

  void add_line(int row, const std::map<int, std::string>& cells) {
    std::string line;
    int column = 1;
    for (const auto& [at, value] : cells) {
      line.append(static_cast<std::size_t>(at - column), ',');
      line += quoted(value);
      column = at;
    }
    size_ += line.size();
    if (size_ > most_text)
      throw Unreadable("the sheet holds more than 64 MB of text", "the jobs alone, on a sheet of their own");
    if (!lines_.emplace(row, std::move(line)).second)
      throw Unreadable(fmt::format("the sheet has two rows {}", row), xlsx_wanted);
  }

  std::string value_of(const xml_node& cell, const Position& where) const {
    const std::string type = attribute(cell, "t");
    const xml_node value = child(cell, "v");
    if (type == "inlineStr") return clean(rich_text(child(cell, "is")));
    const std::string stored = text_in(value);
    if (stored.empty()) {
      const xml_node formula = child(cell, "f");  // without a stored value: not for us to compute
      return formula && type != "str" ? "=" + clean(text_in(formula)) : "";
    }
    if (type == "s") return clean(shared_text(stored, where));
    if (type == "b") return stored == "1" ? "TRUE" : "FALSE";
    if (type.empty() || type == "n") return number_text(stored, in_per_cent_style(cell));
    return clean(without_escapes(stored));  // results of formulas, errors, dates as text
  }

  std::string shared_text(const std::string& stored, const Position& where) const {
    std::size_t index = 0;
    const auto read = std::from_chars(stored.data(), stored.data() + stored.size(), index);
    if (read.ec != std::errc{} || index >= shared_.texts.size())
      throw Unreadable(shared_.has_texts ? "a cell names a text that the workbook does not have"
                                         : "a cell names a shared text, and the workbook has none",
                       xlsx_wanted, where);
    return shared_.texts[index];
  }

  bool in_per_cent_style(const xml_node& cell) const {
    const std::string style = attribute(cell, "s");
    std::size_t index = 0;
    std::from_chars(style.data(), style.data() + style.size(), index);
    return shared_.per_cent.count(index) != 0;
  }

  std::string text() const {
    std::string all;
    int row = 1;
    for (const auto& [at, line] : lines_) {
      all.append(static_cast<std::size_t>(at - row), '\n');
      all += line;
      row = at;
    }
    return all.empty() ? all : all + "\n";
  }

  const Shared& shared_;
  std::map<int, std::string> lines_{};
  std::size_t size_{};
};

}  // namespace

std::string clean(const std::string& text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const auto c = units::code_point_at(text, at);
    const bool wrong = c.value == 0xFFFD && c.size == 1;
    if (wrong)
      out += "\uFFFD";
    else if (c.value < 0x20 && c.value != U'\n')
      out += c.value == U'\r' ? "" : " ";
    else
      out += text.substr(at, c.size);
    at += c.size;
  }
  return std::string(units::trimmed(out));
}

std::string rich_text(const xml_node& node) {
  std::string text;
  for (const auto& part : node.children()) {
    if (local_name(part.name()) == "t") text += text_in(part);
    if (local_name(part.name()) == "r")
      for (const auto& run : children(part, "t")) text += text_in(run);
  }
  return without_escapes(text);
}

bool shows_per_cent(const std::string& code) {
  bool quoted = false;
  for (std::size_t i = 0; i < code.size(); ++i) {
    if (code[i] == '"') quoted = !quoted;
    if (code[i] == '\\')
      ++i;
    else if (code[i] == '%' && !quoted)
      return true;
  }
  return false;
}

std::string sheet_as_csv(const xml_node& worksheet, const Shared& shared) {
  return SheetReader(shared).read(worksheet);
}

}  // namespace holdback::cli
