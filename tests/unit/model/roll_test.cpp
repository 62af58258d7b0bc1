#include "holdback/model/roll.hpp"

#include "unit/model/faults_of.hpp"

namespace holdback {
namespace {

using testing::one_error;
using testing::sound_roll;

TEST(problems_of_roll, finds_nothing_in_a_sound_roll) { EXPECT_TRUE(problems_of(sound_roll(), "roll[0]").empty()); }

TEST(problems_of_roll, refuses_a_core_that_is_not_smaller_than_the_roll) {
  Roll roll = sound_roll();
  roll.core_diameter = roll.full_diameter;
  EXPECT_TRUE(one_error(problems_of(roll, "roll[2]"), "roll[2].core_diameter"));
  roll.core_diameter = 2;
  const Problems problems = problems_of(roll, "roll[2]");
  ASSERT_TRUE(one_error(problems, "roll[2].core_diameter"));
  EXPECT_EQ(problems[0].what.amounts[0], (Amount{2, Quantity::short_length}));
  EXPECT_EQ(problems[0].what.amounts[1], (Amount{1, Quantity::short_length}));
}

TEST(problems_of_roll, refuses_a_runout_of_more_than_half_the_build_up) {
  Roll roll = sound_roll();
  const double half = (roll.full_radius() - roll.core_radius()) / 2;
  roll.runout = half;
  EXPECT_TRUE(problems_of(roll, "roll[0]").empty());
  roll.runout = half * 1.01;
  EXPECT_TRUE(one_error(problems_of(roll, "roll[0]"), "roll[0].runout"));
}

}  // namespace
}  // namespace holdback
