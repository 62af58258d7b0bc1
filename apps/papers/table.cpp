// Tables as strips: a head that is set again on every page, rows that are not split, rules only across.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "marks.hpp"
#include "table_widths.hpp"

namespace holdback::pdf {

namespace {

struct SetCell {
  TextPtr text{};
  bool number{};
  bool has_state{};
  State state{};
  Ink ink{black};
  double left{};
  double right{};  // where a number ends
};
using SetRow = std::vector<SetCell>;

/// What all rows of a table share.
struct Manner {
  Face face{};
  Face head{};
  double pad{};
  TableRoom room{};
  double width{};  // of the rules
  bool by_hand{};  // it is filled in
  Typesetter* type{};
};

double height_of(const SetRow& row, std::size_t from, std::size_t to) {
  double height = 0;
  for (const auto& cell : row) height = std::max(height, cell.text->height(from, to));
  return height;
}

std::size_t lines_of(const SetRow& row) {
  std::size_t most = 0;
  for (const auto& cell : row) most = std::max(most, cell.text->lines());
  return most;
}

SetRow set_row(const Manner& manner, const std::vector<papers::Cell>& cells) {
  SetRow row;
  double left = 0;
  for (std::size_t at = 0; at < manner.room.columns.size() && at < cells.size(); ++at) {
    const auto& column = manner.room.columns[at];
    const auto& cell = cells[at];
    const auto face = face_of(cell, manner.face);
    const double sign = cell.has_state ? sign_room * face.size : 0;
    SetCell set{manner.type->wrapped(cell.text, face, column.width - sign + 0.01),
                column.number,
                cell.has_state,
                cell.state,
                cell.tone == papers::Tone::muted ? muted : black,
                left,
                left + column.width};
    if (column.number && set.text->lines() == 1) {
      const double after = after_point(*manner.type, cell.text, face);
      const double shift = column.shift - after;
      if (after >= 0 && set.text->width() + shift + sign <= column.width + 0.1) set.right -= shift;
    }
    row.push_back(std::move(set));
    left += column.width + manner.room.gap;
  }
  return row;
}

void draw_cells(cairo_t* cr, const Manner& manner, const SetRow& row, double x, double y, std::size_t from,
                std::size_t to) {
  for (const auto& cell : row) {
    const double size = manner.face.size;
    const double sign = cell.has_state ? sign_room * size : 0;
    if (cell.has_state && from == 0) {
      const double start = cell.number ? cell.right - cell.text->width() - sign : cell.left;
      const double side = sign_side * size;
      draw_sign(cr, *manner.type, x + start, y + cell.text->base() - 0.365 * size - side / 2, side, cell.state);
    }
    if (cell.number) {
      cell.text->draw(cr, x + cell.right, y, cell.ink, Side::right, from, to);
    } else {
      cell.text->draw(cr, x + cell.left + sign, y, cell.ink, Side::left, from, to);
    }
  }
}

/// The rule under a row; in a table that is filled in by hand, a line to write on in each column.
void draw_row_rule(cairo_t* cr, const Manner& manner, double x, double y, bool closes) {
  if (!manner.by_hand || closes) {
    draw_rule(cr, x, y, manner.width, closes ? 0.6 : 0.4, closes ? accent : rule);
    return;
  }
  for (const auto& column : manner.room.columns) {
    draw_rule(cr, x, y, column.width, 0.4, rule);
    x += column.width + manner.room.gap;
  }
}

/// Draws at the table's own scale, which is below 1 where its columns need more room than there is.
Drawing scaled(double scale, Drawing draw) {
  if (scale == 1) return draw;
  return [=](cairo_t* cr, double x, double y) {
    cairo_save(cr);
    cairo_translate(cr, x, y);
    cairo_scale(cr, scale, scale);
    draw(cr, 0, 0);
    cairo_restore(cr);
  };
}

/// The head: names, units below them, a rule above and below.
Repeat head_of(const Manner& manner, const papers::Table& table) {
  struct Name {
    TextPtr head;
    TextPtr unit;
    Side side;
    double edge;
  };
  std::vector<Name> names;
  double heads = 0;
  double units = 0;
  double left = 0;
  for (std::size_t at = 0; at < table.columns.size(); ++at) {
    const auto& column = table.columns[at];
    const double width = manner.room.columns[at].width;
    const bool number = manner.room.columns[at].number;
    const Face unit{manner.head.size, false, manner.head.leading};
    names.push_back({manner.type->wrapped(column.head, manner.head, width + 0.01),
                     column.unit.empty() ? nullptr : manner.type->wrapped(column.unit, unit, width + 0.01),
                     number ? Side::right : Side::left, number ? left + width : left});
    heads = std::max(heads, names.back().head->height());
    if (names.back().unit) units = std::max(units, names.back().unit->height());
    left += width + manner.room.gap;
  }
  const double pad = manner.pad;
  const double height = heads + units + 2 * pad;
  const auto draw = [=, width = manner.width](cairo_t* cr, double x, double y) {
    draw_rule(cr, x, y, width, 0.9, accent);
    for (const auto& name : names) {
      const double top = y + pad + heads - name.head->height();
      name.head->draw(cr, x + name.edge, top, accent, name.side, 0, name.head->lines());
      if (name.unit) name.unit->draw(cr, x + name.edge, y + pad + heads, muted, name.side, 0, name.unit->lines());
    }
    draw_rule(cr, x, y + height, width, 0.6, accent);
  };
  return {height * manner.room.scale, scaled(manner.room.scale, draw)};
}

/// A row as one strip; as several when it is higher than a page.
void add_row(Strips& out, const Setting& setting, const std::shared_ptr<const Manner>& manner,
             const std::shared_ptr<const Repeat>& head, const std::shared_ptr<const SetRow>& row, double least,
             bool last) {
  const double scale = manner->room.scale;
  const double pad = manner->pad;
  const double most = (setting.height - head->height) / scale - 2 * pad - 1;
  const auto lines = std::max<std::size_t>(lines_of(*row), 1);
  const double line = std::max(height_of(*row, 0, lines) / static_cast<double>(lines), 1.0);
  const bool fits = height_of(*row, 0, lines) <= most;
  const auto each = fits ? lines : std::max<std::size_t>(static_cast<std::size_t>(most / line * 0.95), 1);
  for (std::size_t from = 0; from < lines; from += each) {
    const auto to = std::min(from + each, lines);
    const double text = height_of(*row, from, to);
    const double height = std::max(text + 2 * pad, fits ? least / scale : 0);
    Strip strip;
    strip.height = height * scale;
    strip.repeat = head;
    const bool closes = last && to == lines;
    strip.draw = scaled(scale, [=](cairo_t* cr, double x, double y) {
      draw_cells(cr, *manner, *row, x, y + (height - text) / 2, from, to);
      draw_row_rule(cr, *manner, x, y + height, closes);
    });
    out.push_back(std::move(strip));
  }
}

Manner manner_of(const Setting& setting, const papers::Table& table) {
  Manner manner;
  const double size = table.large ? std::max(setting.size, arms_length) : 0.92 * setting.size;
  manner.face = {size, false, 1.2};
  manner.head = {table.large ? size : 0.93 * size, true, 1.15};
  manner.pad = 0.28 * size;
  manner.type = setting.type;
  manner.by_hand = table.row_height > 0;
  manner.room = room_of(setting, table, manner.face, manner.head);
  manner.width = manner.room.width();
  return manner;
}

}  // namespace

void set_table(Strips& out, const Setting& setting, const papers::Table& table) {
  const auto first = out.size();
  const double e = setting.size;
  if (!table.caption.empty()) {
    add_lines(out, setting.type->wrapped(table.caption, {e, true, 1.3}, setting.width), 0, 0, black);
    out.back().height += 0.25 * e;
  }
  const auto manner = std::make_shared<const Manner>(manner_of(setting, table));
  if (manner->room.broken) {
    setting.warnings->push_back(
        fmt::format("a table of {} columns is too wide, words in it are broken", manner->room.columns.size()));
  }
  const auto nothing = std::make_shared<const Repeat>(Repeat{0, [](cairo_t*, double, double) {}});
  auto head = table.columns.empty() ? nothing : std::make_shared<const Repeat>(head_of(*manner, table));
  Strip strip;
  strip.height = head->height;
  strip.draw = head->draw;
  if (head->height > 0.4 * setting.height) head = nothing;  // no room for rows below such a one on every page
  out.push_back(std::move(strip));
  for (auto i = first; i < out.size(); ++i) out[i].keeps = !table.rows.empty() || i + 1 < out.size();
  const auto rows = out.size();
  const double least = std::isfinite(table.row_height) ? std::clamp(table.row_height, 0.0, 60.0) : 0;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    add_row(out, setting, manner, head, std::make_shared<const SetRow>(set_row(*manner, table.rows[i])),
            least * mm / setting.scale, i + 1 == table.rows.size());
  }
  if (table.rows.size() > 2 && out.size() - rows == table.rows.size()) {
    out[rows].keeps = true;            // no row alone under the head,
    out[out.size() - 2].keeps = true;  // nor alone on the last page
  }
  out[first].before = 0.9 * e;
  out.back().height += 0.4 * e;
}

}  // namespace holdback::pdf
