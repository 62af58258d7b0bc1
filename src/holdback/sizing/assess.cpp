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

// Keeps every limit with all that is said of it.
class Keeper {
 public:
  explicit Keeper(double reserve) : reserve_(reserve) {}
  Assessment result{};

  void put(Limit limit) {
    limit.reserve = reserve_;
    limit.state = state_of(limit.margin, reserve_);
    if (result.present.none() || limit.margin < result.margin) {
      result.margin = limit.margin;
      result.binding = limit.id;
    }
    result.failing += limit.state == State::fails;
    result.state = std::max(result.state, limit.state);
    const auto index = static_cast<std::size_t>(limit.id);
    result.present.set(index);
    result.limits[index] = limit;
  }

 private:
  double reserve_;
};

// Keeps only what a large mix needs. All limits share one reserve, so the least margin has the worst state.
class Counter {
 public:
  Summary result{0, 2 * margin_cap, LimitId::tension_window, 0, State::holds, 0};

  void put(const Limit& limit) {
    const bool less = limit.margin < result.margin;
    result.margin = less ? limit.margin : result.margin;
    result.binding = less ? limit.id : result.binding;
    result.failing |= static_cast<std::uint32_t>(!(limit.margin >= 1)) << static_cast<unsigned>(limit.id);
    if (limit.id == LimitId::pad_life) result.pad_life = limit.value;
  }
};

// One job on one candidate while its limits are handed to a sink, one function a topic. Some do not depend on the
// pairs.
template <class Sink>
class Judge {
 public:
  Judge(const Demand& demand, const Survey& survey, const Candidate& candidate, const Site& site,
        const Variation& variation)
      : demand_(demand),
        survey_(survey),
        candidate_(candidate),
        brake_(*candidate.brake),
        grade_(*candidate.grade),
        site_(site),
        variation_(variation),
        ceiling_(pressure_ceiling(site, brake_)),
        floor_(pressure_floor(site, brake_)) {}

  /// Limits that are the same for any number of pairs.
  void judge_fixed(Sink& sink) {
    sink_ = &sink;
    judge_target();
    judge_ratings();
    judge_heat();
    judge_window();
    judge_shaft();
  }

  /// The others.
  void judge_pairs(Sink& sink, int pairs) {
    sink_ = &sink;
    const double engaged = candidate_.brakes * pairs;
    const double band = grade_.friction_band;
    weakest_ = candidate_.pair.capacity * engaged * (1 + (variation_.of_friction ? variation_.friction : -band));
    strongest_ = candidate_.pair.highest * engaged * (1 + (variation_.of_friction ? variation_.friction : band));
    pads_ = 2.0 * engaged;
    judge_control();
    judge_pressure();
    judge_stops();
    judge_pressure_speed();
    judge_wear();
  }

 private:
  void judge_target() {
    const TensionTarget& tension = demand_.tension;
    const double high = tension.high * variation_.tension;
    if (tension.web_strength > 0)
      add(LimitId::tension_window, high, tension.web_strength * variation_.caliper, 0, LoadCase::run, Known::formula);
    add(LimitId::ramp_tension, survey_.released_tension.value, high, survey_.released_tension.diameter, LoadCase::ramp,
        Known::formula);
  }

  void judge_control() {
    const TensionTarget& tension = demand_.tension;
    const double core = 2 * demand_.radius.front();
    const double floor_torque = physics::pad_torque(strongest_, set(floor_), brake_.threshold_pressure);
    add(LimitId::lowest_tension, physics::lowest_tension(floor_torque, survey_.drag, core / 2),
        tension.low * variation_.tension, core, LoadCase::run, Known::formula);
    // What the pressure is off, beside the step, at the core where tension feels it most.
    const double at_core = physics::pad_pressure_for(strongest_, survey_.run_least.value, brake_.threshold_pressure);
    const double off = site_.pressure_step + std::abs(variation_.pressure) * at_core;
    add(LimitId::tension_resolution, physics::tension_step(strongest_ * off, core / 2),
        demand_.tolerance * tension.setpoint * variation_.tension, core, LoadCase::run, Known::setting);
  }

  /// What arrives at the brake when a pressure is set.
  double set(double pressure) const { return pressure * (1 + variation_.pressure); }

  void judge_pressure() {
    const double threshold = brake_.threshold_pressure;
    const Known known = ceiling_ < site_.air_ceiling ? Known::rating : Known::formula;
    add(LimitId::highest_pressure, physics::pad_pressure_for(weakest_, survey_.run_hot.value, threshold), set(ceiling_),
        survey_.run_hot.diameter, LoadCase::run, known);
    add(LimitId::lowest_pressure, physics::pad_pressure_for(strongest_, survey_.run_least.value, threshold),
        set(floor_), survey_.run_least.diameter, LoadCase::run, Known::formula);
  }

  // Needed against what hot pads of the lowest friction still give at that diameter.
  void judge_stops() {
    const double cold = physics::pad_torque(weakest_, set(ceiling_), brake_.threshold_pressure);
    add_torque(LimitId::stop_torque, survey_.stop_hot, cold, LoadCase::stop);
    add_torque(LimitId::emergency_stop_torque, survey_.emergency_stop_hot, cold, LoadCase::emergency_stop);
    add_torque(LimitId::holding_torque, survey_.hold_hot, cold * grade_.static_ratio, LoadCase::hold);
  }

  void judge_ratings() {
    add(LimitId::torque_rating, survey_.torque.value, candidate_.brakes * brake_.rated_torque, survey_.torque.diameter,
        survey_.torque_case, Known::rating);
    add(LimitId::disc_speed, survey_.rotational_speed.value, brake_.rated_speed, survey_.rotational_speed.diameter,
        LoadCase::run, Known::rating);
  }

  void judge_pressure_speed() {
    if (grade_.pressure_speed_limit && brake_.piston_area > 0) {
      // Contact pressure is linear in torque, so the survey's highest torque times speed carries over.
      const double per_torque = physics::contact_pressure(brake_, brake_.threshold_pressure + 1) / weakest_;
      const double radius = candidate_.friction_radius;
      add(LimitId::pressure_speed, per_torque * physics::sliding_speed(radius, survey_.hot_power.value),
          *grade_.pressure_speed_limit, survey_.hot_power.diameter, LoadCase::run, Known::rating);
    }
  }

  void judge_heat() {
    add(LimitId::slip_power, survey_.heat_load.power, survey_.heat_load.cooling, survey_.heat_load.diameter,
        LoadCase::run, brake_.cooling.empty() ? Known::formula : Known::rating);
    add_temperature(LimitId::disc_temperature, survey_.temperature, brake_.rated_temperature, LoadCase::run);
    add_temperature(LimitId::pad_temperature, survey_.temperature, grade_.temperature_limit, LoadCase::run);
    add_temperature(LimitId::stop_temperature, survey_.stop_temperature,
                    std::min(brake_.rated_temperature, grade_.temperature_limit), LoadCase::emergency_stop);
    add_temperature(LimitId::stop_surface, survey_.stop_surface, grade_.temperature_limit, LoadCase::emergency_stop);
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

  // Bounds that the web's path and the roll itself set, whatever the brake.
  void judge_window() {
    const double low = demand_.tension.low * variation_.tension;
    for (const WindowBound& bound : demand_.bounds) {
      if (bound.id == BoundId::traction) add_least(LimitId::idler_traction, bound, low);
      if (bound.id == BoundId::sag) add_least(LimitId::span_sag, bound, low);
      if (bound.id == BoundId::balance) add_least(LimitId::roll_balance, bound, low);
    }
    if (!demand_.cinching) return;
    const Cinching& cinching = *demand_.cinching;
    const double put_through = cinching.arm * demand_.tension.high * variation_.tension + cinching.inertia_torque;
    add(LimitId::cinching, put_through, cinching.wound_torque, cinching.diameter, cinching.load_case, Known::practice);
  }

  void add_least(LimitId id, const WindowBound& bound, double low) {
    add(id, bound.tension, low, bound.diameter, bound.load_case, bound.known);
  }

  void judge_shaft() {
    if (!demand_.shaft) return;
    const ShaftFacts& shaft = *demand_.shaft;
    const Limits& limits = site_.limits;
    const double full = 2 * demand_.radius.back();
    if (site_.shaft->core_grip)
      add(LimitId::core_grip, shaft.grip_torque * variation_.tension, *site_.shaft->core_grip, shaft.grip_diameter,
          LoadCase::emergency_stop, Known::rating);
    add(LimitId::shaft_fatigue, shaft.safety, limits.shaft_safety, full, LoadCase::emergency_stop, Known::setting);
    const double slowest = demand_.rotational_speed.back();
    const bool at_core = shaft.top_speed * shaft.whirl_speed_full >= slowest * shaft.whirl_speed;
    add(LimitId::whirl_speed, at_core ? shaft.top_speed : slowest,
        limits.whirl_share * (at_core ? shaft.whirl_speed : shaft.whirl_speed_full),
        at_core ? 2 * demand_.radius.front() : full, LoadCase::run, Known::setting);
    if (shaft.bearing_life)
      add(LimitId::bearing_life, *shaft.bearing_life, limits.least_bearing_life, 0, LoadCase::run, Known::setting);
  }

  void add_torque(LimitId id, const HotPeak& needed, double available_cold, LoadCase load_case) {
    add(id, needed.value * needed.friction_left, available_cold * needed.friction_left, needed.diameter, load_case,
        Known::formula);
  }

  // In hand by rise above ambient, since that is what cooling and power govern.
  void add_temperature(LimitId id, const Peak& peak, double bound, LoadCase load_case) {
    const double margin = at_most(peak.value - survey_.ambient, bound - survey_.ambient);
    put({id, peak.value, bound, margin, 0, peak.diameter, load_case, Known::rating, State::holds});
  }

  void add(LimitId id, double value, double bound, double diameter, LoadCase load_case, Known known) {
    const double margin = info(id).sense == Sense::at_most ? at_most(value, bound) : at_least(value, bound);
    put({id, value, bound, margin, 0, diameter, load_case, known, State::holds});
  }

  void put(const Limit& limit) { sink_->put(limit); }

  const Demand& demand_;
  const Survey& survey_;
  const Candidate& candidate_;
  const Brake& brake_;
  const Grade& grade_;
  const Site& site_;
  const Variation& variation_;
  double ceiling_;
  double floor_;
  double weakest_{};    // [N·m/Pa] all engaged pairs, lowest friction, cold
  double strongest_{};  // [N·m/Pa] all engaged pairs, highest friction, cold
  double pads_{};
  Sink* sink_{};
};

template <class Judged>
bool better(const Judged& a, const Judged& b) {
  if (a.state != b.state) return a.state < b.state;
  if (a.state == State::fails) return a.margin > b.margin;
  return false;  // fewer pairs come first
}

}  // namespace

Assessment assess(const Demand& demand, const Survey& survey, const Candidate& candidate, const Site& site, int pairs,
                  const Variation& variation) {
  Keeper keeper(site.limits.reserve);
  Judge<Keeper> judge(demand, survey, candidate, site, variation);
  judge.judge_fixed(keeper);
  judge.judge_pairs(keeper, pairs);
  keeper.result.pairs = pairs;
  return keeper.result;
}

Summary summarize(const Demand& demand, const Survey& survey, const Candidate& candidate, const Site& site, int pairs,
                  const Variation& variation) {
  Counter counter;
  Judge<Counter> judge(demand, survey, candidate, site, variation);
  judge.judge_fixed(counter);
  judge.judge_pairs(counter, pairs);
  counter.result.pairs = pairs;
  counter.result.state = state_of(counter.result.margin, site.limits.reserve);
  return counter.result;
}

Summary summarize_best(const Demand& demand, const Survey& survey, const Candidate& candidate, const Site& site) {
  constexpr Variation nominal{};
  Counter fixed;
  Judge<Counter> judge(demand, survey, candidate, site, nominal);
  judge.judge_fixed(fixed);
  Summary best;
  for (int pairs = 1; pairs <= candidate.brake->pairs; ++pairs) {
    Counter counter = fixed;
    judge.judge_pairs(counter, pairs);
    counter.result.pairs = pairs;
    counter.result.state = state_of(counter.result.margin, site.limits.reserve);
    if (pairs == 1 || better(counter.result, best)) best = counter.result;
    if (best.state == State::holds) break;
  }
  return best;
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
