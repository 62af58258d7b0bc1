// How a paper looks: sheet and margins, inks, sizes. Lengths are points (1/72 inch) unless said otherwise.
#pragma once

#include "pdf.hpp"

namespace holdback::pdf {

inline constexpr double mm = 72 / 25.4;

struct Ink {
  double red{};
  double green{};
  double blue{};
};
inline constexpr Ink black{0.07, 0.08, 0.09};
inline constexpr Ink accent{0.12, 0.23, 0.33};  // dark blue-grey: titles, heads, rules that lead the eye
inline constexpr Ink muted{0.33, 0.37, 0.41};   // 7 : 1 on white
inline constexpr Ink rule{0.76, 0.79, 0.82};    // thin lines between rows
inline constexpr Ink panel{0.90, 0.92, 0.93};
inline constexpr Ink white{1, 1, 1};

/// A sheet with its margins. The body's frame is the text's width by `room()`.
struct SheetSize {
  double width{};
  double height{};
  double side{20 * mm};
  double top{18 * mm};
  double bottom{18 * mm};
  double text_width() const { return width - 2 * side; }
};

inline SheetSize size_of(Sheet sheet) {
  return sheet == Sheet::a4 ? SheetSize{210 * mm, 297 * mm} : SheetSize{8.5 * 72, 11.0 * 72};
}

inline constexpr double head_room = 22;  // that the running head takes below the top margin
inline constexpr double foot_room = 20;  // that the foot takes above the bottom margin
inline constexpr double foot_size = 7;   // of the type in running head and foot

inline constexpr double arms_length = 14;  // smallest type that is read from an arm's length
inline constexpr double smallest_scale = 0.7;

}  // namespace holdback::pdf
