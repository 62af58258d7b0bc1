#include "holdback/physics/wear.hpp"

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::infinity;
using testing::near;

TEST(wear_rate_at, doubles_with_each_step_above_the_knee) {
  Grade grade;
  grade.wear_rate = 3e-14;
  grade.wear_knee = 450;
  grade.wear_doubling = 40;
  EXPECT_EQ(wear_rate_at(grade, 300), 3e-14);
  EXPECT_EQ(wear_rate_at(grade, 450), 3e-14);
  for (const double above : {10.0, 40.0, 75.0}) {
    EXPECT_TRUE(near(wear_rate_at(grade, 450 + above + 40), 2 * wear_rate_at(grade, 450 + above))) << above;
  }
}

TEST(wear_rate_at, is_constant_without_a_knee) {
  Grade grade;
  grade.wear_rate = 3e-14;
  EXPECT_EQ(wear_rate_at(grade, 2000), 3e-14);
}

TEST(wear_growth, doubles_with_each_step_above_the_knee_and_is_one_below) {
  EXPECT_EQ(wear_growth(430, 40, 300), 1);
  EXPECT_TRUE(near(wear_growth(430, 40, 470), 2, 1e-9));
  EXPECT_TRUE(near(wear_growth(430, 40, 550), 8, 1e-9));
}

TEST(worn_volume, is_additive_in_energy) {
  EXPECT_TRUE(near(worn_volume(3e-14, 4e6) + worn_volume(3e-14, 6e6), worn_volume(3e-14, 1e7)));
}

TEST(pad_life, is_the_time_in_which_the_usable_volume_wears) {
  const double volume = 2.4e-5, rate = 3e-14, power = 186;
  EXPECT_TRUE(near(worn_volume(rate, power * pad_life(volume, rate, power)), volume));
}

TEST(pad_life, is_infinite_without_power) { EXPECT_EQ(pad_life(2.4e-5, 3e-14, 0), infinity); }

}  // namespace
}  // namespace holdback::physics
