#include "holdback/report/table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "holdback/draw/cells.hpp"

namespace holdback::report {

namespace {

using Lines = std::vector<std::string>;

constexpr int gap = 2;
constexpr int least_flexible = 8;  // a name is not squeezed below this

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

/// The line of group names; empty when there are none.
std::string groups_line(const std::vector<Column>& columns, const std::vector<int>& widths) {
  std::string line;
  bool any = false;
  for (std::size_t from = 0; from < columns.size();) {
    const auto to = group_end(columns, from);
    const auto& name = columns[from].group;
    any = any || !name.empty();
    if (from > 0) line += std::string(gap, ' ');
    const int room = span(widths, from, to);
    line += draw::pad_right(
        std::string(static_cast<std::size_t>(std::max(room - draw::columns(name), 0) / 2), ' ') + name, room);
    from = to;
  }
  return any ? line : std::string{};
}

Lines head_lines(const std::vector<Column>& columns, const std::vector<int>& widths) {
  std::vector<Lines> heads;
  std::size_t height = 0;
  for (const auto& column : columns) height = std::max(height, heads.emplace_back(split(column.head)).size());
  Lines lines;
  if (auto groups = groups_line(columns, widths); !groups.empty()) lines.push_back(groups);
  for (std::size_t row = 0; row < height; ++row) {
    std::string line;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const auto missing = height - heads[i].size();
      const auto text = row < missing ? std::string{} : heads[i][row - missing];
      line += (i > 0 ? std::string(gap, ' ') : "") + aligned(draw::cut(text, widths[i]), widths[i], columns[i].number);
    }
    lines.push_back(line);
  }
  return lines;
}

/// The lines of one cell, each as wide as its column.
Lines cell_lines(const Cell& cell, const Column& column, int width, bool colour) {
  Lines lines = column.flexible ? draw::wrapped(cell.text, width) : Lines{draw::cut(cell.text, width)};
  for (auto& line : lines) {
    const auto room = std::max(width - draw::columns(line), 0);
    const std::string blank(static_cast<std::size_t>(room), ' ');
    const auto text = draw::inked(line, cell.ink, colour);
    line = column.number ? blank + text : text + blank;
  }
  return lines;
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
  int flexible = 0;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    widths[i] = widest(split(columns_[i].head));
    for (const auto& row : rows_) widths[i] = std::max(widths[i], draw::columns(row[i].text));
    total += widths[i];
    flexible += columns_[i].flexible ? 1 : 0;
  }
  for (std::size_t from = 0; from < columns_.size();) {  // a group's name may need more room than its columns
    const auto to = group_end(columns_, from);
    const int more = std::max(draw::columns(columns_[from].group) - span(widths, from, to), 0);
    widths[to - 1] += more;
    total += more;
    from = to;
  }
  while (total > width && flexible > 0) {  // the widest name gives way, one column at a time
    std::size_t most = columns_.size();
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (columns_[i].flexible && (most == columns_.size() || widths[i] > widths[most])) most = i;
    }
    if (widths[most] <= least_flexible) break;
    --widths[most];
    --total;
  }
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

std::vector<std::string> aligned_numbers(const std::vector<double>& si, Quantity kind, units::System system,
                                         int digits) {
  double largest = 0;
  for (const double value : si) largest = std::max(largest, std::abs(units::in_display_unit(value, kind, system)));
  const int before = largest > 0 ? static_cast<int>(std::floor(std::log10(largest))) + 1 : digits;
  const int decimals = std::clamp(digits - before, 0, 6);
  std::vector<std::string> out;
  for (const double value : si)
    out.push_back(fmt::format("{:.{}f}", units::in_display_unit(value, kind, system), decimals));
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
