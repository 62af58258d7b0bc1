#include "holdback/dynamics/linear.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/dynamics/motion.hpp"
#include "holdback/dynamics/mover.hpp"
#include "holdback/numerics/dual.hpp"

namespace holdback::dynamics {

namespace {

using numerics::Dual;

/// The linear model of one layout.
template <class L>
class Linearizer {
 public:
  using Doubles = typename L::template State<double>;
  using Duals = typename L::template State<Dual>;

  Linearizer(const Plant& plant, double line_speed, double tension, double at_radius, double brake_share)
      : plant_(plant) {
    plant_.roll.runout = 0;
    at_ = steady_state<L>(plant_, line_speed, tension, at_radius, brake_share);
    drive_.line_speed = line_speed;
    drive_.brake_share = brake_share;
    drive_.set_pressure = at_[pressure];
    if constexpr (L::has_dancer)
      drive_.dancer_force = plant_.path.dancer->strands * view<double>(plant_, at_).tension[plant_.path.dancer->span];
    choose();
  }

  LinearStand stand() {
    LinearStand made;
    const std::size_t n = which_.size();
    made.a.size = n;
    made.a.entries.resize(n * n);
    for (std::size_t j = 0; j < n; ++j) add_column(made, j);
    const Duals by_pressure = rates(duals(at_), Dual(drive_.set_pressure, 1));
    for (const std::size_t i : which_) made.by_pressure.push_back(by_pressure[i].slope);
    made.speed = drive_.line_speed;
    made.radius = at_[radius];
    made.modes = numerics::modes(made.a);
    add_runout(made);
    return made;
  }

 private:
  std::size_t spans() const { return L::spans == 1 ? 1 : plant_.path.spans.size(); }

  // Angle and radius drift, the works only count.
  void choose() {
    which_ = {speed, pressure};
    for (std::size_t i = 0; i < spans(); ++i) which_.push_back(first_web + i);
    for (std::size_t i = 0; i + 1 < spans(); ++i) which_.push_back(L::first_idler + i);
    if constexpr (L::has_dancer) {
      which_.push_back(L::dancer_place);
      which_.push_back(L::dancer_speed);
    }
  }

  static Duals duals(const Doubles& y) {
    Duals made;
    for (std::size_t i = 0; i < L::size; ++i) made[i] = Dual(y[i]);
    return made;
  }

  Duals rates(const Duals& y, const Dual& set) const {
    return derivative<L, Dual>(plant_, fixed_of(plant_), drive_, Motion{}, 0, y, set);
  }

  template <class Real>
  WebView<L, Real> view(const Plant& plant, const typename L::template State<Real>& y) const {
    return web_of<L, Real>(plant, fixed_of(plant), drive_, Motion{}, drive_.line_speed, y,
                           surface(plant.roll, Real(y[radius]), Real(y[angle])));
  }

  /// What a load cell weighs: the mean of its two spans; the only span where idlers follow the line.
  template <class Real>
  Real weighed(const WebView<L, Real>& span) const {
    if (spans() == 1) return span.tension[0];
    const std::size_t k = std::clamp<std::size_t>(plant_.path.cell_span, 1, spans() - 1);
    return 0.5 * (span.tension[k - 1] + span.tension[k]);
  }

  void add_column(LinearStand& made, std::size_t j) const {
    Duals y = duals(at_);
    y[which_[j]].slope = 1;
    const Duals column = rates(y, Dual(drive_.set_pressure));
    const std::size_t n = which_.size();
    for (std::size_t i = 0; i < n; ++i) made.a.entries[i * n + j] = column[which_[i]].slope;
    const auto span = view<Dual>(plant_, y);
    made.tension.push_back(span.tension[0].slope);
    made.cell.push_back(weighed(span).slope);
    if constexpr (L::has_dancer) made.place.push_back(y[L::dancer_place].slope / plant_.path.dancer->reach);
  }

  // To first order in e the rates are e (c cos nθ + s sin nθ), which at frequency nω is e (c − i s); c is found at
  // nθ = 0 and s a quarter turn on, by a runout so small that its square is lost.
  void add_runout(LinearStand& made) {
    constexpr double small = 1e-7;  // [m]
    made.runout_frequency = plant_.roll.lobes * at_[speed];
    made.by_runout.assign(which_.size(), 0);
    for (const bool quarter : {false, true}) {
      Plant out = plant_;
      out.roll.runout = small;
      out.roll.gravity = plant_.roll.lobes == 1 ? plant_.roll.gravity : 0;
      Doubles y = at_;
      y[angle] = quarter ? std::numbers::pi / 2 / plant_.roll.lobes : 0.0;
      const Fixed fixed = fixed_of(plant_);
      const auto with = derivative<L, double>(out, fixed, drive_, Motion{}, 0, y, drive_.set_pressure);
      const auto without = derivative<L, double>(plant_, fixed, drive_, Motion{}, 0, y, drive_.set_pressure);
      const Complex part = quarter ? Complex(0, -1) : Complex(1, 0);
      for (std::size_t i = 0; i < which_.size(); ++i)
        made.by_runout[i] += part * (with[which_[i]] - without[which_[i]]) / small;
      const auto bent = view<double>(out, y);
      const auto round = view<double>(plant_, y);
      made.tension_by_runout += part * (bent.tension[0] - round.tension[0]) / small;
      made.cell_by_runout += part * (weighed(bent) - weighed(round)) / small;
    }
  }

  Plant plant_;
  Doubles at_{};
  Drive drive_{};
  std::vector<std::size_t> which_{};
};

/// c (sI − A)⁻¹ b for a complex b.
Complex forced(const LinearStand& stand, const std::vector<double>& row, Complex s) {
  std::vector<double> real;
  std::vector<double> imaginary;
  for (const Complex& one : stand.by_runout) {
    real.push_back(one.real());
    imaginary.push_back(one.imag());
  }
  return numerics::transfer({stand.a, real, row, 0}, s) +
         Complex(0, 1) * numerics::transfer({stand.a, imaginary, row, 0}, s);
}

Complex response(const LinearStand& stand, const std::vector<double>& row, Complex s) {
  return numerics::transfer({stand.a, stand.by_pressure, row, 0}, s);
}

Complex delays_at(const LoopDelays& delays, Held held, Complex s) {
  Complex all = numerics::dead_time(s, delays.dead_time) * numerics::sample_and_hold(s, delays.sample_time);
  if (held == Held::tension && delays.cell_lag > 0) all /= 1.0 + s * delays.cell_lag;
  return all;
}

}  // namespace

LinearStand linear_stand(const Plant& plant, double line_speed, double tension, double at_radius, double brake_share) {
  const bool chain = plant.path.spans.size() > 1;
  if (plant.path.dancer) {
    if (chain) return Linearizer<Layout<most_spans, true>>(plant, line_speed, tension, at_radius, brake_share).stand();
    return Linearizer<Layout<1, true>>(plant, line_speed, tension, at_radius, brake_share).stand();
  }
  if (chain) return Linearizer<Layout<most_spans, false>>(plant, line_speed, tension, at_radius, brake_share).stand();
  return Linearizer<Layout<1, false>>(plant, line_speed, tension, at_radius, brake_share).stand();
}

numerics::Mode slowest_swing(const LinearStand& stand) {
  for (const numerics::Mode& mode : stand.modes)
    if (mode.pole.imag() > 1e-9 * mode.frequency) return mode;
  return stand.modes.empty() ? numerics::Mode{} : stand.modes.back();
}

Complex tension_response(const LinearStand& stand, Complex s) { return response(stand, stand.tension, s); }
Complex cell_response(const LinearStand& stand, Complex s) { return response(stand, stand.cell, s); }
Complex place_response(const LinearStand& stand, Complex s) {
  return stand.place.empty() ? Complex(0) : response(stand, stand.place, s);
}

Complex controller_response(Held held, const LoopSettings& settings, const Believed& believed, double setpoint,
                            double radius, Complex s) {
  const double arm = gain_arm(held, settings, believed, radius);
  // [Pa] for an error of one newton, or of half the travel.
  const double whole = settings.gain * arm / believed.torque_per_pressure * (held == Held::tension ? 1 : setpoint);
  const double filter = std::max(settings.derivative_time / 8, settings.sample_time);
  Complex shape(1);
  if (settings.derivative_time > 0) shape += settings.derivative_time * s / (1.0 + filter * s);
  if (std::abs(s) == 0) return {1e300, 0};
  return whole * (shape + 1.0 / (settings.integral_time * s));
}

numerics::Response loop_of(const LinearStand& stand, Held held, const LoopSettings& settings, const LoopDelays& delays,
                           const Believed& believed, double setpoint) {
  const double sign = held == Held::tension ? 1 : -1;
  const std::vector<double>& row = held == Held::tension ? stand.cell : stand.place;
  return [=](Complex s) {
    return sign * controller_response(held, settings, believed, setpoint, stand.radius, s) *
           delays_at(delays, held, s) * response(stand, row, s);
  };
}

numerics::LoopMargins margins_of(const LinearStand& stand, Held held, const LoopSettings& settings,
                                 const LoopDelays& delays, const Believed& believed, double setpoint) {
  numerics::FrequencyRange range;
  range.lowest = 1e-3;
  range.highest = std::max(10.0, std::numbers::pi / delays.sample_time);  // beyond, sampling folds back
  range.per_decade = 30;
  int growing = 0;
  for (const numerics::Mode& mode : stand.modes) {
    if (mode.pole.real() > 1e-9) growing += mode.pole.imag() > 0 ? 2 : 1;
    if (mode.frequency > range.lowest && mode.frequency < range.highest) range.modes.push_back(mode.frequency);
  }
  return numerics::loop_margins(loop_of(stand, held, settings, delays, believed, setpoint), range, growing);
}

double runout_tension_of(const LinearStand& stand, Held held, const LoopSettings* settings, const LoopDelays& delays,
                         const Believed& believed, double setpoint) {
  const Complex s(0, stand.runout_frequency);
  const Complex open = forced(stand, stand.tension, s) + stand.tension_by_runout;
  if (settings == nullptr) return std::abs(open);
  const double sign = held == Held::tension ? 1 : -1;
  const std::vector<double>& row = held == Held::tension ? stand.cell : stand.place;
  const Complex direct = held == Held::tension ? stand.cell_by_runout : Complex(0);
  const Complex felt = forced(stand, row, s) + direct;
  const Complex controller =
      sign * controller_response(held, *settings, believed, setpoint, stand.radius, s) * delays_at(delays, held, s);
  const Complex loop = controller * response(stand, row, s);
  return std::abs(open - tension_response(stand, s) * controller * felt / (1.0 + loop));
}

}  // namespace holdback::dynamics
