#include "holdback/sizing/assess.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/brake.hpp"
#include "holdback/physics/torque.hpp"

namespace holdback::sizing {

namespace {

// Margin of a value against a bound it may not exceed. Nothing asked for leaves everything in hand.
double at_most(double value, double bound) {
  if (value <= 0) return margin_cap;
  return std::clamp(bound / value, 0.0, margin_cap);
}

double at_least(double value, double bound) {
  if (bound <= 0) return margin_cap;
  return std::clamp(value / bound, 0.0, margin_cap);
}

// One job on one candidate while its limits are filled in, one function a topic.
class Judge {
 public:
  Judge(const Demand& demand, const Survey& survey, const Candidate& candidate, const Site& site, int pairs)
      : demand_(demand),
        survey_(survey),
        candidate_(candidate),
        brake_(*candidate.brake),
        grade_(*candidate.grade),
        site_(site),
        ceiling_(pressure_ceiling(site, brake_)),
        floor_(pressure_floor(site, brake_)) {
    const auto pair = physics::pair_torque_per_pressure(brake_, grade_);
    const double engaged = candidate.brakes * pairs;
    weakest_ = pair.capacity * engaged * (1 - grade_.friction_band);
    strongest_ = pair.highest * engaged * (1 + grade_.friction_band);
    pads_ = 2.0 * engaged;
    result_.pairs = pairs;
  }

  Assessment judge() {
    judge_tension();
    judge_pressure();
    judge_stops();
    judge_ratings();
    judge_heat();
    judge_wear();
    return result_;
  }

 private:
  void judge_tension() {
    const TensionTarget& tension = demand_.tension;
    const double core = 2 * demand_.radius.front();
    if (tension.web_strength > 0)
      add(LimitId::tension_window, tension.high, tension.web_strength, 0, LoadCase::run, Known::formula);
    const double floor_torque = physics::pad_torque(strongest_, floor_, brake_.threshold_pressure);
    add(LimitId::lowest_tension, physics::lowest_tension(floor_torque, survey_.drag, core / 2), tension.low, core,
        LoadCase::run, Known::formula);
    add(LimitId::tension_resolution, physics::tension_step(strongest_ * site_.pressure_step, core / 2),
        demand_.tolerance * tension.setpoint, core, LoadCase::run, Known::setting);
    add(LimitId::ramp_tension, survey_.released_tension.value, tension.high, survey_.released_tension.diameter,
        LoadCase::ramp, Known::formula);
  }

  void judge_pressure() {
    const double threshold = brake_.threshold_pressure;
    const Known known = ceiling_ < site_.air_ceiling ? Known::rating : Known::formula;
    add(LimitId::highest_pressure, physics::pad_pressure_for(weakest_, survey_.run_hot.value, threshold), ceiling_,
        survey_.run_hot.diameter, LoadCase::run, known);
    add(LimitId::lowest_pressure, physics::pad_pressure_for(strongest_, survey_.run_least.value, threshold), floor_,
        survey_.run_least.diameter, LoadCase::run, Known::formula);
  }

  // Needed against what hot pads of the lowest friction still give at that diameter.
  void judge_stops() {
    const double cold = physics::pad_torque(weakest_, ceiling_, brake_.threshold_pressure);
    add_torque(LimitId::stop_torque, survey_.stop_hot, cold, LoadCase::stop);
    add_torque(LimitId::emergency_stop_torque, survey_.emergency_stop_hot, cold, LoadCase::emergency_stop);
    add_torque(LimitId::holding_torque, survey_.hold_hot, cold * grade_.static_ratio, LoadCase::hold);
  }

  void judge_ratings() {
    add(LimitId::torque_rating, survey_.torque.value, candidate_.brakes * brake_.rated_torque, survey_.torque.diameter,
        survey_.torque_case, Known::rating);
    add(LimitId::disc_speed, survey_.rotational_speed.value, brake_.rated_speed, survey_.rotational_speed.diameter,
        LoadCase::run, Known::rating);
    if (grade_.pressure_speed_limit && brake_.piston_area > 0) {
      // Contact pressure is linear in torque, so the survey's highest torque times speed carries over.
      const double per_torque = physics::contact_pressure(brake_, brake_.threshold_pressure + 1) / weakest_;
      const double radius = physics::friction_radius(brake_.pad).capacity;
      add(LimitId::pressure_speed, per_torque * physics::sliding_speed(radius, survey_.hot_power.value),
          *grade_.pressure_speed_limit, survey_.hot_power.diameter, LoadCase::run, Known::rating);
    }
  }

  void judge_heat() {
    add(LimitId::slip_power, survey_.heat_load.power, survey_.heat_load.cooling, survey_.heat_load.diameter,
        LoadCase::run, Known::rating);
    add_temperature(LimitId::disc_temperature, survey_.temperature, brake_.rated_temperature, LoadCase::run);
    add_temperature(LimitId::pad_temperature, survey_.temperature, grade_.temperature_limit, LoadCase::run);
    add_temperature(LimitId::stop_temperature, survey_.stop_temperature,
                    std::min(brake_.rated_temperature, grade_.temperature_limit), LoadCase::emergency_stop);
  }

  void judge_wear() {
    const double usable = brake_.pad_area * brake_.usable_pad_depth;
    const double rate_of_pad = survey_.wear_volume_rate / pads_;
    // Shown for pads that burn away at once, and for a brake that never slips.
    constexpr double shortest = 1;    // [s]
    constexpr double longest = 1e12;  // [s]
    const double life = rate_of_pad > 0 ? std::clamp(usable / rate_of_pad, shortest, longest) : longest;
    add(LimitId::pad_life, life, site_.limits.least_pad_life, 0, LoadCase::run, Known::setting);
  }

  void add_torque(LimitId id, const HotPeak& needed, double available_cold, LoadCase load_case) {
    add(id, needed.value * needed.friction_left, available_cold * needed.friction_left, needed.diameter, load_case,
        Known::formula);
  }

  // In hand by rise above ambient, since that is what cooling and power govern.
  void add_temperature(LimitId id, const Peak& peak, double bound, LoadCase load_case) {
    const double margin = at_most(peak.value - site_.ambient, bound - site_.ambient);
    put({id, peak.value, bound, margin, 0, peak.diameter, load_case, Known::rating, State::holds});
  }

  void add(LimitId id, double value, double bound, double diameter, LoadCase load_case, Known known) {
    const double margin = info(id).sense == Sense::at_most ? at_most(value, bound) : at_least(value, bound);
    put({id, value, bound, margin, 0, diameter, load_case, known, State::holds});
  }

  void put(Limit limit) {
    limit.reserve = site_.limits.reserve;
    limit.state = state_of(limit.margin, limit.reserve);
    if (result_.present.none() || limit.margin < result_.margin) {
      result_.margin = limit.margin;
      result_.binding = limit.id;
    }
    result_.failing += limit.state == State::fails;
    result_.state = std::max(result_.state, limit.state);
    const auto index = static_cast<std::size_t>(limit.id);
    result_.present.set(index);
    result_.limits[index] = limit;
  }

  const Demand& demand_;
  const Survey& survey_;
  const Candidate& candidate_;
  const Brake& brake_;
  const Grade& grade_;
  const Site& site_;
  double ceiling_;
  double floor_;
  double weakest_{};    // [N·m/Pa] all engaged pairs, lowest friction, cold
  double strongest_{};  // [N·m/Pa] all engaged pairs, highest friction, cold
  double pads_{};
  Assessment result_{};
};

bool better(const Assessment& a, const Assessment& b) {
  if (a.state != b.state) return a.state < b.state;
  if (a.state == State::fails) return a.margin > b.margin;
  return false;  // fewer pairs come first
}

}  // namespace

Assessment assess(const Demand& demand, const Survey& survey, const Candidate& candidate, const Site& site, int pairs) {
  return Judge(demand, survey, candidate, site, pairs).judge();
}

Assessment assess_best(const Demand& demand, const Survey& survey, const Candidate& candidate, const Site& site) {
  Assessment best = assess(demand, survey, candidate, site, 1);
  for (int pairs = 2; pairs <= candidate.brake->pairs && best.state != State::holds; ++pairs) {
    const Assessment next = assess(demand, survey, candidate, site, pairs);
    if (better(next, best)) best = next;
  }
  return best;
}

Assessment assess_job(const Demand& demand, const Candidate& candidate, const Site& site) {
  return assess_best(demand, survey(demand, candidate, site), candidate, site);
}

}  // namespace holdback::sizing
