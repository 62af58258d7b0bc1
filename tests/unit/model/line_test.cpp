#include "holdback/model/line.hpp"

#include "unit/model/faults_of.hpp"

namespace holdback {
namespace {

using testing::one_error;
using testing::one_warning;
using testing::sound_line;

TEST(problems_of_line, finds_nothing_in_a_sound_line) { EXPECT_TRUE(problems_of(sound_line()).empty()); }

TEST(problems_of_line, refuses_a_lowest_speed_above_the_top) {
  Line line = sound_line();
  line.lowest_speed = line.top_speed;
  EXPECT_TRUE(problems_of(line).empty());
  line.lowest_speed = 7;
  EXPECT_TRUE(one_error(problems_of(line), "line.lowest_speed"));
}

TEST(problems_of_line, doubts_an_emergency_stop_slower_than_a_normal_one) {
  Line line = sound_line();
  line.emergency_stop_time = 11;
  EXPECT_TRUE(one_warning(problems_of(line), "line.emergency_stop_time"));
}

}  // namespace
}  // namespace holdback
