#include "holdback/physics/tension.hpp"

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::near;

Web film(Material material) {
  Web web;
  web.material = material;
  web.width = 1.2;
  web.caliper = 25e-6;
  web.basis_weight = 0.035;
  return web;
}

Limits usual_limits() {
  Limits limits;
  limits.yield_share = 0.25;
  limits.strain_limit = 0.003;
  return limits;
}

TEST(yield_tension, is_the_strength_over_the_cross_section) {
  EXPECT_TRUE(near(yield_tension(90e6, 1.2, 25e-6) / (1.2 * 25e-6), 90e6));
}

TEST(strain_tension, at_the_yield_strain_is_the_yield_tension) {
  const double modulus = 4e9, strength = 90e6;
  EXPECT_TRUE(near(strain_tension(strength / modulus, modulus, 1.2, 25e-6), yield_tension(strength, 1.2, 25e-6)));
}

TEST(table_tension, grows_with_caliper_and_width_for_films_and_foil) {
  for (const Material material : {Material::polyester, Material::polypropylene, Material::polyethylene,
                                  Material::cellophane, Material::aluminium_foil}) {
    Web web = film(material);
    const auto range = table_tension(web);
    ASSERT_TRUE(range);
    EXPECT_LT(range->low, range->high);
    web.caliper *= 2;
    web.width *= 3;
    EXPECT_TRUE(near(table_tension(web)->high, 6 * range->high));
  }
}

TEST(table_tension, of_paper_rises_with_its_weight_and_is_none_outside) {
  Web web = film(Material::paper);
  web.basis_weight = 0.05;
  const auto light = table_tension(web);
  web.basis_weight = 0.1;
  const auto heavy = table_tension(web);
  ASSERT_TRUE(light && heavy);
  EXPECT_GT(heavy->low, light->low);
  web.basis_weight = 0.02;
  EXPECT_FALSE(table_tension(web));
  web.basis_weight = 0.2;
  EXPECT_FALSE(table_tension(web));
}

TEST(table_tension, of_board_goes_by_caliper) {
  Web web = film(Material::board);
  web.caliper = 0.4e-3;
  EXPECT_TRUE(table_tension(web));
  web.caliper = 0.1e-3;
  EXPECT_FALSE(table_tension(web));
  web.caliper = 1e-3;
  EXPECT_FALSE(table_tension(web));
}

TEST(table_tension, knows_nothing_of_other_webs_and_of_laminates) {
  EXPECT_FALSE(table_tension(film(Material::other)));
  EXPECT_FALSE(table_tension(film(Material::laminate)));
}

TEST(recommended_tension, is_the_table_where_web_is_strong) {
  Web web = film(Material::polyester);
  web.yield_strength = 100e6;
  web.modulus = 4e9;
  const auto range = table_tension(web);
  const auto recommended = recommended_tension(web, usual_limits());
  ASSERT_TRUE(recommended);
  EXPECT_EQ(recommended->governed_by, TensionBound::table);
  EXPECT_EQ(recommended->low, range->low);
  EXPECT_EQ(recommended->high, range->high);
  EXPECT_TRUE(near(recommended->setpoint, (range->low + range->high) / 2));
}

TEST(recommended_tension, is_cut_by_the_lower_of_strength_and_strain) {
  Web web = film(Material::polyester);
  web.yield_strength = 10e6;
  auto recommended = recommended_tension(web, usual_limits());
  ASSERT_TRUE(recommended);
  EXPECT_EQ(recommended->governed_by, TensionBound::strength);
  EXPECT_TRUE(near(recommended->high, 0.25 * yield_tension(10e6, web.width, web.caliper)));
  const auto range = table_tension(web);
  EXPECT_TRUE(near(recommended->low / recommended->high, range->low / range->high));

  web.modulus = 0.5e9;
  recommended = recommended_tension(web, usual_limits());
  ASSERT_TRUE(recommended);
  EXPECT_EQ(recommended->governed_by, TensionBound::strain);
  EXPECT_TRUE(near(recommended->high, strain_tension(0.003, 0.5e9, web.width, web.caliper)));
}

TEST(recommended_tension, is_derived_where_there_is_no_table) {
  Web web = film(Material::other);
  EXPECT_FALSE(recommended_tension(web, usual_limits()));
  web.modulus = 4e9;
  const auto recommended = recommended_tension(web, usual_limits());
  ASSERT_TRUE(recommended);
  EXPECT_EQ(recommended->governed_by, TensionBound::strain);
  EXPECT_TRUE(near(recommended->low, 0.4 * recommended->high));
  EXPECT_TRUE(near(recommended->setpoint, 0.7 * recommended->high));
}

TEST(recommended_tension, changes_without_a_jump_as_strength_falls) {
  Web web = film(Material::polyester);
  double before = 0;
  for (double strength = 10e6; strength < 60e6; strength += 0.01e6) {
    web.yield_strength = strength;
    const double low = recommended_tension(web, usual_limits())->low;
    ASSERT_LT(low - before, before == 0 ? low + 1 : 0.002 * low) << strength;
    ASSERT_GE(low, before);
    before = low;
  }
}

// A laminate of 12 µm polyester on 60 µm polyethylene, invented: Σ E t = 4.5 GPa · 12 µm + 0.2 GPa · 60 µm = 66 kN/m.
Web laminate() {
  Web web;
  web.material = Material::laminate;
  web.width = 0.6;
  web.caliper = 74e-6;
  web.basis_weight = 0.075;
  web.plies = {{Material::polyester, 12e-6, {}, 4.5e9, 90e6}, {Material::polyethylene, 60e-6, {}, 0.2e9, 10e6}};
  return web;
}

TEST(web_stiffness, of_a_laminate_is_the_sum_of_its_plies) { EXPECT_TRUE(near(*web_stiffness(laminate()), 66e3)); }

TEST(web_stiffness, is_the_webs_own_where_it_is_known_and_none_where_a_ply_is_not) {
  Web web = laminate();
  web.modulus = 1e9;
  EXPECT_TRUE(near(*web_stiffness(web), 74e3));
  web = laminate();
  web.plies[1].modulus.reset();
  EXPECT_FALSE(web_stiffness(web));
  EXPECT_FALSE(web_stiffness(Web{}));
}

// Polyester yields at 2 % of strain, polyethylene at 5 %: the polyester first, at 0.02 · 66 kN/m.
TEST(web_yield, of_a_laminate_is_where_its_first_ply_yields) {
  EXPECT_TRUE(near(*web_yield(laminate()), 1320));
  Web web = laminate();
  web.plies[0].yield_strength.reset();
  EXPECT_FALSE(web_yield(web));
  EXPECT_FALSE(web_yield(Web{}));
}

TEST(table_tension, of_a_laminate_is_the_sum_of_its_plies) {
  Web polyester = film(Material::polyester);
  Web polyethylene = film(Material::polyethylene);
  polyester.width = polyethylene.width = 0.6;
  polyester.caliper = 12e-6;
  polyethylene.caliper = 60e-6;
  const auto sum = table_tension(laminate());
  ASSERT_TRUE(sum);
  EXPECT_TRUE(near(sum->low, table_tension(polyester)->low + table_tension(polyethylene)->low));
  EXPECT_TRUE(near(sum->high, table_tension(polyester)->high + table_tension(polyethylene)->high));
  Web unknown = laminate();
  unknown.plies[0].material = Material::other;
  EXPECT_FALSE(table_tension(unknown));
}

// In the limit the web outside of the core takes the whole of what the roll carries: J α = T_w R.
TEST(cinching_tension, leaves_nothing_when_inertia_takes_all_that_was_wound) {
  EXPECT_TRUE(near(cinching_tension(400, 0, 3, 0.5), 400));
  EXPECT_NEAR(cinching_tension(400, 400 * 0.5 / 3, 3, 0.5), 0, 1e-10);
  EXPECT_LT(cinching_tension(400, 100, 3, 0.5), 0);
}

// By hand: 300 kg, 2 mm off the axis, at 0.5 m: 300 · 9.80665 · 0.002/0.5 = 11.76798 N.
TEST(balance_tension, holds_the_moment_of_a_roll_off_its_axis) {
  EXPECT_TRUE(near(balance_tension(300, 0.002, 0.5), 11.76798));
  EXPECT_EQ(balance_tension(300, 0, 0.5), 0);
}

}  // namespace
}  // namespace holdback::physics
