#include "holdback/field/next_reading.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "holdback/field/brake_causes.hpp"
#include "holdback/physics/brake.hpp"

namespace holdback::field {

namespace {

constexpr std::size_t most_readings = 3;
constexpr double reserve = 0.98;   // [1] of a rating: a pressure is shown, and set, in a few figures
constexpr double worth_it = 0.97;  // a reading that leaves more than this share of the interval is not worth the walk

struct Place {
  BrakeReading reading{};
  bool released{};
};

/// Variances of slope and threshold while readings are added one by one.
class Widths {
 public:
  explicit Widths(const BrakeModel& model)
      : model_(&model), size_(model.design.columns), covariance_(model.fit.covariance), freedom_(model.fit.freedom) {
    const double believed = model.fit.deviation > 0 ? std::max(1.0, model.scale / model.fit.deviation) : 1;
    for (double& each : covariance_) each *= believed * believed;
  }

  double slope() const { return half(covariance_[0]) / model_->slope(); }
  double threshold() const {
    const double p = model_->threshold();
    const double variance = covariance_[size_ + 1] - 2 * p * covariance_[1] + p * p * covariance_[0];
    return half(std::max(0.0, variance)) / model_->slope();
  }

  /// C − C x xᵀ C/(s² + xᵀ C x): one more reading with the same scatter.
  void add(const std::vector<double>& x) {
    std::vector<double> cx(size_, 0);
    for (std::size_t i = 0; i < size_; ++i)
      for (std::size_t k = 0; k < size_; ++k) cx[i] += covariance_[i * size_ + k] * x[k];
    double bottom = model_->scale * model_->scale;
    for (std::size_t i = 0; i < size_; ++i) bottom += x[i] * cx[i];
    for (std::size_t i = 0; i < size_; ++i)
      for (std::size_t k = 0; k < size_; ++k) covariance_[i * size_ + k] -= cx[i] * cx[k] / bottom;
    freedom_ += 1;
  }

 private:
  double half(double variance) const { return numerics::half_width(std::sqrt(variance), freedom_); }

  const BrakeModel* model_;
  std::size_t size_;
  std::vector<double> covariance_;
  double freedom_;
};

/// The strongest brake that is minded: what file and readings make likely, so that no reading is proposed beyond a
/// rating.
struct Strongest {
  double slope{};      // [N·m/Pa] of one pair
  double threshold{};  // [Pa]
  double drag{};       // [N·m]
};

double steepest_in_file(const FitSetup& setup) {
  const double nominal = physics::pair_torque_per_pressure(setup.brake, setup.grade).capacity;
  return nominal > 0 ? band_of(setup.brake, setup.grade, nominal).high * nominal : 0;
}

/// Of a sure fit the upper end of its interval; of a wide one no more than the file's band, or the fit itself.
Strongest strongest_of(const BrakeModel* model, const FitSetup& setup) {
  Strongest strongest{steepest_in_file(setup), setup.brake.threshold_pressure, drag_in_file(setup)};
  if (model == nullptr) return strongest;
  strongest.slope = std::max(strongest.slope, model->slope());
  if (model->fit.freedom < 1) {
    strongest.threshold = std::min(strongest.threshold, model->threshold());
    return strongest;
  }
  strongest.slope = std::min(strongest.slope, model->slope() * (1 + Widths(*model).slope()));
  strongest.threshold = model->threshold();
  strongest.drag = model->drag();
  return strongest;
}

/// Highest pressure [Pa] that the gauge may show. Where the line meets zero below zero pressure the gauge reads too
/// low, and what acts is that much higher.
double highest_shown(const FitSetup& setup, const Strongest& brake) {
  const double low_by = brake.threshold < 0 ? setup.brake.threshold_pressure - brake.threshold : 0;
  return std::max(0.0, std::min(setup.highest_pressure, setup.brake.rated_pressure) - low_by);
}

/// Highest pressure [Pa] at which neither brake nor web gets more than it is good for. All pairs count: one that did
/// not bite so far may.
double highest_pressure(const FitSetup& setup, const Strongest& brake, int pairs) {
  const double rated = setup.brakes * setup.brake.rated_torque;
  const double torque = reserve * std::min(rated, setup.highest_torque.value_or(rated)) - std::max(0.0, brake.drag);
  return std::min(highest_shown(setup, brake), brake.threshold + torque / (setup.brakes * pairs * brake.slope));
}

/// Every pressure and number of pairs that may be read, all pairs first, lowest pressure first.
std::vector<Place> places(const FitSetup& setup, const Strongest& brake) {
  std::vector<Place> all;
  const double bottom = std::clamp(brake.threshold, 0.0, highest_shown(setup, brake) / 2);
  for (int pairs = setup.brake.pairs; pairs >= 1; --pairs) {
    const double most = highest_pressure(setup, brake, pairs);
    all.push_back({{0, 0, 0, pairs, {}, {}}, true});
    if (!(most > bottom)) continue;
    for (const double share : {0.15, 0.5, 1.0})
      all.push_back({{0, bottom + share * (most - bottom), 0, pairs, {}, {}}, false});
  }
  return all;
}

NextReading reading_at(const Place& place, const FitSetup& setup, int dead, double slope, double threshold,
                       double drag) {
  NextReading next;
  next.pressure = place.reading.pressure;
  next.pairs = place.reading.pairs;
  next.torque = drag;
  if (!place.released)
    next.torque += biting_pairs(place.reading, setup, dead) * physics::pad_torque(slope, next.pressure, threshold);
  return next;
}

/// The brake released and three pressures with as many pairs as may be read.
std::vector<NextReading> first_readings(const BrakeModel* model, const FitSetup& setup) {
  const double slope = physics::pair_torque_per_pressure(setup.brake, setup.grade).capacity;
  const double threshold = setup.brake.threshold_pressure;
  std::vector<NextReading> all;
  if (!(slope > 0)) return all;
  int pairs = 0;
  for (const Place& place : places(setup, strongest_of(model, setup))) {
    const bool pressed = !place.released && place.reading.pressure > threshold;
    if (pressed && pairs == 0) pairs = place.reading.pairs;
    if (all.empty() || (pressed && place.reading.pairs == pairs))
      all.push_back(reading_at(place, setup, 0, slope, threshold, drag_in_file(setup)));
  }
  return all;
}

}  // namespace

std::vector<NextReading> next_readings(const BrakeModel* model, const FitSetup& setup) {
  if (model == nullptr || model->fit.freedom < 1) return first_readings(model, setup);
  const auto all = places(setup, strongest_of(model, setup));
  const double threshold_scale = std::max(1e4, std::abs(model->threshold()));
  const auto badness = [&](const Widths& widths) {
    return widths.slope() * widths.slope() + 0.05 * std::pow(widths.threshold() / threshold_scale, 2);
  };
  std::vector<NextReading> next;
  Widths now(*model);
  std::vector<bool> taken(all.size(), false);
  while (next.size() < most_readings) {
    const Place* best = nullptr;
    Widths then = now;
    for (const Place& place : all) {
      if (taken[static_cast<std::size_t>(&place - all.data())] || (place.released && !model->parts.drag)) continue;
      Widths tried = now;
      tried.add(model_row(place.reading, setup, model->dead, model->parts, place.released));
      if (best != nullptr && badness(tried) >= badness(then) * (1 - 1e-9)) continue;
      best = &place;
      then = tried;
    }
    if (best == nullptr || then.slope() > worth_it * now.slope()) break;
    taken[static_cast<std::size_t>(best - all.data())] = true;
    NextReading reading = reading_at(*best, setup, model->dead, model->slope(), model->threshold(), model->drag());
    reading.slope_now = now.slope();
    reading.slope_then = then.slope();
    reading.threshold_now = now.threshold();
    reading.threshold_then = then.threshold();
    next.push_back(reading);
    now = then;
  }
  // A released reading tells the drag from the threshold; nothing else at one number of pairs does.
  if (!model->parts.drag && next.size() == most_readings) next.pop_back();
  if (!model->parts.drag)
    next.insert(next.begin(), reading_at({BrakeReading{0, 0, 0, setup.brake.pairs, {}, {}}, true}, setup, model->dead,
                                         model->slope(), model->threshold(), model->drag()));
  return next;
}

}  // namespace holdback::field
