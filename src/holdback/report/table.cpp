#include "holdback/report/table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "holdback/draw/cells.hpp"

namespace holdback::report {

namespace {

using Lines = std::vector<std::string>;

constexpr int gap = 2;
constexpr int least_text = 6;  // a column of text is not squeezed below this

Lines split(const std::string& text) {
  Lines parts;
  std::size_t start = 0;
  for (auto end = text.find('\n'); end != std::string::npos; end = text.find('\n', start)) {
    parts.push_back(text.substr(start, end - start));
    start = end + 1;
  }
  parts.push_back(text.substr(start));
  return parts;
}

std::string aligned(const std::string& text, int width, bool right) {
  return right ? draw::pad_left(text, width) : draw::pad_right(text, width);
}

std::string trimmed_end(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

int widest(const Lines& lines) {
  int most = 0;
  for (const auto& line : lines) most = std::max(most, draw::columns(line));
  return most;
}

/// First column after the group that starts at `from`.
std::size_t group_end(const std::vector<Column>& columns, std::size_t from) {
  auto to = from + 1;
  while (to < columns.size() && !columns[from].group.empty() && columns[to].group == columns[from].group) ++to;
  return to;
}

int span(const std::vector<int>& widths, std::size_t from, std::size_t to) {
  int total = gap * static_cast<int>(to - from - 1);
  for (auto i = from; i < to; ++i) total += widths[i];
  return total;
}

/// The lines of a column's head; a group's name takes one more, right above.
std::size_t head_height(const Column& column) {
  return (column.head.empty() ? 0 : split(column.head).size()) + (column.group.empty() ? 0 : 1);
}

/// A group's name in the middle of the room that its columns take.
std::string centred(const std::string& text, int room) {
  return draw::pad_right(std::string(static_cast<std::size_t>(std::max(room - draw::columns(text), 0) / 2), ' ') + text,
                         room);
}

/// What a head shows in a line counted from the bottom.
std::string head_line(const Column& column, int width, std::size_t from_bottom) {
  const auto lines = split(column.head);
  const auto text = from_bottom < lines.size() ? lines[lines.size() - 1 - from_bottom] : std::string{};
  return aligned(draw::cut(text, width), width, column.number);
}

Lines head_lines(const std::vector<Column>& columns, const std::vector<int>& widths) {
  std::size_t height = 0;
  for (const auto& column : columns) height = std::max(height, head_height(column));
  Lines lines;
  for (std::size_t line = height; line-- > 0;) {
    std::string text;
    for (std::size_t from = 0; from < columns.size();) {
      const auto to = group_end(columns, from);
      const bool group = !columns[from].group.empty() && line + 1 == head_height(columns[from]);
      text += from > 0 ? std::string(gap, ' ') : "";
      if (group) text += centred(columns[from].group, span(widths, from, to));
      for (auto i = from; i < to && !group; ++i)
        text += (i > from ? std::string(gap, ' ') : "") + head_line(columns[i], widths[i], line);
      from = to;
    }
    lines.push_back(text);
  }
  return lines;
}

/// The lines of one cell, each as wide as its column.
Lines cell_lines(const Cell& cell, const Column& column, int width, bool colour) {
  Lines lines = column.number ? Lines{draw::cut(cell.text, width)} : draw::wrapped(cell.text, width);
  for (auto& line : lines) {
    const auto room = std::max(width - draw::columns(line), 0);
    const std::string blank(static_cast<std::size_t>(room), ' ');
    const auto text = draw::inked(line, cell.ink, colour);
    line = column.number ? blank + text : text + blank;
  }
  return lines;
}

/// Takes columns from the widest of those that give way, one at a time, until the total fits. Returns the new total.
template <typename GivesWay>
int squeeze(std::vector<int>& widths, int total, int width, GivesWay gives_way) {
  while (total > width) {
    std::size_t most = widths.size();
    for (std::size_t i = 0; i < widths.size(); ++i) {
      if (gives_way(i) && (most == widths.size() || widths[i] > widths[most])) most = i;
    }
    if (most == widths.size() || widths[most] <= least_text) return total;
    --widths[most];
    --total;
  }
  return total;
}

}  // namespace

void Table::row(std::vector<Cell> cells) {
  cells.resize(columns_.size());
  for (auto& cell : cells) cell.text = draw::plain(cell.text);
  rows_.push_back(std::move(cells));
}

std::vector<int> Table::widths(int width) const {
  std::vector<int> widths(columns_.size());
  int total = gap * (static_cast<int>(columns_.size()) - 1);
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    widths[i] = widest(split(columns_[i].head));
    for (const auto& row : rows_) widths[i] = std::max(widths[i], draw::columns(row[i].text));
    total += widths[i];
  }
  for (std::size_t from = 0; from < columns_.size();) {  // a group's name may need more room than its columns
    const auto to = group_end(columns_, from);
    const int more = std::max(draw::columns(columns_[from].group) - span(widths, from, to), 0);
    widths[to - 1] += more;
    total += more;
    from = to;
  }
  const auto gives_way = [this](bool flexible) {
    return [this, flexible](std::size_t i) { return !columns_[i].number && (!flexible || columns_[i].flexible); };
  };
  total = squeeze(widths, total, width, gives_way(true));
  squeeze(widths, total, width, gives_way(false));
  return widths;
}

std::vector<std::string> Table::lines(int width, bool colour) const {
  const auto widths = this->widths(width);
  Lines out;
  for (const auto& head : head_lines(columns_, widths))
    out.push_back(draw::inked(trimmed_end(head), draw::Ink::faint, colour));
  for (const auto& row : rows_) {
    std::vector<Lines> cells;
    std::size_t height = 1;
    for (std::size_t i = 0; i < row.size(); ++i) {
      height = std::max(height, cells.emplace_back(cell_lines(row[i], columns_[i], widths[i], colour)).size());
    }
    for (std::size_t line = 0; line < height; ++line) {
      std::string text;
      for (std::size_t i = 0; i < row.size(); ++i) {
        const std::string blank(static_cast<std::size_t>(widths[i]), ' ');
        text += (i > 0 ? std::string(gap, ' ') : "") + (line < cells[i].size() ? cells[i][line] : blank);
      }
      out.push_back(trimmed_end(text));
    }
  }
  return out;
}

namespace {

/// Digits before the decimal point; none or fewer for numbers below one.
int places_before(double value) { return static_cast<int>(std::floor(std::log10(value))) + 1; }

/// Decimals with which the largest shows `digits` digits; one more where the smallest would show fewer than two.
int decimals_for(const std::vector<double>& numbers, int digits) {
  double largest = 0;
  double smallest = std::numeric_limits<double>::infinity();
  for (const double number : numbers) {
    if (number == 0) continue;
    largest = std::max(largest, std::abs(number));
    smallest = std::min(smallest, std::abs(number));
  }
  if (largest == 0) return 0;
  const int usual = digits - places_before(largest);
  return std::clamp(std::max(usual, std::min(2 - places_before(smallest), usual + 1)), 0, 6);
}

}  // namespace

std::vector<std::string> aligned_numbers(const std::vector<double>& si, Quantity kind, units::System system,
                                         int digits) {
  std::vector<double> numbers;
  numbers.reserve(si.size());
  for (const double value : si) numbers.push_back(units::in_display_unit(value, kind, system));
  const int decimals = decimals_for(numbers, digits);
  std::vector<std::string> out;
  out.reserve(numbers.size());
  for (const double number : numbers) out.push_back(fmt::format("{:.{}f}", number, decimals));
  return out;
}

std::string unit_head(Quantity kind, units::System system) { return "[" + units::unit_of(kind, system) + "]"; }

std::vector<std::string> beside(const std::vector<std::string>& left, const std::vector<std::string>& right,
                                int space) {
  const int width = widest(left) + space;
  Lines out;
  for (std::size_t i = 0; i < std::max(left.size(), right.size()); ++i) {
    const auto first = i < left.size() ? left[i] : std::string{};
    out.push_back(i < right.size() ? draw::pad_right(first, width) + right[i] : first);
  }
  return out;
}

}  // namespace holdback::report
