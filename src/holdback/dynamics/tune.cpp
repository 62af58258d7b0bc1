#include "holdback/dynamics/tune.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "holdback/physics/control.hpp"

namespace holdback::dynamics {

namespace {

double radius_at(const TuneRequest& request, int i) {
  return request.full_radius + (request.core_radius - request.full_radius) * i / (tune_points - 1);
}

double share_at(const TuneRequest& request, double radius) {
  const std::vector<double>& given = request.brake_share;
  if (given.empty()) return 1;
  const double place = (request.full_radius - radius) / (request.full_radius - request.core_radius) *
                       static_cast<double>(given.size() - 1);
  const auto at = std::min(static_cast<std::size_t>(std::max(0.0, place)), given.size() - 1);
  return given[at];
}

/// The responses of one stand on a grid of frequencies, without the controller: all that a search over settings needs.
struct Sampled {
  std::vector<Complex> plant{};  // with dead time, hold and filter, per pascal
  double radius{};
  int growing{};  // open, its poles in the right half plane
};

class Search {
 public:
  Search(const TuneRequest& request, const std::vector<LinearStand>& stands, bool scheduled)
      : request_(request), stands_(stands) {
    settings_.sample_time = request.delays.sample_time;
    settings_.derivative_time = request.derivative_time;
    settings_.full_radius = request.full_radius;
    settings_.scheduled = scheduled;
    settings_.gain = 1;
    settings_.integral_time = 1;
    lay_grid();
    for (const LinearStand& stand : stands) sample(stand);
  }

  LoopSettings best() {
    LoopSettings best = settings_;
    best.gain = 0;
    for (const Times& times : candidates()) {
      settings_.integral_time = times.integral;
      settings_.derivative_time = times.derivative;
      const double gain = highest_gain();
      if (gain / times.integral > best.gain / best.integral_time) {
        best = settings_;
        best.gain = gain;
      }
    }
    return best.gain > 0 ? confirmed(best) : best;
  }

 private:
  static constexpr int per_decade = 40;

  // The swings over the roll lie anywhere on the grid, so it is dense; modes are set upon it exactly.
  void lay_grid() {
    const double highest = std::max(10.0, std::numbers::pi / request_.delays.sample_time);
    numerics::FrequencyRange range;
    range.lowest = 1e-3;
    range.highest = highest;
    range.per_decade = per_decade;
    grid_ = numerics::logarithmic_grid(range);
    for (const LinearStand& stand : stands_)
      for (const numerics::Mode& mode : stand.modes) {
        if (mode.frequency <= range.lowest || mode.frequency >= highest || mode.damping > 0.5) continue;
        const double width = std::max(1e-3, std::abs(mode.damping));
        for (const double by : {-4.0, -2.0, -1.0, -0.5, 0.0, 0.5, 1.0, 2.0, 4.0})
          if (1 + by * width > 0) grid_.push_back(mode.frequency * (1 + by * width));
      }
    std::sort(grid_.begin(), grid_.end());
  }

  void sample(const LinearStand& stand) {
    Sampled one;
    one.radius = stand.radius;
    for (const numerics::Mode& mode : stand.modes)
      if (mode.pole.real() > 1e-9) one.growing += mode.pole.imag() > 0 ? 2 : 1;
    const numerics::Response loop =
        loop_of(stand, request_.held, settings_, request_.delays, request_.believed, request_.setpoint);
    for (const double w : grid_) {
      const Complex s(0, w);
      one.plant.push_back(loop(s) / controller_at(one.radius, s));
    }
    sampled_.push_back(std::move(one));
  }

  Complex controller_at(double radius, Complex s) const {
    return controller_response(request_.held, settings_, request_.believed, request_.setpoint, radius, s);
  }

  struct Times {
    double integral, derivative;
  };

  // From far faster than the dead time to the time of a slow roll. A dancer keeps the tension to itself, so that roll
  // and place make two integrators: without a derivative no gain holds them.
  std::vector<Times> candidates() const {
    std::vector<Times> times;
    const double shortest = std::max(request_.delays.sample_time, 0.02);
    const double given = request_.derivative_time;
    if (request_.held == Held::dancer_place && given <= 0) {
      for (double t = shortest; t < 20; t *= 1.35)
        for (const double share : {4.0, 8.0, 20.0}) times.push_back({share * t, t});
    } else {
      for (double t = shortest; t < 60; t *= 1.35) times.push_back({t, given});
    }
    return times;
  }

  // The highest gain that keeps the margins for one pair of times: gains from high to low, then between the last that
  // does not and the first that does. Too little gain can be as bad as too much where L has several integrators.
  double highest_gain() {
    std::vector<std::vector<Complex>> unit;
    settings_.gain = 1;
    for (const Sampled& one : sampled_) {
      std::vector<Complex> loop;
      loop.reserve(grid_.size());
      for (std::size_t k = 0; k < grid_.size(); ++k)
        loop.push_back(one.plant[k] * controller_at(one.radius, Complex(0, grid_[k])));
      unit.push_back(std::move(loop));
    }
    const auto keeps = [&](double gain) {
      for (std::size_t i = 0; i < unit.size(); ++i)
        if (!keeps_margins(unit[i], sampled_[i].growing, gain)) return false;
      return true;
    };
    constexpr double most = 1e3;
    constexpr double step = 1.6;
    double low = most;
    while (low > 1e-5 && !keeps(low)) low /= step;
    if (low <= 1e-5) return 0;
    double high = std::min(most, low * step);
    for (int i = 0; i < 8; ++i) {
      const double middle = std::sqrt(low * high);
      (keeps(middle) ? low : high) = middle;
    }
    return low;
  }

  // On the grid: the curve of 1 + L must turn by a quarter forward for each integrator and by a half for each growing
  // pole (Nyquist), stay outside of the wedge of the phase margin where |L| is near one, and keep off −1 by the gain
  // margin, up and down, where it crosses the negative axis.
  bool keeps_margins(const std::vector<Complex>& unit, int growing, double gain) const {
    const double fall = std::log(std::abs(unit[0] / unit[1])) / std::log(grid_[1] / grid_[0]);
    const double wanted = std::numbers::pi * (std::round(fall) / 2 + growing);
    double turned = 0;
    Complex before = 1.0 + gain * unit.front();
    for (std::size_t k = 0; k < unit.size(); ++k) {
      const Complex loop = gain * unit[k];
      const Complex here = 1.0 + loop;
      turned += std::arg(here / before);
      before = here;
      if (k == 0) continue;
      const Complex last = gain * unit[k - 1];
      if (crosses_unit(last, loop) && phase_left(last, loop) < request_.asked.phase) return false;
      if (crosses_axis(last, loop)) {
        const double at = -axis_at(last, loop);
        if (at > 1 / request_.asked.gain && at < request_.asked.gain) return false;
      }
    }
    return std::abs(turned - wanted) < 1.2;
  }

  static bool crosses_unit(const Complex& a, const Complex& b) { return (std::abs(a) - 1) * (std::abs(b) - 1) <= 0; }
  static double phase_left(const Complex& a, const Complex& b) {
    return std::min(std::abs(std::arg(-a)), std::abs(std::arg(-b)));
  }
  static bool crosses_axis(const Complex& a, const Complex& b) {
    return a.imag() * b.imag() <= 0 && std::min(a.real(), b.real()) < 0 && std::abs(a - b) > 0;
  }
  static double axis_at(const Complex& a, const Complex& b) {
    const double rise = b.imag() - a.imag();
    return rise == 0 ? std::min(a.real(), b.real()) : a.real() - a.imag() * (b.real() - a.real()) / rise;
  }

  // The grid may have missed what the exact margins see: then a little less gain.
  LoopSettings confirmed(LoopSettings settings) const {
    for (int i = 0; i < 40; ++i) {
      const LoopTuning tuning = tuning_of(request_, stands_, settings);
      if (tuning.state == State::holds) return settings;
      settings.gain *= 0.93;
    }
    settings.gain = 0;
    return settings;
  }

  const TuneRequest& request_;
  const std::vector<LinearStand>& stands_;
  LoopSettings settings_{};
  std::vector<double> grid_{};
  std::vector<Sampled> sampled_{};
};

physics::UnwindPoint point_of(const TuneRequest& request, double radius, double speed) {
  const Plant& plant = request.plant;
  double length = 0;
  for (const double span : plant.path.spans) length += span;
  const double torque = request.setpoint * radius - plant.brake.drag;
  return {inertia_at(plant.roll, radius),     radius, length, plant.path.stiffness, speed, plant.path.wound_in,
          torque * plant.brake.friction_slope};
}

double finite(double value) { return std::isfinite(value) ? value : 0; }

TunePoint point(const TuneRequest& request, const LinearStand& stand, const LoopSettings& settings) {
  TunePoint made;
  made.diameter = 2 * stand.radius;
  const numerics::Mode mode = slowest_swing(stand);
  made.mode_frequency = mode.frequency;
  made.mode_damping = mode.damping;
  made.stick_slip_onset = finite(physics::stick_slip_onset(point_of(request, stand.radius, request.speed)));
  made.runout_frequency = stand.runout_frequency;
  made.runout_tension =
      request.plant.roll.runout * runout_tension_of(stand, request.held, settings.gain > 0 ? &settings : nullptr,
                                                    request.delays, request.believed, request.setpoint);
  if (settings.gain <= 0) return made;
  const numerics::LoopMargins margins =
      margins_of(stand, request.held, settings, request.delays, request.believed, request.setpoint);
  made.stable = margins.stable;
  // Up or down, whichever is nearer.
  const double fall = margins.gain_fall > 0 ? 1 / margins.gain_fall : std::numeric_limits<double>::infinity();
  made.gain_margin = finite(std::min(margins.gain_rise, fall));
  made.phase_margin = finite(std::abs(margins.phase_margin));
  made.delay_margin = finite(margins.delay_margin);
  made.sensitivity = finite(margins.sensitivity);
  made.crossover = margins.gain_crossovers.empty() ? 0 : margins.gain_crossovers.front();
  return made;
}

}  // namespace

std::vector<LinearStand> stands_over_roll(const TuneRequest& request) {
  std::vector<LinearStand> stands;
  for (int i = 0; i < tune_points; ++i) {
    const double radius = radius_at(request, i);
    stands.push_back(linear_stand(request.plant, request.speed, request.setpoint, radius, share_at(request, radius)));
  }
  return stands;
}

LoopTuning tuning_of(const TuneRequest& request, const std::vector<LinearStand>& stands, const LoopSettings& settings) {
  LoopTuning tuning;
  tuning.schedule = settings.scheduled ? GainSchedule::diameter : GainSchedule::fixed;
  tuning.gain = settings.gain;
  tuning.integral_time = settings.integral_time;
  tuning.derivative_time = settings.derivative_time;
  const double per_error = request.held == Held::tension
                               ? 1
                               : request.setpoint / (request.plant.path.dancer ? request.plant.path.dancer->reach : 1);
  tuning.real_gain = settings.gain * request.full_radius / request.believed.torque_per_pressure * per_error;
  tuning.state = settings.gain > 0 ? State::holds : State::fails;
  double least = std::numeric_limits<double>::infinity();
  tuning.slowest_crossover = std::numeric_limits<double>::infinity();
  for (const LinearStand& stand : stands) {
    const TunePoint at = point(request, stand, settings);
    // How much of the asked margins is there: below one it is not kept.
    const double gain = at.gain_margin > 0 ? at.gain_margin / request.asked.gain : 10;
    const double phase = at.phase_margin > 0 ? at.phase_margin / request.asked.phase : 10;
    const double share = at.stable ? std::min(gain, phase) : 0;
    if (share < least) {
      least = share;
      tuning.worst_diameter = at.diameter;
    }
    if (at.gain_margin > 0 && (tuning.least_gain_margin == 0 || at.gain_margin < tuning.least_gain_margin))
      tuning.least_gain_margin = at.gain_margin;
    if (at.phase_margin > 0 && (tuning.least_phase_margin == 0 || at.phase_margin < tuning.least_phase_margin))
      tuning.least_phase_margin = at.phase_margin;
    tuning.slowest_crossover = std::min(tuning.slowest_crossover, at.crossover);
    tuning.points.push_back(at);
  }
  if (least < 1 - 1e-6) tuning.state = State::fails;
  tuning.slowest_crossover = finite(tuning.slowest_crossover);
  return tuning;
}

LoopSettings tuned(const TuneRequest& request, const std::vector<LinearStand>& stands, bool scheduled) {
  return Search(request, stands, scheduled).best();
}

RunoutMap runout_map(const TuneRequest& request, const LoopSettings* settings) {
  constexpr int speeds = 40;
  RunoutMap map;
  if (request.plant.roll.runout <= 0) return map;
  for (int i = 0; i < tune_points; ++i) {
    const double radius = radius_at(request, i);
    map.diameter.push_back(2 * radius);
    const double meets =
        physics::runout_resonance_speed(point_of(request, radius, request.speed), request.plant.roll.lobes);
    map.meets.push_back(std::isfinite(meets) && meets <= 1.5 * request.speed ? meets : 0);
  }
  for (int k = 0; k < speeds; ++k) {
    const double speed = request.speed * (0.1 + 0.9 * k / (speeds - 1));
    map.speed.push_back(speed);
    for (int i = 0; i < tune_points; ++i) {
      const double radius = radius_at(request, i);
      const LinearStand stand = linear_stand(request.plant, speed, request.setpoint, radius, share_at(request, radius));
      const double share =
          request.plant.roll.runout *
          runout_tension_of(stand, request.held, settings, request.delays, request.believed, request.setpoint) /
          request.setpoint;
      map.share.push_back(finite(share));
      if (finite(share) > map.worst_share) {
        map.worst_share = share;
        map.worst_speed = speed;
        map.worst_diameter = 2 * radius;
      }
    }
  }
  return map;
}

}  // namespace holdback::dynamics
