// How wide the columns of a table are set.
#pragma once

#include <vector>

#include "strip.hpp"

namespace holdback::pdf {

/// What a column asks for [pt], and what it gets.
struct ColumnRoom {
  double natural{};  // nothing in it is broken, its head in about two lines
  double least{};    // no word of it is broken
  double width{};    // what it gets
  double shift{};    // of numbers: the widest part from the decimal point on
  bool number{};
  bool empty{};  // in every row
};

struct TableRoom {
  std::vector<ColumnRoom> columns{};
  double gap{10};   // between columns
  double scale{1};  // the table is drawn at; below 1 where words have no room otherwise
  bool broken{};    // words are broken even so
  double width() const;
};

/// Columns take what they need; where that is too much, the widest give way first and wrap; as a last resort the type
/// is smaller and words are broken. `smallest_scale` is kept as long as every column has room for a letter.
TableRoom room_of(const Setting& setting, const papers::Table& table, const Face& face, const Face& head);

/// Number of columns: the heads', or more where a row has more cells.
std::size_t columns_of(const papers::Table& table);

/// How wide a plain number comes out from its decimal point on, 0 without one; −1 for any other text.
double after_point(Typesetter& type, const std::string& text, const Face& face);

Face face_of(const papers::Cell& cell, const Face& face);
double width_of(Typesetter& type, const papers::Cell& cell, const Face& face);

}  // namespace holdback::pdf
