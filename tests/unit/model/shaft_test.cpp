#include "holdback/model/shaft.hpp"

#include "unit/model/faults_of.hpp"

namespace holdback {
namespace {

using testing::one_error;
using testing::one_warning;

Shaft sound_shaft() {
  Shaft shaft;
  shaft.bearing_span = 1.6;
  shaft.roll_centre = 0.8;
  shaft.sections = {{0.1, 0.05, 0}, {1.4, 0.08, 0.06}, {0.1, 0.05, 0}};
  shaft.modulus = 206e9;
  shaft.density = 7850;
  shaft.tensile_strength = 600e6;
  shaft.notch_factor = 2;
  return shaft;
}

Problems problems_after(void (*change)(Shaft&)) {
  Shaft shaft = sound_shaft();
  change(shaft);
  return problems_of(shaft);
}

TEST(problems_of_shaft, finds_nothing_in_a_sound_shaft) {
  EXPECT_TRUE(problems_of(sound_shaft()).empty());
  EXPECT_TRUE(problems_after([](Shaft& s) {
                s.support = Support::cantilever;
                s.bearing_span = 0.4;
              }).empty());
}

TEST(problems_of_shaft, wants_a_section) {
  EXPECT_TRUE(one_error(problems_after([](Shaft& s) { s.sections.clear(); }), "shaft.section"));
}

TEST(problems_of_shaft, wants_a_wall_around_every_bore) {
  EXPECT_TRUE(one_error(problems_after([](Shaft& s) { s.sections[1].bore = 0.08; }), "shaft.section[1].bore"));
  EXPECT_EQ(problems_after([](Shaft& s) { s.sections[0].bore = s.sections[1].bore = 0.09; }).size(), 2U);
}

TEST(problems_of_shaft, wants_the_roll_between_the_bearings) {
  EXPECT_TRUE(one_error(problems_after([](Shaft& s) { s.roll_centre = 1.6; }), "shaft.roll_centre"));
  EXPECT_TRUE(one_error(problems_after([](Shaft& s) { s.roll_centre = 2; }), "shaft.roll_centre"));
}

TEST(problems_of_shaft, wants_the_roll_of_a_cantilever_beyond_both_bearings) {
  EXPECT_TRUE(one_error(problems_after([](Shaft& s) { s.support = Support::cantilever; }), "shaft.roll_centre"));
  EXPECT_TRUE(one_error(problems_after([](Shaft& s) {
                          s.support = Support::cantilever;
                          s.roll_centre = s.bearing_span;
                        }),
                        "shaft.roll_centre"));
}

TEST(problems_of_shaft, doubts_a_step_without_a_notch) {
  EXPECT_TRUE(one_warning(problems_after([](Shaft& s) { s.notch_factor = 1; }), "shaft.notch_factor"));
  EXPECT_TRUE(problems_after([](Shaft& s) {
                s.notch_factor = 1;
                s.sections = {{1.6, 0.08, 0}};
              }).empty());
}

TEST(problems_of_shaft, refuses_a_strength_that_no_shaft_has) {
  EXPECT_TRUE(one_error(problems_after([](Shaft& s) { s.tensile_strength = 600e9; }), "shaft.tensile_strength"));
}

TEST(problems_of_shaft, says_that_the_fatigue_limit_is_that_of_steel) {
  EXPECT_TRUE(one_warning(problems_after([](Shaft& s) { s.modulus = 70e9; }), "shaft.modulus"));
}

}  // namespace
}  // namespace holdback
