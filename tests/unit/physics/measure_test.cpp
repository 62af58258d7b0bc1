#include "holdback/physics/measure.hpp"

#include <cmath>
#include <numbers>

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::infinity;
using testing::near;

constexpr double pi = std::numbers::pi;

PushedSpan middle(double span) { return {span, span / 2, span}; }

// Check T-2: mpmath, 30 digits, from T = EA(L_d/L_0 − 1), L_0 = S/(1 + T0/EA), F = 4 T δ/L_d.
struct Pushed {
  double before, stiffness, span, push, pushed, force;
};
constexpr Pushed pushes[] = {{150, 48000, 1.0, 10e-3, 159.629037193, 6.38388483839},
                             {300, 600000, 0.6, 5e-3, 383.369210873, 12.777199208}};

TEST(pushed_tension, is_what_the_gauge_works_against) {
  for (const Pushed& p : pushes) EXPECT_TRUE(near(pushed_tension(middle(p.span), p.push, p.force), p.pushed, 1e-11));
}

TEST(tension_before_push, takes_off_what_the_push_adds) {
  for (const Pushed& p : pushes)
    EXPECT_TRUE(near(tension_before_push(middle(p.span), p.push, p.force, p.stiffness), p.before, 1e-10));
}

TEST(tension_before_push, of_a_web_whose_tension_something_keeps_is_the_pushed_one) {
  PushedSpan span = middle(1);
  span.held = infinity;
  EXPECT_TRUE(near(tension_before_push(span, 0.01, 6.38388483839, 48000), 159.629037193, 1e-11));
}

TEST(tension_before_push, off_the_middle_by_hand) {
  // a = 0.3 m, b = 0.4 m, δ = 0.4 · 0.75 = 0.3 m: hypotenuses 0.3 √2 and 0.5, sines 1/√2 and 0.6.
  const PushedSpan span{0.7, 0.3, 0.7};
  EXPECT_TRUE(near(push_lengthening(span, 0.3), 0.3 * (std::sqrt(2.0) - 1) + 0.1, 1e-14));
  const double tension = 10 / (1 / std::sqrt(2.0) + 0.6);
  EXPECT_TRUE(near(pushed_tension(span, 0.3, 10), tension, 1e-14));
  const double strain = (0.3 * (std::sqrt(2.0) - 1) + 0.1) / 0.7;
  EXPECT_TRUE(near(tension_before_push(span, 0.3, 10, 5), (tension - 5 * strain) / (1 + strain), 1e-13));
}

TEST(push_force, is_the_way_back) {
  for (const Pushed& p : pushes)
    EXPECT_TRUE(near(push_force(middle(p.span), p.push, p.before, p.stiffness), p.force, 1e-11));
}

// δ²/a for small δ: the difference of nearly equal lengths would have lost eight digits here.
TEST(push_lengthening, keeps_its_digits_for_a_small_push) {
  EXPECT_TRUE(near(push_lengthening(middle(2), 1e-6), 1e-12 * (1 - 0.25e-12), 1e-14));
}

// F S/(4 δ); check T-2 names 159.6 N and 383.3 N for it.
TEST(simple_push_tension, is_too_high_by_what_the_push_adds) {
  EXPECT_NEAR(simple_push_tension(middle(1), 0.01, 6.38388483839), 159.6, 0.05);
  EXPECT_NEAR(simple_push_tension(middle(0.6), 5e-3, 12.777199208), 383.3, 0.05);
}

// Check T-1: 0.75 kg/m under 9.81 m/s² over 40 m, sag 0.5 m; the exact catenary by mpmath.
TEST(catenary_of_sag, of_a_published_cable) {
  const Catenary cable = catenary_of_sag(0.75 * 9.81, 40, 0.5);
  EXPECT_TRUE(near(cable.end, 2947.29167075, 1e-11));
  EXPECT_TRUE(near(cable.length, 40.0166618084, 1e-11));
  EXPECT_TRUE(near(cable.lowest, 2947.29167075 - 0.5 * 0.75 * 9.81, 1e-11));
  EXPECT_NEAR(cable.slope * 180 / pi, 2.9, 0.05);
}

// c cosh(S/2c) with c = S/2 by hand: sag (cosh 1 − 1) S/2, length S sinh 1.
TEST(catenary_of_sag, as_deep_as_it_is_wide) {
  const Catenary deep = catenary_of_sag(3, 2, std::cosh(1.0) - 1);
  EXPECT_TRUE(near(deep.lowest, 3, 1e-13));
  EXPECT_TRUE(near(deep.end, 3 * std::cosh(1.0), 1e-13));
  EXPECT_TRUE(near(deep.length, 2 * std::sinh(1.0), 1e-13));
  const Catenary deeper = catenary_of_sag(1, 2, (std::cosh(8.0) - 1) / 8);
  EXPECT_TRUE(near(deeper.lowest, 1.0 / 8, 1e-12));
}

TEST(catenary_sag, is_the_way_back) {
  for (const double sag : {1e-5, 1e-3, 0.1, 0.5})
    EXPECT_TRUE(near(catenary_sag(2, 2, catenary_of_sag(2, 2, sag).end), sag, 1e-9)) << sag;
}

// The least pull that a catenary can have: cosh(u)/u is least at u tanh u = 1, where it is 1.50888.
TEST(catenary_sag, is_without_end_where_the_web_is_too_heavy) {
  EXPECT_EQ(catenary_sag(2, 2, 1.5088 * 2), infinity);
  EXPECT_LT(catenary_sag(2, 2, 1.5089 * 2), 1);
}

// tests/published/scripts/carried_air.py: SciPy, Galerkin solution of the potential flow around a strip that swings as
// a sine, added mass per area over ρ W against π W/S.
TEST(carried_air, is_near_the_potential_flow_around_a_strip) {
  struct Row {
    double wave_width, mass;
  };
  constexpr Row rows[] = {{0.01, 0.785365}, {0.1, 0.783168}, {0.3, 0.770401}, {1, 0.687283},   {2, 0.556268},
                          {3, 0.452674},    {5, 0.320335},   {10, 0.18},      {20, 0.0950001}, {40, 0.0487501}};
  for (const Row& row : rows) {
    const double width = row.wave_width / pi;  // span 1 m
    EXPECT_TRUE(near(carried_air(width, 1, 1.2), 1.2 * width * row.mass, 0.03)) << row.wave_width;
  }
}

// A strip moving broadside carries ρ π W²/4 for each metre: Lamb, Hydrodynamics, article 71, from memory.
TEST(carried_air, of_a_narrow_strip_is_a_cylinder_of_air) {
  EXPECT_TRUE(near(carried_air(1e-6, 1, 1.2), 1.2 * pi / 4 * 1e-6, 1e-6));
}

// Check T-3, by hand.
TEST(span_frequency, of_published_spans) {
  EXPECT_TRUE(near(span_frequency(150, 12e-6 * 1390, 1), 47.4152026132, 1e-11));
  EXPECT_TRUE(near(span_frequency(200, 0.080, 1.2), 20.8333333333, 1e-11));
  EXPECT_TRUE(near(span_frequency(200, 0.080, 1.2, 3), 62.5, 1e-13));
}

TEST(plucked_tension, is_the_way_back) {
  EXPECT_TRUE(near(plucked_tension(47.4152026132, 12e-6 * 1390, 1), 150, 1e-10));
  EXPECT_TRUE(near(plucked_tension(62.5, 0.080, 1.2, 3), 200, 1e-13));
}

// By hand: 46 N and 40 N with the brake on, 5 N and 1 N with it off.
TEST(pull_parts, part_brake_drag_and_what_both_ways_differ_by) {
  const PullParts parts = pull_parts({46, 40, 5, 1});
  EXPECT_EQ(parts.running, 43);
  EXPECT_EQ(parts.drag, 3);
  EXPECT_EQ(parts.brake, 40);
  EXPECT_EQ(parts.difference, 3);
}

// Check T-4.
TEST(cell_resultant, of_four_wraps) {
  EXPECT_TRUE(near(cell_resultant(100, pi / 3), 100, 1e-11));
  EXPECT_TRUE(near(cell_resultant(100, pi / 2), 141.421356237, 1e-11));
  EXPECT_TRUE(near(cell_resultant(100, 2 * pi / 3), 173.205080757, 1e-11));
  EXPECT_TRUE(near(cell_resultant(100, pi), 200, 1e-11));
}

// By sums of unit vectors: the force of both runs makes the same angle with either.
TEST(cell_resultant_angle, lies_in_the_middle_of_both_runs) {
  for (const double wrap : {0.3, 1.0, pi / 2, 2.5}) {
    const double x = 1 - std::cos(wrap);  // one run pulls along −1, the other along the turned way: difference
    const double y = std::sin(wrap);
    const double size = std::hypot(x, y);
    EXPECT_TRUE(near(size, cell_resultant(1, wrap), 1e-12));
    EXPECT_TRUE(near(std::acos(x / size), cell_resultant_angle(wrap), 1e-12));
  }
}

TEST(roller_tare, goes_with_the_cosine_of_the_tilt) {
  EXPECT_TRUE(near(roller_tare(10, 0), 98.0665));
  EXPECT_TRUE(near(roller_tare(10, pi), -98.0665));
  EXPECT_NEAR(roller_tare(10, pi / 2), 0, 1e-13);
}

TEST(cell_tension, undoes_resultant_axis_and_tare) {
  const double wrap = 2.2;
  const double axis = 0.3;
  const double reading = cell_resultant(87, wrap) * std::cos(axis) + 12;
  EXPECT_TRUE(near(cell_tension(reading, 12, wrap, axis), 87, 1e-13));
}

}  // namespace
}  // namespace holdback::physics
