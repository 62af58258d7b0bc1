#include "holdback/model/web.hpp"

#include "unit/model/faults_of.hpp"

namespace holdback {
namespace {

using testing::one_error;
using testing::one_warning;
using testing::sound_web;

TEST(problems_of_web, finds_nothing_in_a_sound_web) { EXPECT_TRUE(problems_of(sound_web(), "web[0]").empty()); }

TEST(problems_of_web, doubts_a_weight_that_differs_from_caliper_times_density) {
  Web web = sound_web();
  web.basis_weight *= 1.1;
  EXPECT_TRUE(one_warning(problems_of(web, "web[0]"), "web[0].basis_weight"));
  web.basis_weight *= 1.2;
  EXPECT_TRUE(one_error(problems_of(web, "web[0]"), "web[0].basis_weight"));
  web = sound_web();
  web.caliper *= 10;  // a caliper in the wrong unit
  EXPECT_TRUE(one_error(problems_of(web, "web[0]"), "web[0].basis_weight"));
}

TEST(problems_of_web, accepts_a_weight_within_five_per_cent) {
  Web web = sound_web();
  web.basis_weight *= 1.049;
  EXPECT_TRUE(problems_of(web, "web[0]").empty());
  web.basis_weight /= 1.049 * 1.049;
  EXPECT_TRUE(problems_of(web, "web[0]").empty());
}

TEST(problems_of_web, doubts_a_weight_and_a_caliper_that_make_no_material) {
  Web web = sound_web();
  web.density.reset();
  web.wound_tension.reset();
  EXPECT_TRUE(problems_of(web, "web[0]").empty());
  web.caliper /= 25.4;
  EXPECT_TRUE(one_warning(problems_of(web, "web[0]"), "web[0].caliper"));
  web.caliper *= 25.4 * 1000;
  EXPECT_TRUE(one_warning(problems_of(web, "web[0]"), "web[0].caliper"));
}

TEST(problems_of_web, compares_yield_strength_with_modulus) {
  Web web = sound_web();
  web.yield_strength = 0.2 * 4e9;
  EXPECT_TRUE(one_warning(problems_of(web, "web[0]"), "web[0].yield_strength"));
  web.yield_strength = 4e9;
  EXPECT_TRUE(one_error(problems_of(web, "web[0]"), "web[0].yield_strength"));
}

TEST(problems_of_web, refuses_a_winding_tension_above_yield) {
  Web web = sound_web();
  web.wound_tension = 90e6 * 25e-6 * 1.01;
  EXPECT_TRUE(one_error(problems_of(web, "web[0]"), "web[0].wound_tension"));
}

TEST(problems_of_web, doubts_plies_that_do_not_make_up_the_caliper) {
  Web web = sound_web();
  web.plies = {{Material::polyester, 0.5 * web.caliper, {}, {}, {}}, {Material::other, 0.45 * web.caliper, {}, {}, {}}};
  EXPECT_TRUE(problems_of(web, "web[0]").empty());  // adhesive makes up the rest
  web.plies[1].caliper = 0.1 * web.caliper;
  EXPECT_TRUE(one_warning(problems_of(web, "web[0]"), "web[0].caliper"));
  web.plies[1].caliper = 2 * web.caliper;
  EXPECT_TRUE(one_warning(problems_of(web, "web[0]"), "web[0].caliper"));
}

}  // namespace
}  // namespace holdback
