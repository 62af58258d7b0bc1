#include "holdback/dynamics/plant.hpp"

#include <gtest/gtest.h>

#include "holdback/physics/roll.hpp"
#include "unit/dynamics/plants.hpp"

namespace holdback::dynamics {
namespace {

using testing::chain_path;
using testing::pi;
using testing::published_plant;

// Published check R-5.
TEST(inertia_at, is_that_of_the_published_roll) {
  EXPECT_NEAR(inertia_at(published_plant().roll, 0.40), 32.6184369187, 1e-9);
  EXPECT_NEAR(inertia_at(published_plant().roll, 0.08), 0.5, 1e-12);
}

// By hand: a hollow cylinder of 800 kg/m³ and a metre of width.
TEST(web_mass_at, is_density_times_volume) {
  EXPECT_NEAR(web_mass_at(published_plant().roll, 0.40), 800 * pi * (0.40 * 0.40 - 0.08 * 0.08), 1e-9);
  EXPECT_EQ(web_mass_at(published_plant().roll, 0.08), 0);
}

// By hand: 1e-3 N·m/Pa above 1e4 Pa, two of three pairs, static friction 1.3 times sliding, drag 1.5 N·m.
TEST(static_torque, adds_static_friction_and_drag) {
  const BrakePlant brake{1e-3, 1e4, 1.3, 0, 1.5};
  EXPECT_NEAR(static_torque(brake, 7e4, 2.0 / 3), 1.3 * 40 + 1.5, 1e-12);
  EXPECT_EQ(static_torque(brake, 5e3, 1), 1.5);
}

// What slides at 60 N·m and is at rest cannot let go below 60 N·m: nothing but the brake would move it.
TEST(static_torque, is_not_below_sliding_torque) {
  const BrakePlant brake{1e-3, 1e4, 0.8, 0, 1.5};
  EXPECT_NEAR(static_torque(brake, 7e4, 1), 60 + 1.5, 1e-12);
}

// By hand: friction loses a hundredth with each rad/s, and never pushes.
TEST(sliding_torque, falls_with_speed_and_never_pushes) {
  const BrakePlant brake{1e-3, 1e4, 1.3, -0.01, 1.5};
  EXPECT_NEAR(sliding_torque(brake, 7e4, 1, 20), 60 * 0.8 + 1.5, 1e-12);
  EXPECT_NEAR(sliding_torque(brake, 7e4, 1, -20), 60 * 0.8 + 1.5, 1e-12);
  EXPECT_EQ(sliding_torque(brake, 7e4, 1, 500), 1.5);
}

// By hand: four idlers of 0.1 N·m on 50 mm and 0.01 kg·m², the cell on the third of them (between spans 2 and 3).
TEST(lumped, keeps_length_drag_and_mass) {
  Plant plant = published_plant();
  plant.path = chain_path();
  const PathPlant path = lumped(plant).path;
  ASSERT_EQ(path.spans.size(), 1U);
  EXPECT_NEAR(path.spans[0], 3, 1e-12);
  EXPECT_NEAR(path.following_drag, 4 * 2, 1e-12);
  EXPECT_NEAR(path.following_mass, 4 * 4, 1e-12);
  EXPECT_NEAR(path.cell_drag, 2.5 * 2, 1e-12);
  EXPECT_NEAR(path.cell_mass, 2.5 * 4, 1e-12);
}

// Closed form for one idler between two springs: ω² = EA (1/L₁ + 1/L₂) r²/J. The bound may be twice that, not less.
TEST(fastest_idler_mode, bounds_the_mode_of_an_idler) {
  PathPlant path = testing::chain_path();
  path.spans = {0.4, 0.6};
  path.idlers.resize(1);
  const double exact = std::sqrt(2e5 * (1 / 0.4 + 1 / 0.6) * 0.05 * 0.05 / 0.01);
  EXPECT_GE(fastest_idler_mode(path), exact);
  EXPECT_LE(fastest_idler_mode(path), std::sqrt(2.0) * exact * (1 + 1e-12));
  EXPECT_EQ(fastest_idler_mode(single_span(3, 2e5)), 0);
}

// Closed form: n equal masses on n + 1 equal springs, fixed ends: ω = 2 √(k/m) sin(nπ/(2(n + 1))).
TEST(fastest_idler_mode, bounds_the_highest_mode_of_an_even_chain) {
  PathPlant path = testing::chain_path();
  path.spans.assign(5, 0.5);
  const double exact = 2 * std::sqrt(2e5 / 0.5 / 4) * std::sin(4 * pi / 10);
  EXPECT_GE(fastest_idler_mode(path), exact);
  EXPECT_LE(fastest_idler_mode(path), 1.1 * exact);
}

// By hand: ten idlers of 4 kg and 2 N at the web; what lies nearest to the nip is joined, length and sums stay.
TEST(with_fewer_idlers, keeps_length_mass_and_drag) {
  Plant plant = published_plant();
  plant.path.spans.assign(11, 0.5);
  plant.path.idlers.assign(10, IdlerPlant{0.05, 0.01, 0.1});
  plant.path.idlers[9] = {0.10, 0.04, 0.2};
  plant.path.cell_span = 10;
  const PathPlant path = with_fewer_idlers(plant).path;
  ASSERT_EQ(path.spans.size(), most_spans);
  ASSERT_EQ(path.idlers.size(), most_spans - 1);
  double length = 0, mass = 0, drag = 0;
  for (const double span : path.spans) length += span;
  for (const IdlerPlant& idler : path.idlers) {
    mass += idler.inertia / (idler.radius * idler.radius);
    drag += idler.drag / idler.radius;
  }
  EXPECT_NEAR(length, 5.5, 1e-12);
  EXPECT_NEAR(mass, 40, 1e-10);
  EXPECT_NEAR(drag, 20, 1e-10);
  EXPECT_LT(path.cell_span, most_spans);
}

}  // namespace
}  // namespace holdback::dynamics
