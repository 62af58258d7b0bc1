// Colours and broken lines of pictures, one table for every writer, so that a figure is the same wherever it is drawn.
#pragma once

#include <algorithm>
#include <array>
#include <string_view>

#include "holdback/draw/scene.hpp"

namespace holdback::draw {

/// Colours of a role: of its lines and letters, and of its areas. "#rrggbb".
struct Paint {
  std::string_view line;
  std::string_view fill;
};

struct Palette {
  std::string_view paper;
  std::array<Paint, 10> roles;  // in the order of MarkRole; that of `curve` stands in `series`
  std::array<Paint, series_count> series;
};

// Letters keep at least 4.5 : 1 against the paper, lines 3 : 1. The series differ in lightness as well as in hue.
inline constexpr Palette light{"#ffffff",
                               {{{"#30383f", "#30383f"},
                                 {"#c9cfd4", "#eef0f2"},
                                 {"", ""},
                                 {"#1b1f23", "#1b1f23"},
                                 {"#8f9aa3", "#e3e8ec"},
                                 {"#1b1f23", "#1b1f23"},
                                 {"#5b6670", "#8b959d"},
                                 {"#0b6b52", "#e2f2ec"},
                                 {"#7a5500", "#fbe7ad"},
                                 {"#a8201a", "#eea99b"}}},
                               {{{"#0b4f8a", "#0b4f8a"},
                                 {"#b8480b", "#b8480b"},
                                 {"#00735a", "#00735a"},
                                 {"#7d2f7a", "#7d2f7a"},
                                 {"#7a5c00", "#7a5c00"},
                                 {"#3f6f8f", "#3f6f8f"}}}};

inline constexpr Palette dark{"#14181c",
                              {{{"#c3cad0", "#c3cad0"},
                                {"#3a434b", "#232a30"},
                                {"", ""},
                                {"#f2f4f5", "#f2f4f5"},
                                {"#7c8790", "#2c353c"},
                                {"#e8ebed", "#e8ebed"},
                                {"#a0abb4", "#6d7780"},
                                {"#6cd3b2", "#17382f"},
                                {"#f0c554", "#574614"},
                                {"#ff9a8b", "#7c2a22"}}},
                              {{{"#7fb9f2", "#7fb9f2"},
                                {"#f59a66", "#f59a66"},
                                {"#5fd0ae", "#5fd0ae"},
                                {"#dba2d8", "#dba2d8"},
                                {"#e3c565", "#e3c565"},
                                {"#a9cbe0", "#a9cbe0"}}}};

/// Line and gap [mm] of what is dashed; of what is dotted, with round ends.
inline constexpr std::array<double, 2> dashes_of_dashed{2.4, 1.2};
inline constexpr std::array<double, 2> dashes_of_dotted{0.01, 1.1};

/// The number of a mark's series, 0 … series_count − 1.
inline int series_of(const Style& style) { return std::clamp(style.series, 0, series_count - 1); }

/// The colours of a mark.
inline const Paint& paint_of(const Palette& palette, const Style& style) {
  return style.role == MarkRole::curve ? palette.series[static_cast<std::size_t>(series_of(style))]
                                       : palette.roles[static_cast<std::size_t>(style.role)];
}

}  // namespace holdback::draw
