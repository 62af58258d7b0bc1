// Logs of stands that have a fault which their stand file does not know: random stands, rolls, speeds, sensors and
// rates, run by the rig. For the test and the benchmark that ask whether `diagnose` names the fault. All invented.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <memory>
#include <numbers>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "holdback/api/log_stand.hpp"
#include "holdback/api/stand_job.hpp"
#include "holdback/field/diagnose.hpp"
#include "support/stands.hpp"

namespace holdback::test {

enum class Fault { none, runout, dead_pair, glazing, hunting, stick_slip };
inline constexpr Fault last_fault = Fault::stick_slip;

inline CauseKind expected_cause(Fault fault) {
  constexpr CauseKind causes[]{CauseKind::none,    CauseKind::runout,  CauseKind::dead_pair,
                               CauseKind::glazing, CauseKind::hunting, CauseKind::stick_slip};
  return causes[static_cast<int>(fault)];
}

/// The same stream of numbers everywhere: SplitMix64 (Steele, Lea, Flood), since std's distributions differ by library.
class Chance {
 public:
  explicit Chance(std::uint64_t seed) : state_(seed) {}
  double even(double low, double high) { return low + (high - low) * unit(); }
  double spread(double low, double high) { return low * std::pow(high / low, unit()); }  // even in its logarithm
  bool happens(double share) { return unit() < share; }
  int whole(int low, int high) { return low + static_cast<int>(unit() * (high - low + 1)); }
  double bell() { return std::sqrt(3.0) * (unit() + unit() + unit() + unit() - 2); }  // variance 1, to ±3.5

 private:
  double unit() {
    state_ += 0x9e3779b97f4a7c15U;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
    return static_cast<double>((z ^ (z >> 31U)) >> 11U) * 0x1p-53;
  }
  std::uint64_t state_;
};

/// A brake whose share changes with time: glaze.
class ChangingMover : public dynamics::Mover {
 public:
  ChangingMover(std::unique_ptr<dynamics::Mover> inner, std::function<double(double)> share)
      : inner_(std::move(inner)), share_(std::move(share)) {}
  bool advance(const dynamics::Drive& drive, double to) override {
    dynamics::Drive changed = drive;
    changed.brake_share *= share_(to);
    return inner_->advance(changed, to);
  }
  const dynamics::Sight& sight() const override { return inner_->sight(); }
  double stored() const override { return inner_->stored(); }
  void change_roll(double radius, double speed) override { inner_->change_roll(radius, speed); }
  std::size_t steps() const override { return inner_->steps(); }
  double stick_events() const override { return inner_->stick_events(); }
  double dancer_hits() const override { return inner_->dancer_hits(); }
  std::string fault() const override { return inner_->fault(); }

 private:
  std::unique_ptr<dynamics::Mover> inner_;
  std::function<double(double)> share_;
};

/// What a case was, for a person who looks at one that was misjudged.
struct FaultyLog {
  Fault fault{};
  std::string told{};       // its numbers in words
  field::LogStand known{};  // from the stand file, which does not know the fault
  LogBlock rows{};
};

namespace detail {

inline Stand random_stand(Chance& chance) {
  Stand stand = small_stand();
  Web& web = stand.webs.front();
  web.width = chance.even(0.4, 1.5);
  const int material = chance.whole(0, 2);
  web.material = Material::other;
  web.caliper = material == 0 ? chance.spread(20e-6, 100e-6) : material == 1 ? chance.spread(60e-6, 250e-6) : 40e-6;
  web.modulus = material == 0 ? chance.even(2e9, 5e9) : material == 1 ? chance.even(3e9, 6e9) : 1.2e9;
  web.basis_weight = web.caliper * (material == 1 ? 800 : 1300);
  web.yield_strength = *web.modulus * 0.02;
  web.loss = chance.even(0.01, 0.05);
  Roll& roll = stand.rolls.front();
  roll.core_diameter = chance.even(0.09, 0.18);
  roll.full_diameter = chance.even(0.5, 1.1);
  Job& job = stand.jobs.front();
  job.web = web;
  job.roll = roll;
  job.speed = chance.spread(1, 6);
  job.tension = std::clamp(chance.spread(0.0006, 0.0025) * *web.modulus * web.caliper * web.width, 40.0, 600.0);
  stand.line.top_speed = job.speed * chance.even(1, 1.3);
  stand.line.lowest_speed = job.speed / 10;
  stand.line.ramp_time = chance.even(15, 40);
  stand.line.stop_time = chance.even(15, 30);
  stand.line.emergency_stop_time = chance.even(6, 10);
  stand.drag = chance.even(0.2, 0.8);
  stand.limits.tension_tolerance = 0.1;
  stand.path.first_span = chance.even(1, 4);
  stand.air.resolution = 500;
  stand.air.hysteresis = chance.even(300, 1000);
  stand.air.lag = chance.even(0.05, 0.2);
  stand.air.dead_time = chance.even(0.01, 0.05);
  Brake& brake = stand.brakes.front();
  // So large that the job runs somewhere in the middle of the pressure range.
  const double torque = *job.tension * roll.full_radius();
  brake.piston_area = 1e-3 * std::clamp(torque / 60, 0.05, 8.0) * chance.even(0.7, 1.4);
  brake.rated_torque = 1e4;
  brake.rated_speed = 400;
  brake.pairs = chance.whole(2, 4);
  brake.most_brakes = 1;
  brake.drag = 0.05;
  Grade& grade = brake.grades.front();
  grade.friction_band = 0.06;  // of a brake that was measured
  grade.static_ratio = chance.even(1.02, 1.2);
  const int control = chance.whole(0, 2);
  stand.control.kind = control == 0 ? ControlKind::hand : control == 1 ? ControlKind::diameter : ControlKind::load_cell;
  stand.control.sample_time = 0.01;
  stand.control.authority = 0.5;
  stand.control.output_step = 200;
  stand.control.inertia_compensation = chance.even(0.5, 1);
  stand.diameter_sensor = DiameterSensor{DiameterMethod::ultrasonic, 0.3, 0.0005, chance.even(0.0003, 0.0015)};
  stand.load_cell = LoadCell{"", 0.02, 0.1, *job.tension * chance.spread(0.002, 0.012)};
  return stand;
}

inline Event event(EventKind kind, std::optional<double> speed, std::optional<double> duration) {
  Event made;
  made.kind = kind;
  made.speed = speed;
  made.duration = duration;
  return made;
}

/// Standard deviations of the true tension over windows of five seconds of settled, steady running.
class Shake {
 public:
  void put(double tension, bool settled) {
    if (!settled) {
      count_ = 0;
      return;
    }
    if (count_ == 0) sum_ = squares_ = 0;
    sum_ += tension;
    squares_ += tension * tension;
    if (++count_ < 500) return;
    const double mean = sum_ / count_;
    deviations_.push_back(std::sqrt(std::max(0.0, squares_ / count_ - mean * mean)));
    count_ = 0;
  }
  /// Share of the windows above a deviation.
  double share_above(double deviation) const {
    if (deviations_.empty()) return 0;
    return static_cast<double>(
               std::count_if(deviations_.begin(), deviations_.end(), [=](double d) { return d > deviation; })) /
           static_cast<double>(deviations_.size());
  }
  std::size_t windows() const { return deviations_.size(); }

 private:
  double sum_{}, squares_{};
  int count_{};
  std::vector<double> deviations_{};
};

/// A stretch of the day: the line goes to a speed within a time and stays there.
struct Leg {
  double speed{}, ramp{}, stay{};
};

struct Sensors {
  std::size_t every{1};  // samples of the rig between two rows
  double speed_noise{}, pressure_noise{};
  bool diameter{}, turns{}, temperature{};
  double turns_step{};
};

inline void log_row(const dynamics::Rig& rig, const Sensors& sensors, Chance& chance, LogBlock& rows) {
  rows.of(LogChannel::time).push_back(rig.time());
  rows.of(LogChannel::speed).push_back(std::max(0.0, rig.line_speed() + sensors.speed_noise * chance.bell()));
  rows.of(LogChannel::tension).push_back(rig.measured_tension());
  rows.of(LogChannel::pressure).push_back(std::max(0.0, rig.sight().pressure + sensors.pressure_noise * chance.bell()));
  if (sensors.diameter) rows.of(LogChannel::diameter).push_back(rig.measured_diameter());
  if (sensors.turns)
    rows.of(LogChannel::turns).push_back(std::floor(rig.sight().angle / sensors.turns_step) * sensors.turns_step);
  if (sensors.temperature)
    rows.of(LogChannel::temperature).push_back(rig.heat().temperatures().front() + 0.5 * chance.bell());
  ++rows.rows;
}

inline Sensors random_sensors(Chance& chance, const Stand& stand) {
  Sensors sensors;
  constexpr std::size_t every[]{1, 2, 4, 5, 10};
  sensors.every = every[chance.whole(0, 4)];
  sensors.speed_noise = stand.jobs.front().speed * chance.spread(0.0005, 0.004);
  sensors.pressure_noise = chance.spread(100, 800);
  const int kind = chance.whole(0, 9);
  sensors.diameter = kind < 5;
  sensors.turns = kind >= 4 && kind < 9;  // in one of ten both, in another neither
  constexpr double a_turn[]{1, 16, 360};
  sensors.turns_step = 2 * std::numbers::pi / a_turn[chance.whole(0, 2)];
  sensors.temperature = chance.happens(0.5);
  return sensors;
}

}  // namespace detail

/// One case; nothing where the draw makes no sense: no brake fits, the roll is too short, the fault does not show, or a
/// healthy stand swings by itself. A shake counts as showing when the true tension swings by 3 % of the setpoint or
/// more (a deviation of 2.1 %); the judge's answer has no say in it.
inline std::optional<FaultyLog> draw_faulty_log(Fault fault, std::uint64_t seed) {
  using namespace dynamics;
  Chance chance(seed);
  Stand stand = detail::random_stand(chance);
  if (fault == Fault::hunting) stand.control.kind = ControlKind::load_cell;
  const ControlKind kind = stand.control.kind;
  api::Request request;
  request.job = stand.jobs.front().name;
  request.threads = 1;
  std::unique_ptr<api::StandJob> job;
  try {
    job = std::make_unique<api::StandJob>(stand, request);
  } catch (const std::invalid_argument&) {
    return std::nullopt;
  }
  FaultyLog made;
  made.fault = fault;
  const Roll& roll = job->job().roll;
  const double setpoint = job->tension().setpoint, speed = job->job().speed;
  const detail::Sensors sensors = detail::random_sensors(chance, stand);

  RigSetup setup = job->rig(kind, false);
  auto settings = job->settings(kind);
  // What every real stand has beside its file.
  setup.plant.brake.torque_per_pressure *= chance.even(0.96, 1.04);
  setup.plant.brake.drag *= chance.even(0.8, 1.2);
  setup.plant.roll.caliper *= chance.even(0.985, 1.015);
  const double span = roll.full_radius() - roll.core_radius();
  const bool near_core = fault == Fault::stick_slip;
  setup.radius = sensors.diameter || sensors.turns
                     ? roll.core_radius() + span * (near_core ? chance.even(0.1, 0.35) : chance.even(0.3, 1))
                     : roll.full_radius();

  std::vector<detail::Leg> legs;
  const double slow = near_core ? chance.even(0.1, 0.35) : chance.even(0.4, 0.8);
  const bool two_speeds = near_core || chance.happens(0.6);
  legs.push_back({speed, chance.even(10, 25), chance.even(70, 180)});
  if (two_speeds) legs.push_back({speed * slow, chance.even(6, 15), chance.even(70, 150)});
  if (chance.happens(0.5)) legs.push_back({speed * chance.even(0.85, 1), chance.even(6, 15), chance.even(40, 90)});
  legs.push_back({0, chance.even(10, 25), 5});
  double lasts = 0;
  for (const detail::Leg& leg : legs) lasts += leg.ramp + leg.stay;

  // The fault, which the stand file does not know.
  const double inertia = inertia_at(setup.plant.roll, setup.radius);
  std::function<double(double)> share = [](double) { return 1.0; };
  const auto say = [&](const std::string& what, double value) {
    made.told += " " + what + "=" + std::to_string(value);
  };
  if (fault == Fault::runout) {
    setup.plant.roll.lobes = chance.happens(0.65) ? 1 : 2;
    setup.plant.roll.gravity = setup.plant.roll.lobes == 1 ? 9.80665 : 0;
    const LinearStand linear = linear_stand(setup.plant, speed, setpoint, setup.radius, 1);
    const double per_metre = runout_tension_of(linear, Held::tension, nullptr, {}, {}, setpoint);
    setup.plant.roll.runout = chance.spread(0.04, 0.2) * setpoint / per_metre;
    if (setup.plant.roll.runout > 0.006 || setup.plant.roll.runout < 1e-4) return std::nullopt;
    say("runout_mm", 1e3 * setup.plant.roll.runout);
    say("lobes", setup.plant.roll.lobes);
  } else if (fault == Fault::dead_pair) {
    const int pairs = job->pairs() * job->fit().brakes;
    if (pairs < 2) return std::nullopt;
    const double left = (pairs - 1.0) / pairs;
    share = [=](double) { return left; };
    say("left", left);
  } else if (fault == Fault::glazing) {
    const double depth = chance.even(0.12, 0.4);
    share = [=](double time) { return 1 - depth * std::clamp(time / lasts, 0.0, 1.0); };
    say("depth", depth);
  } else if (fault == Fault::hunting) {
    if (!settings || settings->gain <= 0) return std::nullopt;
    settings->gain *= chance.spread(1.5, 6);
    settings->integral_time *= chance.spread(0.3, 1);
    say("gain", settings->gain);
  } else if (fault == Fault::stick_slip) {
    const double path = setup.plant.path.spans.front();
    const double drop = chance.even(0.15, 0.5);  // of friction, from standstill to the job's speed
    setup.plant.brake.friction_slope = -drop * setup.radius / speed;
    setup.plant.brake.torque_per_pressure /= 1 - drop;  // as measured when it ran
    setup.plant.brake.static_ratio = chance.even(1.1, 1.4);
    say("drop", drop);
    say("onset", drop * setup.radius / speed * path * setpoint * setup.radius / inertia);
  }
  setup.maker = [share](const Plant& plant, const Start& start, const MoverOptions& options) {
    Start with = start;
    with.brake_share *= share(0);
    return std::unique_ptr<Mover>(new ChangingMover(make_mover(plant, with, options), share));
  };
  say("speed", speed);
  say("setpoint", setpoint);
  say("diameter", 2 * setup.radius);
  say("pairs", job->pairs());
  say("rate", 1 / (setup.sample_time * static_cast<double>(sensors.every)));
  made.told += " control=" + std::string(key_of(kind)) + (sensors.diameter ? " diameter" : "") +
               (sensors.turns ? " turns" : "") + (sensors.temperature ? " temperature" : "");

  const bool starts_still = chance.happens(0.5);
  setup.line_speed = starts_still ? 0 : legs.front().speed;
  Rig rig(setup, job->controller(kind, settings)());
  detail::Shake shake;
  std::size_t samples = 0;
  for (const detail::Leg& leg : legs) {
    rig.line_to(leg.speed, leg.ramp);
    const double until = rig.time() + leg.ramp + leg.stay, settled = rig.time() + leg.ramp + 4;
    while (rig.time() < until - 1e-9) {
      if (samples++ % sensors.every == 0) detail::log_row(rig, sensors, chance, made.rows);
      if (!rig.sample()) return std::nullopt;
      if (rig.at_core() || rig.sight().radius < 1.02 * roll.core_radius()) return std::nullopt;
      shake.put(rig.sight().tension, leg.speed > 0 && rig.time() > settled);
    }
  }
  const double shaken = shake.share_above(0.021 * setpoint);
  say("shaken", shaken);
  if (fault == Fault::none && shaken > 0.1) return std::nullopt;
  // Where the web goes slack with nearly every swing the line is stopped, not logged.
  // A brake that sticks does so by its nature, at the slow speeds.
  if (fault != Fault::stick_slip && shake.share_above(0.5 * setpoint) > 0.3) return std::nullopt;
  if ((fault == Fault::runout || fault == Fault::hunting) && shaken < 0.5) return std::nullopt;
  if (fault == Fault::stick_slip && shaken < 0.25) return std::nullopt;
  made.known = api::log_stand_of(stand, *job);
  made.known.log = "case " + std::to_string(seed);
  return made;
}

inline Diagnosis judged(const FaultyLog& log) {
  field::LogJudge judge(log.known);
  judge.put(log.rows);
  return judge.finish();
}

}  // namespace holdback::test
