#include "holdback/sizing/window.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>

#include "holdback/sizing/assess.hpp"
#include "support/stands.hpp"

namespace holdback::sizing {
namespace {

struct Case {
  Stand stand = test::small_stand();
  Demand demand() const { return demand_of(stand.jobs[0], site_of(stand)); }
  TensionWindow window() const { return tension_window(stand.jobs[0], demand(), site_of(stand)); }
  const WindowBound* bound(const TensionWindow& window, BoundId id) const {
    const auto at =
        std::find_if(window.bounds.begin(), window.bounds.end(), [id](const WindowBound& b) { return b.id == id; });
    return at == window.bounds.end() ? nullptr : &*at;
  }
};

Idler smooth_idler(double diameter) { return {"smooth", diameter, std::numbers::pi / 2, 0.25, 1e-6, 0.05, 0.01}; }

// 36 µm polyester, 1.2 m wide: a quarter of the yield of 90 MPa is 972 N, 0.3 % of strain at 4.2 GPa is 544 N, the
// table (0.5–1.0 lbf/in per mil, common practice) ends at 298 N.
TEST(tension_window, knows_strength_strain_and_what_is_usual) {
  const Case c;
  const TensionWindow window = c.window();
  EXPECT_NEAR(c.bound(window, BoundId::strength)->tension, 972, 1e-6);
  EXPECT_NEAR(c.bound(window, BoundId::strain)->tension, 544.32, 1e-6);
  EXPECT_NEAR(c.bound(window, BoundId::usual_most)->tension, 297.9, 0.1);
  EXPECT_EQ(window.over_speed.back().high_by, BoundId::usual_most);
  EXPECT_EQ(window.over_speed.back().low_by, BoundId::usual_least);
}

TEST(tension_window, has_no_bound_of_what_is_not_known) {
  const Case c;
  const TensionWindow window = c.window();
  for (const BoundId id : {BoundId::traction, BoundId::sag, BoundId::balance, BoundId::cinching})
    EXPECT_EQ(c.bound(window, id), nullptr) << key_of(id);
}

TEST(tension_window, is_bounded_by_the_idler_that_needs_most_the_faster_the_more) {
  Case c;
  c.stand.idlers = {smooth_idler(0.06), smooth_idler(0.12)};
  c.stand.idlers[1].name = "large";
  const TensionWindow window = c.window();
  EXPECT_EQ(c.bound(window, BoundId::traction)->part, "large");
  for (std::size_t k = 1; k < window.over_speed.size(); ++k)
    EXPECT_GE(*window.over_speed[k].low, *window.over_speed[k - 1].low);
}

TEST(tension_window, is_bounded_by_sag_as_a_parabola_has_it) {
  Case c;
  c.stand.path.longest_span = 2;
  c.stand.path.most_sag = 0.005;
  const double weight = 0.05 * 1.2 * 9.80665;
  const TensionWindow window = c.window();
  EXPECT_NEAR(c.bound(window, BoundId::sag)->tension, weight * 4 / (8 * 0.01), 1e-9);
}

// The moment m g e grows with R², its arm with R: the full roll needs most.
TEST(tension_window, needs_most_balance_at_the_full_roll) {
  Case c;
  c.stand.jobs[0].roll.runout = 0.001;
  const TensionWindow window = c.window();
  const WindowBound* balance = c.bound(window, BoundId::balance);
  ASSERT_NE(balance, nullptr);
  EXPECT_DOUBLE_EQ(balance->diameter, 1.0);
  EXPECT_NEAR(balance->tension, c.demand().web_mass * 9.80665 * 0.001 / 0.5, 1e-6);
}

TEST(tension_window, narrows_with_the_roll_where_a_stop_would_cinch_it) {
  Case c;
  c.stand.jobs[0].web.wound_tension = 300;
  const TensionWindow window = c.window();
  ASSERT_NE(c.bound(window, BoundId::cinching), nullptr);
  EXPECT_DOUBLE_EQ(c.bound(window, BoundId::cinching)->diameter, 1.0);
  EXPECT_LE(c.bound(window, BoundId::cinching)->tension, 300 * 1.2);
}

TEST(cinching, fails_a_job_whose_stop_asks_more_than_the_roll_was_wound_to_carry) {
  Case c;
  c.stand.jobs[0].web.wound_tension = 200;
  c.stand.jobs[0].stop_time = 4;
  const Site site = site_of(c.stand);
  const Candidate candidate = candidate_of(c.stand.brakes[0], c.stand.brakes[0].grades[0], 2, site);
  const Assessment judged = assess_job(c.demand(), candidate, site);
  const Limit& limit = judged.limits[static_cast<std::size_t>(LimitId::cinching)];
  EXPECT_EQ(limit.state, State::fails);
  EXPECT_EQ(limit.load_case, LoadCase::stop);
  EXPECT_EQ(limit.known, Known::practice);
  // By hand: setpoint 220 N with 10 % above it on 0.5 m, and the web's inertia at 5 m/s in 4 s; wound 240 N on 0.5 m.
  const double web = c.demand().web_inertia.back();
  EXPECT_NEAR(limit.value, 242 * 0.5 + web * 5 / 4 / 0.5, 1e-9);
  EXPECT_NEAR(limit.bound, 240 * 0.5, 1e-9);
}

TEST(cinching, is_nearest_in_steady_run_when_stops_are_gentle_and_light) {
  Case c;
  c.stand.jobs[0].web.wound_tension = 300;
  c.stand.limits.stop_tension = 0;
  c.stand.limits.emergency_stop_tension = 0;
  c.stand.jobs[0].stop_time = 1000;
  c.stand.jobs[0].emergency_stop_time = 1000;
  EXPECT_EQ(c.demand().cinching->load_case, LoadCase::run);
}

}  // namespace
}  // namespace holdback::sizing
