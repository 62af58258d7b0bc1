#include "holdback/sizing/thermal.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/conduction.hpp"
#include "holdback/physics/cooling.hpp"
#include "holdback/physics/heat.hpp"
#include "holdback/physics/thermal.hpp"
#include "holdback/physics/wear.hpp"
#include "holdback/sizing/disc.hpp"
#include "holdback/sizing/survey.hpp"

namespace holdback::sizing {

namespace {

constexpr std::size_t last = radius_count - 1;
constexpr std::size_t roll_steps = 21;  // segments from full to core; divides the radii evenly
constexpr std::size_t rest_steps = 6;   // of the change-over
constexpr double hot_share = 0.95;
constexpr double no_end = 1e9;  // [s]
static_assert(last % roll_steps == 0);

/// Materials of the parts, common practice, no source: aluminium calipers, a steel hub, and what
/// still air and radiation take from a warm part.
constexpr double caliper_heat = 900;      // [J/(kg·K)]
constexpr double caliper_density = 2700;  // [kg/m³]
constexpr double hub_heat = 480;          // [J/(kg·K)]
constexpr double hub_density = 7850;      // [kg/m³]
constexpr double to_still_air = 10;       // [W/(m²·K)]

/// Surface of a compact body with fins and edges: one and a half times that of a cube of its volume [m²].
double surface(double mass, double density) { return 1.5 * 6 * std::pow(mass / density, 2.0 / 3.0); }

physics::ThermalNodes nodes_of(const Brake& brake, int pairs, double radiation) {
  const double pads = 2.0 * pairs;
  const double face = pads * brake.pad_area;
  const double through_pad = pad_material.conductivity * face / (brake.usable_pad_depth / 2);
  const double pad_heat = pad_material.density * pad_material.specific_heat;  // [J/(m³·K)]
  physics::ThermalNodes nodes;
  nodes.capacity = {brake.disc_mass * brake.specific_heat, face * brake.usable_pad_depth * pad_heat,
                    pairs * brake.caliper_mass * caliper_heat, brake.hub_mass * hub_heat};
  nodes.pads_disc = through_pad;
  nodes.calipers_pads = through_pad;
  nodes.hub_disc = brake.hub_conductance;
  nodes.calipers_air = to_still_air * pairs * surface(brake.caliper_mass, caliper_density);
  nodes.hub_air = to_still_air * surface(brake.hub_mass, hub_density);
  nodes.pad_share = 1 - heat_share(brake, pairs);
  nodes.radiating_area = radiation / physics::stefan_boltzmann;
  nodes.emissivity = 1;
  return nodes;
}

/// A roll from full to core and the change-over after it, as one brake feels it.
struct Cycle {
  std::vector<physics::ThermalSegment> segments{};
  std::vector<std::size_t> place{};  // radius index at the end of each segment
  double radiation{};                // [W/K⁴]
  double standing{};                 // [W/K]
  double run_time{};                 // [s]
};

class Course {
 public:
  Course(const Demand& demand, const Candidate& candidate, const Site& site)
      : demand_(demand),
        candidate_(candidate),
        site_(site),
        shedding_(candidate.cooling->over(demand, site.ambient)),
        standing_(candidate.cooling->at(0)) {
    for (std::size_t i = 0; i <= last; ++i) radiation_ += shedding_.radiation[i] / radius_count;
  }

  Cycle cycle() const {
    Cycle cycle;
    cycle.radiation = radiation_;
    const double whole = demand_.radius[last] * demand_.radius[last] - demand_.radius[0] * demand_.radius[0];
    const double roll_time = demand_.web_length / demand_.speed;
    constexpr std::size_t step = last / roll_steps;
    for (std::size_t i = last; i >= step; i -= step) {
      const std::size_t next = i - step;
      const double laid = demand_.radius[i] * demand_.radius[i] - demand_.radius[next] * demand_.radius[next];
      const double conductance = (conductance_at(i) + conductance_at(next)) / 2;
      cycle.segments.push_back({roll_time * laid / whole, power(i), power(next), conductance});
      cycle.place.push_back(next);
    }
    cycle.run_time = roll_time;
    cycle.standing = convection(standing_);
    for (std::size_t k = 0; k < rest_steps; ++k) {
      cycle.segments.push_back({site_.line.changeover_time / rest_steps, 0, 0, cycle.standing});
      cycle.place.push_back(0);
    }
    return cycle;
  }

  /// Friction power of one brake [W]: in steady run, or as another case begins.
  double power(std::size_t i, double CaseTorques::*asked = &CaseTorques::run) const {
    const double inertia = demand_.inertia[i] + candidate_.brakes * candidate_.brake->disc_inertia;
    const CaseTorques torques = case_torques(demand_, site_.limits, i, inertia, drag());
    return physics::slip_power(std::max(torques.*asked, 0.0), demand_.rotational_speed[i]) / candidate_.brakes;
  }

  double steady(std::size_t i) const {
    return physics::steady_temperature(site_.ambient, power(i), shedding_.convection[i], shedding_.radiation[i]);
  }

 private:
  double drag() const { return site_.drag + candidate_.brakes * candidate_.brake->drag; }
  double conductance_at(std::size_t i) const { return convection({shedding_.convection[i], shedding_.radiation[i]}); }

  /// Convection, with what radiation differs from its mean over the roll, taken at the rated rise.
  double convection(const Shedding& here) const {
    const double hot = site_.ambient + candidate_.cooling->rated_rise();
    const double per_kelvin = (hot + site_.ambient) * (hot * hot + site_.ambient * site_.ambient);
    return std::max(0.0, here.convection + (here.radiation - radiation_) * per_kelvin);
  }

  const Demand& demand_;
  const Candidate& candidate_;
  const Site& site_;
  DiscOverRoll shedding_;
  Shedding standing_;
  double radiation_{};
};

/// The same cycle in few segments, for what runs it over and over.
std::vector<physics::ThermalSegment> coarse(const Cycle& cycle) {
  constexpr std::size_t step = 7;
  static_assert(roll_steps % step == 0);
  std::vector<physics::ThermalSegment> few;
  for (std::size_t k = 0; k < roll_steps; k += step) {
    physics::ThermalSegment joined{0, cycle.segments[k].power, cycle.segments[k + step - 1].power_end, 0};
    for (std::size_t i = k; i < k + step; ++i) {
      joined.duration += cycle.segments[i].duration;
      joined.conductance += cycle.segments[i].conductance * cycle.segments[i].duration;
    }
    joined.conductance /= joined.duration;
    few.push_back(joined);
  }
  double rest = 0;
  for (std::size_t k = roll_steps; k < cycle.segments.size(); ++k) rest += cycle.segments[k].duration;
  few.push_back({rest, 0, 0, cycle.standing});
  return few;
}

void add_course(ThermalFacts& facts, const Course& course, const Cycle& cycle, const physics::ThermalNodes& nodes,
                const physics::NodeTemperatures& start, const Demand& demand, double ambient) {
  std::vector<physics::NodeTemperatures> states{start};
  for (const auto& state : physics::trajectory(nodes, start, cycle.segments, ambient)) states.push_back(state);
  double time = 0;
  for (std::size_t k = 0; k < states.size(); ++k) {
    const bool standing = k > roll_steps;
    const std::size_t i = k == 0 ? last : cycle.place[k - 1];
    if (k > 0) time += cycle.segments[k - 1].duration;
    facts.time.push_back(time);
    facts.diameter.push_back(2 * demand.radius[i]);
    facts.disc.push_back(states[k][0]);
    facts.pads.push_back(states[k][1]);
    facts.calipers.push_back(states[k][2]);
    facts.hub.push_back(states[k][3]);
    facts.steady.push_back(standing ? ambient : course.steady(i));
  }
}

/// Face of the disc in an emergency stop at the worst moment of the roll.
double surface_highest(const ThermalFacts& facts, const Course& course, const Cycle& cycle, double per_watt) {
  double highest = 0;
  for (std::size_t k = 0; k <= roll_steps; ++k)
    highest = std::max(
        highest,
        facts.disc[k] + course.power(k == 0 ? last : cycle.place[k - 1], &CaseTorques::emergency_stop) * per_watt);
  return highest;
}

/// Running time until a pad is worn, its wear followed through the roll at the temperatures of the repeating state.
double pad_life(const ThermalFacts& facts, const Cycle& cycle, const Brake& brake, const Grade& grade, int pairs) {
  double worn = 0;
  for (std::size_t k = 0; k < roll_steps; ++k) {
    const auto& segment = cycle.segments[k];
    const double rate = physics::wear_rate_at(grade, (facts.disc[k] + facts.disc[k + 1]) / 2);
    worn += physics::worn_volume(rate, (segment.power + segment.power_end) / 2 * segment.duration);
  }
  const double of_pad = worn / (2.0 * pairs) / cycle.run_time;
  return of_pad > 0 ? std::clamp(brake.pad_area * brake.usable_pad_depth / of_pad, 1.0, 1e12) : 1e12;
}

}  // namespace

physics::ThermalNodes thermal_nodes(const Demand& demand, const Candidate& candidate, const Site& site, int pairs) {
  return nodes_of(*candidate.brake, pairs, Course(demand, candidate, site).cycle().radiation);
}

ThermalFacts thermal_facts(const Demand& demand, const Candidate& candidate, const Site& site, int pairs) {
  const Course course(demand, candidate, site);
  const Cycle cycle = course.cycle();
  const Brake& brake = *candidate.brake;
  const physics::ThermalNodes nodes = nodes_of(brake, pairs, cycle.radiation);
  const physics::PeriodicState repeating = physics::periodic_state(nodes, cycle.segments, site.ambient);
  ThermalFacts facts;
  add_course(facts, course, cycle, nodes, repeating.start, demand, site.ambient);
  const auto hottest =
      static_cast<std::size_t>(std::max_element(facts.disc.begin(), facts.disc.end()) - facts.disc.begin());
  facts.disc_highest = std::max(repeating.highest[0].temperature, facts.disc[hottest]);
  facts.disc_lowest = repeating.lowest[0].temperature;
  facts.highest_diameter = facts.diameter[hottest];
  facts.pads_highest = repeating.highest[1].temperature;
  facts.calipers_highest = repeating.highest[2].temperature;
  facts.hub_highest = repeating.highest[3].temperature;
  facts.surface_highest =
      surface_highest(facts, course, cycle, candidate.cooling->surface_per_watt(demand.emergency_stop_time));
  facts.friction_left = physics::fade_factor(*candidate.grade, facts.disc_highest);
  facts.pad_life = pad_life(facts, cycle, brake, *candidate.grade, pairs);
  const physics::NodeTemperatures hot{facts.disc[hottest], facts.pads[hottest], facts.calipers[hottest],
                                      facts.hub[hottest]};
  facts.time_constant =
      std::min(physics::thermal_time_constant(nodes, cycle.segments[roll_steps / 2].conductance, hot), no_end);
  const double to_hot = physics::time_to_reach_share(nodes, coarse(cycle), site.ambient, hot_share);
  facts.time_to_hot = std::min(to_hot, no_end);
  facts.hot_at_once = to_hot <= cycle.run_time;
  const double to_open = physics::time_to_cool(nodes, cycle.standing, hot, site.ambient, site.limits.touch_temperature);
  facts.never_cool = !std::isfinite(to_open);
  facts.time_to_open = facts.never_cool ? 0 : std::min(to_open, no_end);
  facts.changeover = site.line.changeover_time;
  return facts;
}

}  // namespace holdback::sizing
