#include "holdback/physics/whirl.hpp"

#include <numbers>

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using std::numbers::pi;
using testing::infinity;
using testing::near;

Beam uniform(double span, double rigidity, double mass_per_length) {
  return {0, {{span, rigidity, mass_per_length}}, 0, span};
}

/// A stepped shaft whose last section overhangs.
Beam stepped() { return {0, {{0.2, 300, 2}, {0.9, 1200, 5}, {0.5, 500, 3}}, 0, 1.3}; }

/// Lowest root by Stodola's iteration: the beam cut in `parts` point masses, bent again and again by what it weighs
/// times how far it swings. Its only tool is bend_beam().
double by_stodola(const Beam& beam, const std::vector<BeamMass>& carried, int parts) {
  double length = 0;
  for (const BeamStretch& stretch : beam.stretches) length += stretch.length;
  std::vector<BeamLoad> lumps;  // `force` holds the mass at first
  for (int i = 0; i < parts; ++i) {
    const double at = beam.begin + (i + 0.5) * length / parts;
    double mass = beam.stretches[beam.stretch_at(at)].mass_per_length * length / parts;
    for (const BeamMass& roll : carried) {
      if (roll.begin < at && at < roll.end) mass += roll.mass / (roll.end - roll.begin) * length / parts;
    }
    lumps.push_back({at, at, {mass, 0}});
  }
  std::vector<double> swing(lumps.size(), 1.0);
  double root = 0;
  for (int step = 0; step < 12; ++step) {
    std::vector<BeamLoad> loads = lumps;
    for (std::size_t i = 0; i < lumps.size(); ++i) loads[i].force.horizontal *= swing[i];
    const BentBeam bent = bend_beam(beam, loads);
    double strain = 0, motion = 0;
    for (std::size_t i = 0; i < lumps.size(); ++i) {
      const double next = bent.deflection(lumps[i].begin).horizontal;
      strain += loads[i].force.horizontal * next;
      motion += lumps[i].force.horizontal * next * next;
      swing[i] = next;
    }
    root = strain / motion;
    for (double& each : swing) each *= 1 / std::sqrt(motion);
  }
  return std::sqrt(root);
}

TEST(uniform_whirl, is_that_of_published_check_x_4) {
  // Computed by hand: 1.8 m, 210 GPa, 7850 kg/m³, 90 mm.
  const double area = pi / 4 * 0.09 * 0.09, rigidity = 210e9 * pi / 64 * std::pow(0.09, 4);
  EXPECT_TRUE(near(uniform_whirl(rigidity, 7850 * area, 1.8) * 30 / pi, 3385.19315711, 1e-11));
}

TEST(uniform_whirl, turns_as_a_half_wave_swings) {
  // Kinetic and elastic energy of y = sin(πx/L) are equal: ω² ∫μ y² = ∫EI y''².
  const double span = 1.3, rigidity = 700, mass = 4, omega = uniform_whirl(rigidity, mass, span);
  EXPECT_TRUE(near(omega * omega * mass * span / 2, rigidity * std::pow(pi / span, 4) * span / 2));
}

TEST(uniform_whirl, without_mass_is_infinite_and_without_stiffness_zero) {
  EXPECT_EQ(uniform_whirl(700, 0, 1.3), infinity);
  EXPECT_EQ(uniform_whirl(0, 4, 1.3), 0);
  EXPECT_EQ(uniform_whirl(0, 0, 1.3), 0);
  EXPECT_EQ(uniform_whirl(700, 4, 0), 0);
}

TEST(beam_whirl, agrees_with_the_closed_form_and_lies_above_it) {
  const double exact = uniform_whirl(700, 4, 1.3), found = beam_whirl(uniform(1.3, 700, 4), {});
  EXPECT_TRUE(near(found, exact, 1e-7));
  EXPECT_GT(found, exact);
}

TEST(beam_whirl, errs_with_the_fourth_power_of_the_element) {
  // Cubic elements err by (βh)⁴/1440 in ω (their series by hand). Cutting each of the 32 in four errs 256 times less.
  const double exact = uniform_whirl(700, 4, 1.3);
  EXPECT_TRUE(near(beam_whirl(uniform(1.3, 700, 4), {}) / exact - 1, std::pow(pi / 32, 4) / 1440, 0.01));
  Beam cut = uniform(1.3, 700, 4);
  cut.stretches.assign(128, {1.3 / 128, 700, 4});
  EXPECT_LT(std::abs(beam_whirl(cut, {}) / exact - 1), 1e-8);
}

TEST(beam_whirl, of_a_massless_shaft_is_that_of_a_spring_and_its_mass) {
  const double span = 1.3, rigidity = 700;
  EXPECT_TRUE(near(beam_whirl(uniform(span, rigidity, 0), {{span / 2, span / 2, 50}}),
                   std::sqrt(48 * rigidity / (50 * std::pow(span, 3))), 1e-10));
}

TEST(beam_whirl, of_two_masses_is_the_root_of_their_influence_coefficients) {
  const Beam beam = stepped();
  const double x1 = 0.4, x2 = 0.85, m1 = 30, m2 = 70;
  Beam massless = beam;
  for (BeamStretch& stretch : massless.stretches) stretch.mass_per_length = 0;
  const auto influence = [&](double at, double by) {
    return bend_beam(massless, {{by, by, {0, 1}}}).deflection(at).vertical;
  };
  const double a = m1 * influence(x1, x1), b = m2 * influence(x2, x2);
  const double c = m1 * m2 * influence(x1, x2) * influence(x2, x1);
  const double slowest = (a + b + std::sqrt((a - b) * (a - b) + 4 * c)) / 2;
  EXPECT_TRUE(near(beam_whirl(massless, {{x1, x1, m1}, {x2, x2, m2}}), 1 / std::sqrt(slowest), 1e-10));
}

TEST(beam_whirl, of_a_stepped_shaft_with_its_roll_agrees_with_stodola) {
  const std::vector<BeamMass> roll{{0.25, 1.05, 120}};
  EXPECT_TRUE(near(beam_whirl(stepped(), roll), by_stodola(stepped(), roll, 640), 2e-5));
  EXPECT_TRUE(near(beam_whirl(stepped(), {}), by_stodola(stepped(), {}, 640), 2e-5));
}

TEST(beam_whirl, of_a_cantilevered_roll_agrees_with_stodola) {
  const Beam beam{0, {{0.4, 2000, 8}, {1.0, 1500, 6}}, 0, 0.35};
  const std::vector<BeamMass> roll{{0.5, 1.3, 90}};
  EXPECT_TRUE(near(beam_whirl(beam, roll), by_stodola(beam, roll, 700), 2e-5));
}

TEST(beam_whirl, lies_between_dunkerley_and_rayleigh) {
  // Dunkerley: 1/ω² summed over shaft and roll is slower. Rayleigh with the line under weight is faster.
  const double span = 1.3, rigidity = 700, mass = 4;
  const Beam beam = uniform(span, rigidity, mass), massless = uniform(span, rigidity, 0);
  const std::vector<BeamMass> roll{{0.3, 1.1, 60}};
  const double alone = uniform_whirl(rigidity, mass, span), laden = beam_whirl(massless, roll);
  const double found = beam_whirl(beam, roll);
  EXPECT_GT(found, 1 / std::sqrt(1 / (alone * alone) + 1 / (laden * laden)));
  const BentBeam bent = bend_beam(beam, {{0, span, {0, -mass * span * 9.81}}, {0.3, 1.1, {0, -60 * 9.81}}});
  double strain = 0, motion = 0;
  const int parts = 2600;
  for (int i = 0; i < parts; ++i) {
    const double x = (i + 0.5) * span / parts, y = bent.deflection(x).vertical;
    const double part = (mass + (x > 0.3 && x < 1.1 ? 60 / 0.8 : 0)) * span / parts;
    strain += part * 9.81 * std::abs(y);
    motion += part * y * y;
  }
  EXPECT_LT(found, std::sqrt(strain / motion));
  EXPECT_TRUE(near(found, std::sqrt(strain / motion), 0.01));
}

TEST(beam_whirl, is_the_same_seen_from_the_other_end) {
  const std::vector<BeamMass> roll{{0.25, 1.05, 120}}, mirrored_roll{{0.55, 1.35, 120}};
  const Beam mirrored{0, {{0.5, 500, 3}, {0.9, 1200, 5}, {0.2, 300, 2}}, 0.3, 1.6};
  EXPECT_TRUE(near(beam_whirl(stepped(), roll), beam_whirl(mirrored, mirrored_roll), 1e-9));
}

TEST(beam_whirl, is_not_upset_by_slivers_and_narrow_masses) {
  Beam cut = stepped();
  cut.stretches.insert(cut.stretches.begin() + 1, {1e-9, 700, 4});
  const std::vector<BeamMass> point{{0.7, 0.7, 120}}, narrow{{0.7 - 1e-9, 0.7 + 1e-9, 120}};
  EXPECT_TRUE(near(beam_whirl(cut, point), beam_whirl(stepped(), point), 1e-7));
  EXPECT_TRUE(near(beam_whirl(stepped(), narrow), beam_whirl(stepped(), point), 1e-7));
  const std::vector<BeamMass> wide{{0.69, 0.71, 120}};
  EXPECT_TRUE(near(beam_whirl(stepped(), wide), beam_whirl(stepped(), point), 1e-3));
}

TEST(beam_whirl, finds_a_lowest_root_that_another_is_close_to) {
  // Equal overhangs far longer than the span swing together or against one another, nearly at one speed.
  const Beam twin{-1, {{2.1, 700, 4}}, 0, 0.1};
  EXPECT_TRUE(near(beam_whirl(twin, {}), by_stodola(twin, {}, 630), 1e-3));
}

TEST(beam_whirl, without_mass_is_infinite_and_where_nothing_bears_zero) {
  EXPECT_EQ(beam_whirl(uniform(1.3, 700, 0), {}), infinity);
  EXPECT_EQ(beam_whirl(uniform(1.3, 0, 4), {}), 0);
  EXPECT_EQ(beam_whirl(uniform(0, 700, 4), {}), 0);
  EXPECT_EQ(beam_whirl({0, {}, 0, 1}, {}), 0);
  EXPECT_EQ(beam_whirl({0, {{1e200, 700, 4}, {1e308, 700, 4}, {1e308, 700, 4}}, 0, 1e200}, {}), 0);
  EXPECT_EQ(beam_whirl(uniform(1.3, 700, 0), {{0, 0, 50}}), infinity);  // right on a bearing
}

}  // namespace
}  // namespace holdback::physics
