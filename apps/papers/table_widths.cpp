#include "table_widths.hpp"

#include <algorithm>

#include "holdback/draw/scene.hpp"
#include "marks.hpp"

namespace holdback::pdf {

namespace {

/// The widest word [pt].
double widest_word(std::string_view text, const Face& face) {
  double widest = 0;
  while (!text.empty()) {
    const auto end = std::min(text.find(' '), text.size());
    const auto weight = face.bold ? draw::Weight::bold : draw::Weight::normal;
    widest = std::max(widest, draw::text_width(text.substr(0, end), face.size, weight));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return widest;
}

void ask_for_head(ColumnRoom& room, Typesetter& type, const papers::Column& column, const Face& head) {
  const double whole = type.width(column.head, head);
  const double word = std::min(widest_word(column.head, head), whole);
  const double unit = type.width(column.unit, {head.size, false});
  room.least = std::max(word, unit);
  room.natural = std::max({word, unit, std::min(whole, std::max(8 * head.size, 0.6 * whole))});
}

void ask_for_cell(ColumnRoom& room, Typesetter& type, const papers::Cell& cell, const Face& face) {
  if (cell.text.empty() && !cell.has_state) return;
  const double whole = width_of(type, cell, face);
  room.natural = std::max(room.natural, whole);
  const double sign = cell.has_state ? sign_room * face.size : 0;
  if (whole > room.least) {
    const double word = room.number ? whole : sign + widest_word(cell.text, face_of(cell, face));
    room.least = std::max(room.least, std::min(whole, word));
  }
}

/// Numbers stand with their points below each other: room for the widest part before and after it.
void ask_for_points(ColumnRoom& room, Typesetter& type, const papers::Table& table, std::size_t at, const Face& face) {
  double before = 0;
  for (const auto& row : table.rows) {
    if (at >= row.size()) continue;
    room.shift = std::max(room.shift, after_point(type, row[at].text, face_of(row[at], face)));
  }
  for (const auto& row : table.rows) {
    if (at >= row.size() || row[at].text.empty()) continue;
    const double after = after_point(type, row[at].text, face_of(row[at], face));
    const double tail = after < 0 ? room.shift : after;
    before = std::max(before, width_of(type, row[at], face) - tail);
  }
  room.natural = std::max(room.natural, before + room.shift);
  room.least = std::max(room.least, before + room.shift);
}

bool is_empty(const papers::Table& table, std::size_t at) {
  return std::all_of(table.rows.begin(), table.rows.end(), [at](const std::vector<papers::Cell>& row) {
    return at >= row.size() || (row[at].text.empty() && !row[at].has_state);
  });
}

double sum(const TableRoom& room, double ColumnRoom::*of) {
  double total = room.columns.empty() ? 0 : static_cast<double>(room.columns.size() - 1) * room.gap;
  for (const auto& column : room.columns) total += column.*of;
  return total;
}

/// Every column gets what it asks for, but no more than a common cap; nor less than its widest word, unless words are
/// broken.
void share_out(TableRoom& room, double width) {
  double low = 0;
  double high = width;
  for (int i = 0; i < 40; ++i) {
    const double cap = (low + high) / 2;
    for (auto& column : room.columns) {
      column.width = room.broken ? std::min(column.least, cap) : std::max(column.least, std::min(column.natural, cap));
    }
    (sum(room, &ColumnRoom::width) > width ? high : low) = cap;
  }
}

/// What is left over goes to the columns evenly, but never so much that a row falls apart. A number in the first column
/// stays at the left; in a table that is filled in by hand all goes to what is empty.
void spread(TableRoom& room, double width, double most, bool by_hand) {
  const auto takes = [&](const ColumnRoom& column) {
    return by_hand ? column.empty : &column != &room.columns.front() || !column.number;
  };
  const auto count = std::count_if(room.columns.begin(), room.columns.end(), takes);
  const double left = width - sum(room, &ColumnRoom::natural);
  const double each = std::min(left / std::max(static_cast<double>(count), 1.0), by_hand ? width : most);
  for (auto& column : room.columns) column.width = column.natural + (takes(column) ? each : 0);
}

/// Type as small as it has to be, but as large as may be.
void make_smaller(TableRoom& room, double width, double size) {
  const double least = sum(room, &ColumnRoom::least);
  room.scale = std::clamp(width / std::max(least, 1.0), smallest_scale, 1.0);
  room.broken = least * room.scale > width + 0.01;
  if (!room.broken) return;
  const auto count = static_cast<double>(room.columns.size());
  room.gap = std::min(room.gap, 0.4 * size);
  room.scale = std::min(room.scale, width / (count * (1.2 * size + room.gap)));
}

}  // namespace

std::size_t columns_of(const papers::Table& table) {
  auto count = table.columns.size();
  for (const auto& row : table.rows) count = std::max(count, row.size());
  return count;
}

Face face_of(const papers::Cell& cell, const Face& face) {
  return {face.size, cell.tone == papers::Tone::strong, face.leading};
}

double width_of(Typesetter& type, const papers::Cell& cell, const Face& face) {
  return type.width(cell.text, face_of(cell, face)) + (cell.has_state ? sign_room * face.size : 0);
}

double after_point(Typesetter& type, const std::string& text, const Face& face) {
  std::string_view rest = text;
  if (rest.starts_with("−") || rest.starts_with("±")) rest.remove_prefix(rest.starts_with("−") ? 3 : 2);
  if (!rest.empty() && (rest[0] == '-' || rest[0] == '+' || rest[0] == '<' || rest[0] == '>')) rest.remove_prefix(1);
  if (rest.empty() || rest.find_first_not_of("0123456789.,") != rest.npos) return -1;
  const auto point = rest.rfind('.');
  return point == rest.npos ? 0 : type.width(rest.substr(point), face);
}

double TableRoom::width() const { return sum(*this, &ColumnRoom::width); }

TableRoom room_of(const Setting& setting, const papers::Table& table, const Face& face, const Face& head) {
  TableRoom room;
  room.columns.resize(columns_of(table));
  for (std::size_t at = 0; at < room.columns.size(); ++at) {
    auto& column = room.columns[at];
    if (at < table.columns.size()) {
      column.number = table.columns[at].number;
      ask_for_head(column, *setting.type, table.columns[at], head);
    }
    for (const auto& row : table.rows) {
      if (at < row.size()) ask_for_cell(column, *setting.type, row[at], face);
    }
    // A name without blanks is broken rather than that the whole table shrinks for it.
    if (!column.number) column.least = std::min(column.least, 0.3 * setting.width);
    column.empty = is_empty(table, at);
    if (column.empty) column.number = false;  // who writes there begins at the left
    if (column.number) ask_for_points(column, *setting.type, table, at, face);
  }
  if (sum(room, &ColumnRoom::natural) <= setting.width) {
    spread(room, setting.width, 2.4 * face.size, table.row_height > 0);
    return room;
  }
  make_smaller(room, setting.width, face.size);
  share_out(room, setting.width / room.scale);
  return room;
}

}  // namespace holdback::pdf
