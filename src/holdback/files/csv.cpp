#include "holdback/files/csv.hpp"

#include <algorithm>
#include <array>

#include "holdback/files/text_file.hpp"

namespace holdback::files {
namespace {

constexpr std::size_t most_cells = 10'000;  // that a row keeps; no table that is read has as many

void fault_at(Row& row, RowFault fault, Position where) {
  if (row.fault != RowFault::none) return;
  row.fault = fault;
  row.fault_where = where;
}

}  // namespace

std::size_t Row::filled() const {
  const auto holds = [](const Cell& cell) { return !cell.text.empty(); };
  return static_cast<std::size_t>(std::count_if(cells.begin(), cells.end(), holds));
}

bool CsvReader::next(Row& row) {
  if (at_ >= text_.size()) return false;
  row = Row{};
  row.number = ++rows_;
  row.cells.push_back(cell(row));
  while (at_ < text_.size() && text_[at_] == delimiter_) {
    take();
    Cell next = cell(row);
    if (row.cells.size() <= most_cells) row.cells.push_back(std::move(next));
  }
  if (at_ < text_.size() && text_[at_] == '\r') take();
  if (at_ < text_.size()) take();
  if (sheet_)
    for (std::size_t i = 0; i < row.cells.size(); ++i) row.cells[i].where = {row.number, static_cast<int>(i) + 1, true};
  return true;
}

/// Leaves the reader on the delimiter, on the line end, or at the end of the text.
Cell CsvReader::cell(Row& row) {
  while (at_ < text_.size() && (text_[at_] == ' ' || (text_[at_] == '\t' && delimiter_ != '\t'))) take();
  if (at_ < text_.size() && text_[at_] == '"') return quoted_cell(row);
  Cell cell{"", where_};
  while (!at_end_of_cell()) cell.text += take();
  cell.text = std::string(trimmed(cell.text));
  return cell;
}

Cell CsvReader::quoted_cell(Row& row) {
  Cell cell{"", where_};
  take();
  while (at_ < text_.size()) {
    const char c = take();
    if (c != '"') {
      cell.text += c;
    } else if (at_ < text_.size() && text_[at_] == '"') {
      cell.text += take();
    } else {
      for (; !at_end_of_cell(); take())
        if (text_[at_] != ' ') fault_at(row, RowFault::text_after_quote, where_);
      return cell;
    }
  }
  fault_at(row, RowFault::open_quote, cell.where);
  return cell;
}

bool CsvReader::at_end_of_cell() const {
  if (at_ >= text_.size()) return true;
  const char c = text_[at_];
  const bool line_end = c == '\n' || (c == '\r' && (at_ + 1 == text_.size() || text_[at_ + 1] == '\n'));
  return c == delimiter_ || line_end;
}

char CsvReader::take() {
  const char c = text_[at_++];
  const bool inside_character = (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
  if (c == '\n') {
    where_ = {where_.line + 1, 1};
  } else if (!inside_character) {
    ++where_.column;
  }
  return c;
}

char delimiter_of(std::string_view text) {
  constexpr std::array<char, 3> delimiters{',', ';', '\t'};
  std::array<int, 3> counts{};
  bool quoted = false;
  for (const char c : text) {
    if (c == '"') quoted = !quoted;
    if (c == '\n' && counts != std::array<int, 3>{}) break;
    for (std::size_t i = 0; i < delimiters.size(); ++i) counts[i] += !quoted && c == delimiters[i] ? 1 : 0;
  }
  const auto most = std::max_element(counts.begin(), counts.end());
  return delimiters[static_cast<std::size_t>(most - counts.begin())];
}

}  // namespace holdback::files
