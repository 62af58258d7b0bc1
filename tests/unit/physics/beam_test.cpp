#include "holdback/physics/beam.hpp"

#include <numbers>

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::infinity;
using testing::near;

Beam uniform(double span, double rigidity, double overhang = 0) {
  return {0, {{span + overhang, rigidity, 0}}, 0, span};
}

BeamLoad down(double begin, double end, double force) { return {begin, end, {0, -force}}; }
BeamLoad down(double at, double force) { return down(at, at, force); }

/// Three sections, an overhang on both sides.
Beam stepped() { return {-0.3, {{0.5, 300, 0}, {0.9, 1200, 0}, {0.7, 500, 0}}, 0, 1.4}; }

/// Deflection by the unit-load theorem, ∫ M m/EI dx by the midpoint rule: another way than integrating twice.
double by_unit_load(const Beam& beam, const std::vector<BeamLoad>& loads, double at) {
  const BentBeam real = bend_beam(beam, loads), unit = bend_beam(beam, {{at, at, {0, 1}}});
  double sum = 0, x = beam.begin;
  const int parts = 4000;
  for (const BeamStretch& stretch : beam.stretches) {
    const double step = stretch.length / parts;
    for (int i = 0; i < parts; ++i) {
      const double place = x + (i + 0.5) * step;
      sum += real.moment(place).vertical * unit.moment(place).vertical / stretch.rigidity * step;
    }
    x += stretch.length;
  }
  return sum;
}

// ---- closed forms (from memory; the tests of published values have them too) ----------------------------------------

TEST(bend_beam, agrees_with_the_table_of_a_load_between_bearings) {
  // Roark, table 8.1 (memory): slopes P a b (L + b)/(6EIL) and P a b (L + a)/(6EIL), y(a) = P a² b²/(3EIL).
  const double span = 2, a = 0.7, b = 1.3, rigidity = 900, force = 50;
  const BentBeam bent = bend_beam(uniform(span, rigidity), {down(a, force)});
  EXPECT_TRUE(near(bent.first_slope, force * a * b * (span + b) / (6 * rigidity * span)));
  EXPECT_TRUE(near(bent.second_slope, force * a * b * (span + a) / (6 * rigidity * span)));
  EXPECT_TRUE(near(-bent.deflection(a).vertical, force * a * a * b * b / (3 * rigidity * span)));
  EXPECT_TRUE(near(bent.largest_moment, force * a * b / span));
  EXPECT_TRUE(near(bent.largest_moment_place, a));
}

TEST(bend_beam, agrees_with_the_table_of_an_even_load) {
  // Roark, table 8.1 (memory): 5wL⁴/384EI, slope wL³/24EI, moment wL²/8.
  const double span = 1.6, rigidity = 900, w = 70;
  const BentBeam bent = bend_beam(uniform(span, rigidity), {down(0, span, w * span)});
  EXPECT_TRUE(near(bent.largest_deflection, 5 * w * std::pow(span, 4) / (384 * rigidity)));
  EXPECT_TRUE(near(bent.largest_deflection_place, span / 2, 1e-7));
  EXPECT_TRUE(near(bent.first_slope, w * std::pow(span, 3) / (24 * rigidity)));
  EXPECT_TRUE(near(bent.largest_moment, w * span * span / 8));
}

TEST(bend_beam, lifts_the_middle_where_the_load_overhangs) {
  // Beam tables (memory): P a L²/(9√3 EI) upwards at L/√3, P a² (L + a)/(3EI) at the end.
  const double span = 1.2, a = 0.5, rigidity = 850, force = 300;
  const BentBeam bent = bend_beam(uniform(span, rigidity, a), {down(span + a, force)});
  EXPECT_TRUE(near(bent.largest_deflection, force * a * a * (span + a) / (3 * rigidity)));
  EXPECT_EQ(bent.largest_deflection_place, span + a);
  const double root3 = std::sqrt(3.0);
  EXPECT_TRUE(near(bent.deflection(span / root3).vertical, force * a * span * span / (9 * root3 * rigidity)));
  EXPECT_TRUE(near(bent.largest_moment, force * a));
  EXPECT_TRUE(near(bent.largest_moment_place, span));
}

// ---- properties -----------------------------------------------------------------------------------------------------

TEST(bend_beam, agrees_with_the_unit_load_theorem_on_a_stepped_beam) {
  const std::vector<BeamLoad> loads{down(0.1, 0.9, 400), down(1.8, 90), down(-0.2, 60)};
  const BentBeam bent = bend_beam(stepped(), loads);
  for (const double at : {-0.3, 0.35, 0.8, 1.2, 1.6, 1.8}) {
    EXPECT_TRUE(near(bent.deflection(at).vertical, by_unit_load(stepped(), loads, at), 1e-6)) << at;
  }
}

TEST(bend_beam, keeps_the_balance_of_forces_and_moments) {
  const std::vector<BeamLoad> loads{{0.1, 0.9, {30, -400}}, {1.8, 1.8, {-20, 90}}};
  const BentBeam bent = bend_beam(stepped(), loads);
  EXPECT_TRUE(near(bent.first_reaction.vertical + bent.second_reaction.vertical, 310));
  EXPECT_TRUE(near(bent.first_reaction.horizontal + bent.second_reaction.horizontal, -10));
  EXPECT_TRUE(near(1.4 * bent.second_reaction.vertical, 0.5 * 400 - 1.8 * 90));
  EXPECT_NEAR(bent.moment(1.8).size(), 0, 1e-10);  // nothing holds the free ends
  EXPECT_NEAR(bent.moment(-0.3).size(), 0, 1e-10);
}

TEST(bend_beam, lies_on_its_bearings_and_its_slope_is_the_derivative) {
  const BentBeam bent = bend_beam(stepped(), {down(0.1, 0.9, 400)});
  EXPECT_NEAR(bent.deflection(0).size(), 0, 1e-15);
  EXPECT_NEAR(bent.deflection(1.4).size(), 0, 1e-15);
  const auto deflection = [&](double x) { return bent.deflection(x).vertical; };
  const auto slope = [&](double x) { return bent.slope(x).vertical; };
  for (const double x : {0.15, 0.5, 1.3}) {
    EXPECT_NEAR(slope(x), testing::derivative(deflection, x), 1e-8);
    EXPECT_NEAR(bent.moment(x).vertical,
                testing::derivative(slope, x) * stepped().stretches[stepped().stretch_at(x)].rigidity, 1e-4);
  }
}

TEST(bend_beam, bends_as_much_here_by_a_force_there_as_the_other_way_round) {
  // Maxwell's reciprocity.
  const auto influence = [](double at, double force_at) {
    return bend_beam(stepped(), {down(force_at, 1)}).deflection(at).vertical;
  };
  EXPECT_TRUE(near(influence(0.4, 1.7), influence(1.7, 0.4), 1e-10));
}

TEST(bend_beam, joins_two_planes_as_vectors) {
  const Beam beam = uniform(2, 900);
  const BentBeam level = bend_beam(beam, {{0.6, 0.6, {30, 0}}}), upright = bend_beam(beam, {{1.5, 1.5, {0, -40}}});
  const BentBeam both = bend_beam(beam, {{0.6, 0.6, {30, 0}}, {1.5, 1.5, {0, -40}}});
  double deflection = 0, moment = 0;
  for (int i = 0; i <= 20000; ++i) {
    const double x = i * 1e-4;
    deflection = std::max(deflection, std::hypot(level.deflection(x).horizontal, upright.deflection(x).vertical));
    moment = std::max(moment, std::hypot(level.moment(x).horizontal, upright.moment(x).vertical));
  }
  EXPECT_TRUE(near(both.largest_deflection, deflection, 1e-8));
  EXPECT_TRUE(near(both.largest_moment, moment, 1e-8));
  EXPECT_TRUE(near(both.first_slope, std::hypot(level.first_slope, upright.first_slope)));
  EXPECT_TRUE(near(both.second_reaction.size(), std::hypot(9, 30)));
}

TEST(bend_beam, bends_the_same_when_a_stretch_is_cut_in_slivers) {
  Beam cut = uniform(2, 900);
  cut.stretches = {{0.3, 900, 0}, {1e-12, 900, 0}, {0.7 - 1e-12, 900, 0}, {0, 900, 0}, {1, 900, 0}};
  const std::vector<BeamLoad> loads{down(0.3, 0.3 + 2e-12, 40), down(0.5, 1.5, 60)};
  EXPECT_TRUE(near(bend_beam(cut, loads).largest_deflection, bend_beam(uniform(2, 900), loads).largest_deflection));
}

TEST(bend_beam, takes_a_load_of_no_width_to_speak_of_as_one_at_a_place) {
  const Beam beam = uniform(2, 900);
  for (const double width : {1e-9, 1e-16}) {
    EXPECT_TRUE(near(bend_beam(beam, {down(0.3, std::nextafter(0.3, 1) + width, 40)}).largest_deflection,
                     bend_beam(beam, {down(0.3, 40)}).largest_deflection, 1e-8));
  }
}

TEST(bend_beam, goes_on_to_whatever_lies_beyond_its_stretches) {
  Beam shorter = uniform(1.2, 850);
  shorter.begin = 0.2;
  shorter.stretches[0].length = 0.3;
  const std::vector<BeamLoad> loads{down(1.5, 1.7, 300)};
  EXPECT_TRUE(
      near(bend_beam(shorter, loads).largest_deflection, bend_beam(uniform(1.2, 850, 0.5), loads).largest_deflection));
}

TEST(bend_beam, without_loads_stays_straight) {
  const BentBeam bent = bend_beam(stepped(), {});
  EXPECT_EQ(bent.largest_deflection, 0);
  EXPECT_EQ(bent.largest_moment, 0);
  EXPECT_EQ(bent.first_reaction.size(), 0);
}

TEST(bend_beam, takes_the_ends_for_places_beyond_them) {
  const BentBeam bent = bend_beam(uniform(1.2, 850, 0.5), {down(1.7, 300)});
  EXPECT_EQ(bent.deflection(9).vertical, bent.deflection(1.7).vertical);
  EXPECT_EQ(bent.slope(-9).vertical, bent.slope(0).vertical);
}

TEST(bend_beam, is_infinite_where_nothing_can_bear) {
  const std::vector<BeamLoad> loads{down(0.4, 300)};
  Beam beam = uniform(1.2, 850);
  const auto expect_infinite = [&](const Beam& broken) {
    const BentBeam bent = bend_beam(broken, loads);
    for (const double number :
         {bent.largest_deflection, bent.largest_moment, bent.first_slope, bent.second_slope, bent.first_reaction.size(),
          bent.second_reaction.size(), bent.moment(0.3).size(), bent.deflection(0.3).size(), bent.slope(0.3).size()})
      EXPECT_EQ(number, infinity);
  };
  expect_infinite(uniform(0, 850));
  expect_infinite(uniform(-1, 850));
  expect_infinite(uniform(1.2, 0));
  expect_infinite(uniform(1e200, 850));
  beam.stretches.clear();
  expect_infinite(beam);
}

}  // namespace
}  // namespace holdback::physics
