#include "holdback/physics/thermal.hpp"

#include <numeric>

#include "holdback/physics/thermal_steps.hpp"
#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::infinity;
using testing::near;

constexpr auto disc = static_cast<std::size_t>(ThermalNode::disc);
constexpr auto pads = static_cast<std::size_t>(ThermalNode::pads);
constexpr auto calipers = static_cast<std::size_t>(ThermalNode::calipers);
constexpr auto hub = static_cast<std::size_t>(ThermalNode::hub);
constexpr double ambient = 298.15;

NodeTemperatures all_at(double temperature) { return {temperature, temperature, temperature, temperature}; }

/// Only the disc takes part.
ThermalNodes lone_disc(double capacity) {
  ThermalNodes nodes;
  nodes.capacity = {capacity, 1, 1, 1};
  return nodes;
}

/// Invented: about a 400 mm disc with two calipers.
ThermalNodes whole_brake(double emissivity) {
  ThermalNodes nodes;
  nodes.capacity = {5000, 600, 3000, 8000};
  nodes.pads_disc = 6;
  nodes.calipers_pads = 3;
  nodes.hub_disc = 4;
  nodes.calipers_air = 2;
  nodes.hub_air = 5;
  nodes.pad_share = 0.1;
  nodes.radiating_area = 0.2;
  nodes.emissivity = emissivity;
  return nodes;
}

/// Invented: a roll that gets smaller, the stop at its end, standstill for the next roll, and the ramp.
std::vector<ThermalSegment> roll_after_roll() {
  std::vector<ThermalSegment> segments;
  for (int i = 0; i < 62; ++i) segments.push_back({20 + 0.3 * i, 1500, 1500, 6 + 0.1 * i});
  segments.push_back({5, 9000, 0, 9});
  segments.push_back({180, 0, 0, 3});
  segments.push_back({10, 500, 1500, 4});
  return segments;
}

::testing::AssertionResult states_near(const NodeTemperatures& actual, const NodeTemperatures& expected,
                                       double tolerance) {
  for (std::size_t i = 0; i < 4; ++i)
    if (!(std::abs(actual[i] - expected[i]) <= tolerance))
      return ::testing::AssertionFailure() << "node " << i << ": " << actual[i] << " K, expected " << expected[i];
  return ::testing::AssertionSuccess();
}

// ---- heat_rates -----------------------------------------------------------------------------------------------------

TEST(heat_rates, closes_the_balance_of_energy) {
  const ThermalNodes nodes = whole_brake(0.6);
  const NodeTemperatures state{420, 410, 350, 330};
  const NodeTemperatures rates = heat_rates(nodes, state, 1500, 8, ambient);
  const double stored = std::inner_product(rates.begin(), rates.end(), nodes.capacity.begin(), 0.0);
  const double radiated = 0.6 * 5.670374419e-8 * 0.2 * (std::pow(420, 4) - std::pow(ambient, 4));
  const double shed = 8 * (420 - ambient) + radiated + 2 * (350 - ambient) + 5 * (330 - ambient);
  EXPECT_TRUE(near(stored, 1500 - shed));
}

TEST(heat_rates, splits_the_power_and_rests_at_ambient) {
  const NodeTemperatures rates = heat_rates(whole_brake(0.6), all_at(ambient), 1000, 8, ambient);
  EXPECT_TRUE(near(rates[disc], 900.0 / 5000));
  EXPECT_TRUE(near(rates[pads], 100.0 / 600));
  EXPECT_EQ(heat_rates(whole_brake(0.6), all_at(ambient), 0, 8, ambient), all_at(0));
}

// ---- advance --------------------------------------------------------------------------------------------------------

TEST(advance, follows_a_lone_disc_under_constant_and_falling_power) {
  const double capacity = 5520, conductance = 9, tau = capacity / conductance;
  for (const double time : {0.01, 1.0, 60.0, 600.0, 6000.0, 1e6}) {
    // Closed form: θ = Q/G (1 − e), and with power falling to zero over the time: Q/G ((1 − e) − (t − τ(1 − e))/t).
    const double warmed = -std::expm1(-time / tau);
    const auto rise = [&](double end) {
      return advance(lone_disc(capacity), all_at(ambient), {time, 1100, end, conductance}, ambient)[disc] - ambient;
    };
    EXPECT_NEAR(rise(1100), 1100 / conductance * warmed, 2e-5) << time;
    EXPECT_NEAR(rise(0), 1100 / conductance * (warmed - 1 + tau / time * warmed), 2e-5) << time;
  }
}

TEST(advance, follows_two_nodes_on_their_two_modes) {
  // Closed form: C_1 θ_1' = G (θ_2 − θ_1) − A θ_1, C_2 θ_2' = G (θ_1 − θ_2), from θ_1 = 100, θ_2 = 0.
  ThermalNodes nodes = lone_disc(5000);
  nodes.capacity[hub] = 8000;
  nodes.hub_disc = 12;
  const double a = (12 + 7.0) / 5000, b = 12.0 / 5000, c = 12.0 / 8000;
  const double mean = (a + c) / 2, half = std::sqrt((a - c) * (a - c) / 4 + b * c);
  for (const double time : {10.0, 200.0, 1500.0}) {
    const double slow = std::exp(-(mean - half) * time), fast = std::exp(-(mean + half) * time);
    const double first = 100 * ((half + (c - a) / 2) * slow + (half - (c - a) / 2) * fast) / (2 * half);
    const double second = 100 * c * (slow - fast) / (2 * half);
    const NodeTemperatures after = advance(nodes, {ambient + 100, ambient, ambient, ambient}, {time, 0, 0, 7}, ambient);
    EXPECT_NEAR(after[disc] - ambient, first, 2e-5) << time;
    EXPECT_NEAR(after[hub] - ambient, second, 2e-5) << time;
  }
}

TEST(advance, of_four_nodes_is_the_matrix_exponential) {
  // computed: NumPy 1.24, w, V = numpy.linalg.eig(-K/C[:, None]); s = numpy.linalg.solve(K, q);
  // T = Ta + s - V @ (exp(w t) * numpy.linalg.solve(V, s)), without radiation, 1500 W, 8 W/K.
  const auto after = [](double time) {
    return advance(whole_brake(0), all_at(ambient), {time, 1500, 1500, 8}, ambient);
  };
  EXPECT_TRUE(states_near(after(60), {313.1888856602, 311.5628727983, 298.5531199280, 298.3760844821}, 2e-5));
  EXPECT_TRUE(states_near(after(600), {382.7807219741, 373.4005567007, 317.6713829324, 310.4992979328}, 2e-5));
  EXPECT_TRUE(states_near(after(6000), {429.1900793565, 428.0272921190, 375.7823575302, 355.9221309719}, 2e-5));
}

TEST(advance, with_radiation_agrees_with_small_explicit_steps) {
  // computed: NumPy, the classical Runge-Kutta method with 2000 and 4000 steps a segment, equal to 1e-11 K.
  NodeTemperatures state = advance(whole_brake(0.6), all_at(ambient), {600, 1500, 1500, 8}, ambient);
  EXPECT_TRUE(states_near(state, {379.282758828, 371.320011151, 317.322565409, 310.147188440}, 2e-5));
  state = advance(whole_brake(0.6), state, {20, 9000, 0, 8}, ambient);
  EXPECT_TRUE(states_near(state, {390.770162988, 381.902277569, 318.288388338, 310.766762940}, 2e-5));
  state = advance(whole_brake(0.6), state, {300, 0, 0, 3}, ambient);
  EXPECT_TRUE(states_near(state, {355.876049803, 349.831394448, 325.257362580, 316.380860654}, 2e-5));
}

TEST(advance, keeps_all_energy_when_nothing_leaves) {
  ThermalNodes nodes = whole_brake(0);
  nodes.calipers_air = nodes.hub_air = 0;
  const NodeTemperatures after = advance(nodes, all_at(ambient), {400, 2000, 500, 0}, ambient);
  double stored = 0;
  for (std::size_t i = 0; i < 4; ++i) stored += nodes.capacity[i] * (after[i] - ambient);
  EXPECT_TRUE(near(stored, 400 * (2000 + 500) / 2, 1e-11));
}

TEST(advance, is_not_put_off_by_nodes_that_are_very_light) {
  ThermalNodes light = whole_brake(0.6), lighter = light;
  light.capacity[pads] = 1e-3;
  lighter.capacity[pads] = 0;
  const ThermalSegment segment{600, 1500, 1500, 8};
  EXPECT_TRUE(states_near(advance(lighter, all_at(ambient), segment, ambient),
                          advance(light, all_at(ambient), segment, ambient), 1e-3));
}

TEST(advance, of_no_time_changes_nothing) {
  const NodeTemperatures state{420, 410, 350, 330};
  EXPECT_EQ(advance(whole_brake(0.6), state, {0, 1500, 1500, 8}, ambient), state);
}

TEST(trajectory, is_segment_after_segment) {
  const auto segments = roll_after_roll();
  const auto ends = trajectory(whole_brake(0.6), all_at(ambient), segments, ambient);
  ASSERT_EQ(ends.size(), segments.size());
  NodeTemperatures state = all_at(ambient);
  for (std::size_t i = 0; i < segments.size(); ++i) {
    state = advance(whole_brake(0.6), state, segments[i], ambient);
    EXPECT_TRUE(states_near(ends[i], state, 1e-4)) << i;  // steps of another size
  }
  EXPECT_TRUE(trajectory(whole_brake(0.6), all_at(ambient), {}, ambient).empty());
}

// ---- the steps beneath ----------------------------------------------------------------------------------------------

constexpr ThermalSegment hard_stop{60, 20000, 0, 8};

NodeTemperatures in_equal_steps(const detail::Network& network, NodeTemperatures state, int steps) {
  const double length = hard_stop.duration / steps;
  for (int i = 0; i < steps; ++i) state = detail::step_from(network, hard_stop, state, i * length, length).after;
  return state;
}

TEST(thermal_steps, are_of_order_four) {
  const detail::Network network = detail::network_of(whole_brake(0.6), ambient);
  const double exact = in_equal_steps(network, all_at(400), 1000)[disc];
  const double coarse = in_equal_steps(network, all_at(400), 4)[disc] - exact;
  const double fine = in_equal_steps(network, all_at(400), 8)[disc] - exact;
  EXPECT_NEAR(std::log2(coarse / fine), 4, 0.3);
}

TEST(thermal_steps, carry_the_jacobian_that_differences_find) {
  const detail::Network network = detail::network_of(whole_brake(0.6), ambient);
  const NodeTemperatures start{460, 420, 380, 340};
  detail::Jacobian jacobian{};
  for (std::size_t k = 0; k < 4; ++k) jacobian[5 * k] = 1;
  carry(jacobian, network, hard_stop, detail::step_from(network, hard_stop, start, 0, 60));
  for (std::size_t k = 0; k < 4; ++k) {
    NodeTemperatures more = start, less = start;
    more[k] += 1e-2;
    less[k] -= 1e-2;
    const NodeTemperatures high = in_equal_steps(network, more, 1), low = in_equal_steps(network, less, 1);
    for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(jacobian[4 * i + k], (high[i] - low[i]) / 2e-2, 1e-8) << i << k;
  }
}

// ---- periodic_state -------------------------------------------------------------------------------------------------

TEST(periodic_state, is_what_two_thousand_runs_come_to) {
  const auto segments = roll_after_roll();
  const PeriodicState found = periodic_state(whole_brake(0.6), segments, ambient);
  NodeTemperatures state = all_at(ambient);
  for (int i = 0; i < 2000; ++i) state = trajectory(whole_brake(0.6), state, segments, ambient).back();
  EXPECT_TRUE(states_near(found.start, state, 1e-4));
  EXPECT_TRUE(states_near(trajectory(whole_brake(0.6), found.start, segments, ambient).back(), found.start, 1e-6));
}

TEST(periodic_state, of_one_steady_segment_is_the_steady_state) {
  // The same, whatever the capacities and the length of the segment.
  for (const double time : {1.0, 600.0, 1e6}) {
    const NodeTemperatures state = periodic_state(whole_brake(0.6), {{time, 1500, 1500, 8}}, ambient).start;
    for (const double rate : heat_rates(whole_brake(0.6), state, 1500, 8, ambient)) EXPECT_NEAR(rate, 0, 1e-9);
  }
}

TEST(periodic_state, finds_a_peak_inside_a_segment) {
  // Closed form of a lone disc: power Q (1 − t/D) for D, then rest for r; e = e^(−t/τ).
  const double capacity = 5520, g = 9, tau = capacity / g, power = 20000, d = 40, rest = 900;
  const double rise = power / g, slope = power / (g * d);
  const auto forced = [&](double t) { return rise * -std::expm1(-t / tau) - slope * (t + tau * std::expm1(-t / tau)); };
  const double kept = std::exp(-rest / tau);
  const double start = forced(d) * kept / (1 - kept * std::exp(-d / tau));
  const double time = tau * std::log((rise / tau - start / tau + slope) / slope);
  const PeriodicState found = periodic_state(lone_disc(capacity), {{d, power, 0, g}, {rest, 0, 0, g}}, ambient);
  EXPECT_NEAR(found.start[disc] - ambient, start, 1e-4);
  EXPECT_NEAR(found.highest[disc].time, time, 0.01);
  EXPECT_NEAR(found.highest[disc].temperature - ambient, start * std::exp(-time / tau) + forced(time), 1e-4);
  EXPECT_NEAR(found.lowest[disc].temperature - ambient, start, 1e-4);
}

TEST(periodic_state, puts_the_extremes_where_they_are) {
  const auto segments = roll_after_roll();
  const PeriodicState found = periodic_state(whole_brake(0.6), segments, ambient);
  for (const NodeTemperatures& state : trajectory(whole_brake(0.6), found.start, segments, ambient)) {
    for (std::size_t i = 0; i < 4; ++i) {
      EXPECT_LE(state[i], found.highest[i].temperature + 1e-4);
      EXPECT_GE(state[i], found.lowest[i].temperature - 1e-4);
    }
  }
  EXPECT_GT(found.highest[disc].time, 0);
  EXPECT_LT(found.highest[calipers].temperature, found.highest[pads].temperature);
  EXPECT_LT(found.highest[hub].temperature, found.highest[disc].temperature);
}

TEST(periodic_state, without_a_way_out_is_infinite_only_where_heat_goes_in) {
  const std::vector<ThermalSegment> run{{100, 500, 500, 0}};
  EXPECT_EQ(periodic_state(lone_disc(5000), run, ambient).highest[disc].temperature, infinity);
  EXPECT_EQ(periodic_state(lone_disc(5000), run, ambient).start[hub], ambient);
  EXPECT_EQ(periodic_state(lone_disc(5000), {{100, 0, 0, 0}}, ambient).start, all_at(ambient));

  ThermalNodes nodes = lone_disc(5000);
  nodes.pad_share = 0.1;  // into pads that touch nothing
  const PeriodicState found = periodic_state(nodes, {{100, 500, 500, 9}}, ambient);
  EXPECT_EQ(found.start[pads], infinity);
  EXPECT_TRUE(near(found.start[disc] - ambient, 450.0 / 9, 1e-9));
  EXPECT_EQ(periodic_state(nodes, {}, ambient).start, all_at(ambient));
  EXPECT_EQ(periodic_state(nodes, {{0, 500, 500, 9}}, ambient).highest[disc].temperature, ambient);
}

// ---- times ----------------------------------------------------------------------------------------------------------

TEST(thermal_time_constant, of_one_node_and_of_four) {
  EXPECT_TRUE(near(thermal_time_constant(lone_disc(5520), 9, all_at(ambient)), 5520.0 / 9));
  // computed: NumPy, the largest of -1/numpy.linalg.eig(-K/C[:, None]) of the four nodes at 8 W/K.
  EXPECT_TRUE(near(thermal_time_constant(whole_brake(0), 8, all_at(ambient)), 1215.4933775421, 1e-12));
}

TEST(thermal_time_constant, counts_radiation_and_leaves_out_what_is_not_joined) {
  ThermalNodes nodes = lone_disc(5520);
  nodes.radiating_area = 0.1;
  nodes.emissivity = 0.7;
  const double slope = 4 * 0.7 * 5.670374419e-8 * 0.1 * std::pow(400, 3);
  EXPECT_TRUE(near(thermal_time_constant(nodes, 9, all_at(400)), 5520 / (9 + slope)));
  nodes.capacity[hub] = 1e9;
  EXPECT_TRUE(near(thermal_time_constant(nodes, 9, all_at(400)), 5520 / (9 + slope)));
  EXPECT_EQ(thermal_time_constant(lone_disc(5520), 0, all_at(400)), infinity);
}

TEST(time_to_reach_share, of_one_steady_segment_is_a_logarithm) {
  const double tau = 5520.0 / 9;
  for (const double share : {0.1, 0.5, 0.95, 0.999})
    EXPECT_TRUE(near(time_to_reach_share(lone_disc(5520), {{50, 1000, 1000, 9}}, ambient, share),
                     -tau * std::log(1 - share), 2e-6));
}

TEST(time_to_reach_share, finds_the_first_stop_that_is_hot_enough) {
  // Closed form: the peak after n stops is 1 − e^(−n t/τ) of the last one, t/τ = 120/613.3. 95 % needs n = 16.
  const std::vector<ThermalSegment> stops{{1, 45000, 45000, 9}, {119, 0, 0, 9}};
  const double found = time_to_reach_share(lone_disc(5520), stops, ambient, 0.95);
  EXPECT_GT(found, 15 * 120);
  EXPECT_LT(found, 15 * 120 + 1);
}

TEST(time_to_reach_share, says_when_there_is_nothing_to_reach) {
  const std::vector<ThermalSegment> run{{50, 1000, 1000, 9}};
  EXPECT_EQ(time_to_reach_share(lone_disc(5520), run, ambient, 0), 0);
  EXPECT_EQ(time_to_reach_share(lone_disc(5520), run, ambient, 1), infinity);
  EXPECT_EQ(time_to_reach_share(lone_disc(5520), {{50, 0, 0, 9}}, ambient, 0.5), 0);
  EXPECT_EQ(time_to_reach_share(lone_disc(5520), {{50, 100, 100, 0}}, ambient, 0.5), infinity);
  EXPECT_EQ(time_to_reach_share(lone_disc(5520), {{1e-6, 1000, 1000, 9}}, ambient, 0.5), infinity);
}

TEST(time_to_cool, ends_where_the_hottest_node_is_cool) {
  const NodeTemperatures hot{450, 430, 380, 360};
  const double time = time_to_cool(whole_brake(0.6), 3, hot, ambient, 330);
  const NodeTemperatures then = advance(whole_brake(0.6), hot, {time, 0, 0, 3}, ambient);
  EXPECT_NEAR(*std::max_element(then.begin(), then.end()), 330, 1e-4);
}

TEST(time_to_cool, is_zero_or_endless_at_the_ends) {
  EXPECT_EQ(time_to_cool(whole_brake(0.6), 3, all_at(320), ambient, 330), 0);
  EXPECT_EQ(time_to_cool(whole_brake(0.6), 3, all_at(340), 330, 330), infinity);
  EXPECT_EQ(time_to_cool(lone_disc(5520), 0, all_at(340), ambient, 330), infinity);
}

TEST(thermal, is_a_number_for_any_input) {
  const std::vector<double> wild{-1e308, 0, 1e-308, 1, 1e6, 1e308};
  const auto is_number = [](const NodeTemperatures& t) {
    return std::none_of(t.begin(), t.end(), [](double x) { return std::isnan(x); });
  };
  for (const double a : wild)
    for (const double b : wild)
      for (const double c : wild) {
        ThermalNodes nodes;
        nodes.capacity = {a, b, c, a};
        nodes.pads_disc = nodes.calipers_air = b;
        nodes.hub_disc = nodes.radiating_area = c;
        nodes.calipers_pads = nodes.pad_share = nodes.emissivity = a;
        const NodeTemperatures state{b, c, a, b};
        const std::vector<ThermalSegment> run{{a, b, c, b}, {1, c, a, c}};
        ASSERT_TRUE(is_number(heat_rates(nodes, state, c, a, b)));
        ASSERT_TRUE(is_number(trajectory(nodes, state, run, c).back()));
        const PeriodicState found = periodic_state(nodes, run, a);
        ASSERT_TRUE(is_number(found.start));
        ASSERT_FALSE(std::isnan(found.highest[disc].temperature) || std::isnan(found.lowest[disc].temperature));
        ASSERT_FALSE(std::isnan(thermal_time_constant(nodes, a, state)));
        ASSERT_FALSE(std::isnan(time_to_cool(nodes, b, state, a, c)));
        ASSERT_FALSE(std::isnan(time_to_reach_share(nodes, {{600, b, c, b}}, a, 0.5)));
      }
}

}  // namespace
}  // namespace holdback::physics
