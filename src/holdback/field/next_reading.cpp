#include "holdback/field/next_reading.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "holdback/physics/brake.hpp"

namespace holdback::field {

namespace {

constexpr std::size_t most_readings = 3;
constexpr double worth_it = 0.97;  // a reading that leaves more than this share of the interval is not worth the walk

struct Place {
  BrakeReading reading{};
  bool released{};
};

/// Every pressure and number of pairs that may be read, lowest first.
std::vector<Place> places(const FitSetup& setup, double threshold, double slope) {
  std::vector<Place> all;
  const double top = std::min(setup.highest_pressure, setup.brake.rated_pressure);
  const double bottom = std::clamp(threshold, 0.0, top / 2);
  for (int pairs = setup.brake.pairs; pairs >= 1; --pairs) {
    const double by_torque = bottom + setup.brake.rated_torque / (pairs * slope);
    const double most = std::min(top, by_torque);
    for (const double share : {0.0, 0.15, 0.5, 1.0}) {
      BrakeReading reading;
      reading.pairs = pairs;
      reading.pressure = share > 0 ? bottom + share * (most - bottom) : 0;
      all.push_back({reading, share == 0});
    }
  }
  return all;
}

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

NextReading reading_at(const Place& place, const FitSetup& setup, double slope, double threshold, double drag) {
  const double pairs = biting_pairs(place.reading, setup, 0);
  return {place.reading.pressure,
          place.reading.pairs,
          drag + pairs * physics::pad_torque(slope, place.reading.pressure, threshold),
          0,
          0,
          0,
          0};
}

std::vector<NextReading> first_readings(const FitSetup& setup) {
  const double slope = physics::pair_torque_per_pressure(setup.brake, setup.grade).capacity;
  const double threshold = setup.brake.threshold_pressure;
  std::vector<NextReading> all;
  if (!(slope > 0)) return all;
  for (const Place& place : places(setup, threshold, slope))
    if (place.reading.pairs == setup.brake.pairs && (place.released || place.reading.pressure > threshold))
      all.push_back(reading_at(place, setup, slope, threshold, drag_in_file(setup)));
  all.resize(std::min(all.size(), most_readings + 1));
  return all;
}

}  // namespace

std::vector<NextReading> next_readings(const BrakeModel* model, const FitSetup& setup) {
  if (model == nullptr || model->fit.freedom < 1) return first_readings(setup);
  const auto all = places(setup, model->threshold(), model->slope());
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
    NextReading reading = reading_at(*best, setup, model->slope(), model->threshold(), model->drag());
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
    next.insert(next.begin(), reading_at({BrakeReading{0, 0, 0, setup.brake.pairs, {}, {}}, true}, setup,
                                         model->slope(), model->threshold(), model->drag()));
  return next;
}

}  // namespace holdback::field
