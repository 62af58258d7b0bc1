#include "holdback/files/log_cells.hpp"

#include <algorithm>
#include <cctype>
#include <set>

#include "holdback/files/decimal.hpp"
#include "holdback/files/text_file.hpp"

namespace holdback::files {

std::vector<HeadLine> first_lines(std::string_view text, std::size_t most, bool ends) {
  std::vector<HeadLine> lines;
  std::size_t at = 0;
  while (at < text.size() && lines.size() < most) {
    const std::size_t end = text.find('\n', at);
    if (end == std::string_view::npos && !ends) break;
    std::string_view line = text.substr(at, end == std::string_view::npos ? end : end - at);
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    lines.push_back({static_cast<int>(lines.size()) + 1, at, line});
    if (end == std::string_view::npos) break;
    at = end + 1;
  }
  return lines;
}

std::string as_utf8(std::string_view text) {
  bool sound = true;
  for (std::size_t at = 0; at < text.size() && sound;) {
    const std::size_t size = character_size(text, at);
    sound = size > 0;
    at += size;
  }
  if (sound) return std::string(text);
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x80) {
      out += c;
    } else {
      out += static_cast<char>(0xC0U | (byte >> 6U));
      out += static_cast<char>(0x80U | (byte & 0x3FU));
    }
  }
  return out;
}

std::vector<Cell> cells_of(const HeadLine& line, char delimiter) {
  const std::string text = as_utf8(line.text);
  std::string_view rest = text;
  std::size_t skipped = 0;
  while (skipped < rest.size() && (rest[skipped] == '#' || rest[skipped] == '%' || rest[skipped] == ' ')) ++skipped;
  if (rest.find_first_of("#%") >= skipped) skipped = 0;  // blanks alone stay for the reader
  Row row;
  CsvReader(rest.substr(skipped), delimiter).next(row);
  for (Cell& cell : row.cells) cell.where = {line.number, cell.where.column + static_cast<int>(skipped)};
  return row.cells;
}

bool is_no_reading(std::string_view cell) {
  static const std::set<std::string> words{
      "",        "nan",      "-nan",      "+nan",    "null",     "nil",       "none",       "n/a",     "na",
      "#n/a",    "#na",      "#value!",   "#div/0!", "#num!",    "#ref!",     "#null!",     "-",       "--",
      "---",     "----",     "*",         "**",      "***",      "****",      "?",          "inf",     "-inf",
      "+inf",    "infinity", "-infinity", "1.#inf",  "-1.#inf",  "1.#qnan",   "-1.#ind",    "bad",     "error",
      "fault",   "over",     "under",     "ovl",     "overload", "overrange", "underrange", "invalid", "missing",
      "no data", "nodata",   "\u2013",    "\u2014"};
  constexpr std::size_t longest = 16;
  if (cell.size() > longest) return false;
  std::string small(cell);
  for (char& c : small) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return words.count(small) != 0;
}

bool is_number(std::string_view cell, char point) {
  std::string padded(cell);
  padded.append(decimal_padding, '\0');
  const char* at = padded.data();
  double value = 0;
  return !cell.empty() && scan_decimal(at, point, value) && at == padded.data() + cell.size();
}

}  // namespace holdback::files
