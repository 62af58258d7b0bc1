#include "holdback/draw/pads_sketch.hpp"

#include <gtest/gtest.h>

#include "unit/draw/pictures.hpp"

namespace holdback::draw {
namespace {

using pictures::has_label;
using pictures::shapes;

std::size_t filled_pads(const Scene& scene) { return shapes<Polygon>(scene, MarkRole::axis).size(); }

/// Open pads are closed lines.
std::size_t open_pads(const Scene& scene) { return shapes<Polyline>(scene, MarkRole::axis).size(); }

TEST(pads_sketch, fills_engaged_pairs_and_leaves_released_ones_open) {
  for (int brakes = 1; brakes <= 3; ++brakes)
    for (const int fitted : {1, 2, 4, 6, 24})
      for (int engaged = 0; engaged <= fitted; ++engaged) {
        const Scene scene = pads_sketch({brakes, fitted, engaged});
        EXPECT_EQ(filled_pads(scene), static_cast<std::size_t>(brakes * engaged));
        EXPECT_EQ(open_pads(scene), static_cast<std::size_t>(brakes * (fitted - engaged)));
      }
}

TEST(pads_sketch, numbers_engaged_pairs_alone) {
  const Scene scene = pads_sketch({1, 6, 3});
  std::vector<std::string> numbers;
  for (const auto& label : pictures::labels(scene))
    if (label.text.find_first_not_of("0123456789") == std::string::npos) numbers.push_back(label.text);
  EXPECT_EQ(numbers, (std::vector<std::string>{"1", "2", "3"}));
  EXPECT_TRUE(has_label(scene, "Engage 3 of 6 pairs"));
}

TEST(pads_sketch, keeps_its_words_on_the_page_and_apart) {
  for (const int brakes : {1, 2, 3, 9})
    for (const int fitted : {1, 2, 3, 4, 5, 8, 12, 24})
      for (const int engaged : {0, 1, fitted}) {
        const Scene scene = pads_sketch({brakes, fitted, engaged});
        EXPECT_EQ(pictures::outside(scene), "") << brakes << " " << fitted << " " << engaged;
        EXPECT_EQ(pictures::overlapping(scene), "") << brakes << " " << fitted << " " << engaged;
        EXPECT_FALSE(scene.title.empty());
        EXPECT_FALSE(scene.description.empty());
      }
}

TEST(pads_sketch, draws_three_discs_at_most_and_tells_of_the_others) {
  const Scene scene = pads_sketch({5, 4, 2});
  EXPECT_EQ(filled_pads(scene), 6U);
  EXPECT_TRUE(has_label(scene, "5 brakes"));
  EXPECT_TRUE(has_label(scene, "first 3"));
}

TEST(pads_sketch, brings_numbers_into_their_ranges) {
  EXPECT_EQ(filled_pads(pads_sketch({0, 0, 7})), 1U);
  EXPECT_EQ(open_pads(pads_sketch({1, 4, -2})), 4U);
}

TEST(pads_sketch, has_discs_of_one_size_on_every_card) {
  EXPECT_NEAR(share_of_width(pads_sketch({3, 4, 1})), 1, 1e-12);
  const Scene one = pads_sketch({1, 4, 1});
  EXPECT_NEAR(one.width / share_of_width(one), pads_sketch({2, 4, 1}).width / share_of_width(pads_sketch({2, 4, 1})),
              1e-9);
}

}  // namespace
}  // namespace holdback::draw
