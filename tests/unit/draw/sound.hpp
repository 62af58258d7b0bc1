// What must hold of every figure, whatever it shows.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "holdback/draw/figures.hpp"
#include "holdback/draw/svg.hpp"
#include "unit/draw/pictures.hpp"

namespace holdback::draw {

/// Nothing reaches out of the page, no two labels share room, the SVG is XML without a number that is none.
inline void expect_sound(const Scene& scene) {
  EXPECT_EQ(pictures::outside(scene), "") << scene.title;
  EXPECT_EQ(pictures::overlapping(scene), "") << scene.title;
  EXPECT_FALSE(scene.title.empty());
  EXPECT_FALSE(scene.description.empty());
  const auto text = svg(scene);
  EXPECT_EQ(pictures::Xml(text).fault(), "") << scene.title;
  const auto marks = text.substr(text.find("</style>"));
  for (const auto* word : {"nan", "inf\"", "inf ", "undefined"}) EXPECT_EQ(marks.find(word), std::string::npos) << word;
}

/// The names of the files of an answer's figures, in their order.
inline std::vector<std::string> files(const Answer& answer) {
  std::vector<std::string> out;
  for (const auto& figure : figures_of(answer, units::System::si)) out.push_back(figure.file);
  return out;
}

}  // namespace holdback::draw
