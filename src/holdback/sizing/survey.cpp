#include "holdback/sizing/survey.hpp"

#include <algorithm>
#include <array>

#include "holdback/numerics/wide.hpp"
#include "holdback/physics/brake.hpp"
#include "holdback/physics/cooling.hpp"
#include "holdback/physics/heat.hpp"
#include "holdback/physics/torque.hpp"
#include "holdback/physics/wear.hpp"
#include "holdback/sizing/disc.hpp"

namespace holdback::sizing {

namespace {

constexpr std::size_t count = radius_count;
static_assert(count % numerics::lanes == 0);

/// What is the same at every radius.
struct Loads {
  double tension{};               // [N]
  double drag{};                  // [N·m]
  double disc_inertia{};          // [kg·m²]
  double web_inertia_change{};    // [1] added share
  double caliper{};               // [1]
  double stop_rate{};             // [m/s²]
  double emergency_stop_rate{};   // [m/s²]
  double stop_share{};            // [1]
  double emergency_stop_share{};  // [1]
  double hold_share{};            // [1]
  double emergency_stop_time{};   // [s]
  double each_brake{};            // [1] one over the number of brakes
  double ambient{};               // [K]
  double cooling{};               // [1]
  double bulk_per_joule{};        // [K/J] of all discs together
  double surface_per_watt{};      // [K/W] of all discs together
};

HOLDBACK_WIDE void lay_out(const Demand& demand, const DiscOverRoll& disc, const Loads& asked, Pass& spots) {
  const Loads loads = asked;
  HOLDBACK_APART
  for (std::size_t i = 0; i < count; ++i) {
    const double radius = demand.radius[i];
    const double inverse = demand.inverse_radius[i];
    const double omega = demand.rotational_speed[i];
    const double inertia = demand.inertia[i] + loads.disc_inertia + demand.web_inertia[i] * loads.web_inertia_change;
    const double thinning = demand.run_acceleration[i] * loads.caliper;
    const double ramp = demand.ramp_acceleration[i] + demand.run_acceleration[i] * (loads.caliper - 1);
    const double run = physics::brake_torque(loads.tension, radius, loads.drag, inertia, thinning);
    const double emergency_stop = physics::brake_torque(loads.emergency_stop_share * loads.tension, radius, loads.drag,
                                                        inertia, -loads.emergency_stop_rate * inverse);
    spots.run[i] = run;
    spots.stop[i] = physics::brake_torque(loads.stop_share * loads.tension, radius, loads.drag, inertia,
                                          -loads.stop_rate * inverse);
    spots.emergency_stop[i] = emergency_stop;
    spots.hold[i] = loads.hold_share * loads.tension * radius;
    spots.released[i] = physics::released_tension(inertia, ramp, loads.drag, 1) * inverse;

    const double power = physics::slip_power(run > 0 ? run : 0, omega);
    const double one = power * loads.each_brake;
    const double temperature = physics::steady_temperature(loads.ambient, one, disc.convection[i] * loads.cooling,
                                                           disc.radiation[i] * loads.cooling);
    const double stopping = physics::slip_power(emergency_stop > 0 ? emergency_stop : 0, omega);
    spots.power[i] = power;
    spots.load_share[i] = one * disc.per_rated_watt[i];
    spots.temperature[i] = temperature;
    spots.stop_temperature[i] =
        temperature + physics::stop_energy(stopping, 1, loads.emergency_stop_time) * loads.bulk_per_joule;
    spots.stop_surface[i] = temperature + stopping * loads.surface_per_watt;
  }
}

HOLDBACK_WIDE void find_highest(const Pass& spots, PassExtremes& extremes) {
  extremes = {numerics::highest_of(spots.run.data(), count),
              numerics::highest_of(spots.stop.data(), count),
              numerics::highest_of(spots.emergency_stop.data(), count),
              numerics::highest_of(spots.hold.data(), count),
              numerics::highest_of(spots.released.data(), count),
              numerics::highest_of(spots.power.data(), count),
              numerics::highest_of(spots.load_share.data(), count),
              numerics::highest_of(spots.temperature.data(), count),
              numerics::highest_of(spots.stop_temperature.data(), count),
              numerics::highest_of(spots.stop_surface.data(), count),
              numerics::lowest_of(spots.run.data(), count)};
}

std::size_t index_of(const OverRoll& values, double value) {
  const auto at = std::find(values.begin(), values.end(), value);
  return at == values.end() ? 0 : static_cast<std::size_t>(at - values.begin());
}

/// The torques that cold pads would have to be good for, where heat takes friction away.
struct alignas(64) HotTorques {
  OverRoll run, stop, emergency_stop, hold, power, friction_left;
};

HOLDBACK_WIDE void heat_up(const Pass& spots, double fade_start, double fade_rate, HotTorques& hot) {
  HOLDBACK_APART
  for (std::size_t i = 0; i < count; ++i) {
    const double left = physics::friction_left(fade_start, fade_rate, spots.temperature[i]);
    hot.friction_left[i] = left;
    hot.run[i] = spots.run[i] / left;
    hot.stop[i] = spots.stop[i] / left;
    hot.emergency_stop[i] = spots.emergency_stop[i] / left;
    hot.hold[i] = spots.hold[i] / left;
    hot.power[i] = spots.power[i] / left;
  }
}

/// Share of the web's length at each radius, weighed by how much faster pads wear there.
HOLDBACK_WIDE void wear_out(const Demand& demand, const Pass& spots, double knee, double doubling, OverRoll& worn) {
  HOLDBACK_APART
  for (std::size_t i = 0; i < count; ++i)
    worn[i] = demand.share_of_length[i] * physics::wear_growth(knee, doubling, spots.temperature[i]);
}

class Surveyor {
 public:
  Surveyor(const Demand& demand, const Pass& spots, Where where, Survey& survey)
      : demand_(demand), spots_(spots), highest_(spots.extremes), where_(where), survey_(survey) {}

  void survey(const DiscOverRoll& shedding, const Candidate& candidate) {
    survey_.released_tension = peak(spots_.released, highest_.released);
    survey_.slip_power = peak(spots_.power, highest_.power);
    survey_.temperature = peak(spots_.temperature, highest_.temperature);
    survey_.stop_temperature = peak(spots_.stop_temperature, highest_.stop_temperature);
    survey_.stop_surface = peak(spots_.stop_surface, highest_.stop_surface);
    survey_.rotational_speed = {demand_.rotational_speed.front(), 2 * demand_.radius.front()};
    survey_heat(shedding);
    survey_least();
    survey_torque();
    survey_hot(*candidate.grade);
    survey_wear(*candidate.grade);
  }

 private:
  Peak peak(const OverRoll& values, double value) const {
    return {value, where_ == Where::known ? 2 * demand_.radius[index_of(values, value)] : 0};
  }

  HotPeak hot_peak(const OverRoll& values, double value) const {
    return {value, where_ == Where::known ? 2 * demand_.radius[index_of(values, value)] : 0, 1};
  }

  void survey_heat(const DiscOverRoll& shedding) {
    if (where_ == Where::left_out) {
      survey_.heat_load = {highest_.load_share, spots_.cooling, 0};
      return;
    }
    const std::size_t i = index_of(spots_.load_share, highest_.load_share);
    survey_.heat_load = {spots_.power[i] * spots_.each_brake, spots_.cooling / shedding.per_rated_watt[i],
                         2 * demand_.radius[i]};
  }

  // Tension times radius falls towards the core faster than what inertia takes, but heavy rolls may turn that round.
  void survey_least() { survey_.run_least = peak(spots_.run, highest_.least_run); }

  void survey_torque() {
    const std::pair<const OverRoll*, LoadCase> cases[] = {{&spots_.run, LoadCase::run},
                                                          {&spots_.stop, LoadCase::stop},
                                                          {&spots_.emergency_stop, LoadCase::emergency_stop},
                                                          {&spots_.hold, LoadCase::hold}};
    const double values[] = {highest_.run, highest_.stop, highest_.emergency_stop, highest_.hold};
    const auto most = static_cast<std::size_t>(std::max_element(std::begin(values), std::end(values)) - values);
    survey_.torque = peak(*cases[most].first, values[most]);
    survey_.torque_case = cases[most].second;
  }

  void survey_hot(const Grade& grade) {
    if (!grade.fade_start || highest_.temperature <= *grade.fade_start) {
      survey_.run_hot = hot_peak(spots_.run, highest_.run);
      survey_.stop_hot = hot_peak(spots_.stop, highest_.stop);
      survey_.emergency_stop_hot = hot_peak(spots_.emergency_stop, highest_.emergency_stop);
      survey_.hold_hot = hot_peak(spots_.hold, highest_.hold);
      survey_.hot_power = survey_.slip_power;
      return;
    }
    HotTorques hot;
    heat_up(spots_, *grade.fade_start, grade.fade_rate, hot);
    survey_.run_hot = faded_peak(hot, hot.run);
    survey_.stop_hot = faded_peak(hot, hot.stop);
    survey_.emergency_stop_hot = faded_peak(hot, hot.emergency_stop);
    survey_.hold_hot = faded_peak(hot, hot.hold);
    survey_.hot_power = peak(hot.power, numerics::highest_of(hot.power.data(), count));
  }

  HotPeak faded_peak(const HotTorques& hot, const OverRoll& values) const {
    const double value = numerics::highest_of(values.data(), count);
    if (where_ == Where::left_out) return {value, 0, 1};
    const std::size_t i = index_of(values, value);
    return {value, 2 * demand_.radius[i], hot.friction_left[i]};
  }

  void survey_wear(const Grade& grade) {
    if (!grade.wear_knee || highest_.temperature <= *grade.wear_knee) {
      survey_.wear_volume_rate = physics::worn_volume(
          grade.wear_rate, numerics::product_sum(demand_.share_of_length.data(), spots_.power.data(), count));
      return;
    }
    OverRoll worn;
    wear_out(demand_, spots_, *grade.wear_knee, grade.wear_doubling, worn);
    const double rate =
        physics::worn_volume(grade.wear_rate, numerics::product_sum(worn.data(), spots_.power.data(), count));
    survey_.wear_volume_rate = rate;
  }

  const Demand& demand_;
  const Pass& spots_;
  const PassExtremes& highest_;
  Where where_;
  Survey& survey_;
};

Loads loads_of(const Demand& demand, const DiscOverRoll& disc, const Candidate& candidate, const Site& site,
               const Variation& variation) {
  const Brake& brake = *candidate.brake;
  Loads loads;
  loads.tension = demand.tension.setpoint * variation.tension;
  loads.drag = (site.drag + candidate.brakes * brake.drag) * variation.drag;
  loads.disc_inertia = candidate.brakes * brake.disc_inertia;
  loads.web_inertia_change = 1 / variation.caliper - 1;
  loads.caliper = variation.caliper;
  loads.stop_rate = demand.speed / demand.stop_time;
  loads.emergency_stop_rate = demand.speed / demand.emergency_stop_time;
  loads.stop_share = site.limits.stop_tension;
  loads.emergency_stop_share = site.limits.emergency_stop_tension;
  loads.hold_share = site.limits.hold_tension;
  loads.emergency_stop_time = demand.emergency_stop_time;
  loads.each_brake = 1.0 / candidate.brakes;
  loads.ambient = site.ambient + variation.ambient;
  loads.cooling = variation.cooling;
  loads.bulk_per_joule = physics::adiabatic_rise(1, candidate.brakes * brake.disc_mass, brake.specific_heat);
  loads.surface_per_watt = disc.surface_per_watt * loads.each_brake;
  return loads;
}

}  // namespace

void pass_over(const Demand& demand, const DiscOverRoll& disc, const Candidate& candidate, const Site& site,
               const Variation& variation, Pass& pass) {
  const Loads loads = loads_of(demand, disc, candidate, site, variation);
  pass.ambient = loads.ambient;
  pass.drag = loads.drag;
  pass.disc_inertia = loads.disc_inertia;
  pass.each_brake = loads.each_brake;
  pass.cooling = loads.cooling;
  lay_out(demand, disc, loads, pass);
  find_highest(pass, pass.extremes);
}

Survey survey(const Demand& demand, const DiscOverRoll& disc, const Pass& pass, const Candidate& candidate,
              Where where) {
  Survey survey;
  survey.drag = pass.drag;
  survey.disc_inertia = pass.disc_inertia;
  survey.ambient = pass.ambient;
  Surveyor(demand, pass, where, survey).survey(disc, candidate);
  return survey;
}

Survey survey(const Demand& demand, const Candidate& candidate, const Site& site) {
  const DiscOverRoll disc = candidate.cooling->over(demand, site.ambient);
  Pass pass;
  pass_over(demand, disc, candidate, site, {}, pass);
  return survey(demand, disc, pass, candidate, Where::known);
}

double disc_temperature(const Candidate& candidate, const Site& site, double torque, double rotational_speed) {
  const double power = physics::slip_power(std::max(torque, 0.0), rotational_speed) / candidate.brakes;
  const Shedding shedding = candidate.cooling->at(rotational_speed);
  return physics::steady_temperature(site.ambient, power, shedding.convection, shedding.radiation);
}

}  // namespace holdback::sizing
