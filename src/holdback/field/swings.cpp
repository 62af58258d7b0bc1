#include "holdback/field/swings.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

#include "holdback/numerics/spectrum.hpp"

namespace holdback::field {

namespace {

using std::numbers::pi;

std::size_t length_for(const LogStand& stand, double rate) {
  double slowest = 2 * pi;
  for (const LoopPoint& point : stand.loop)
    for (const double frequency : {point.mode, point.crossover, point.turnover})
      if (frequency > 0) slowest = std::min(slowest, frequency);
  const double samples = std::clamp(2 * pi * 10 / slowest, 6.0, 40.0) * rate;
  return std::size_t{1} << static_cast<unsigned>(std::lround(std::log2(std::clamp(samples, 64.0, 32768.0))));
}

}  // namespace

SwingKeeper::SwingKeeper(const LogStand& stand, double rate)
    : rate_(rate),
      length_(length_for(stand, rate)),
      fft_(length_),
      window_(numerics::hann_window(length_)),
      tension_(length_),
      pressure_(length_),
      work_(length_),
      transform_(length_ / 2 + 1) {}

void SwingKeeper::put(double time, double tension, double angle, double web_run, double pressure) {
  if (filled_ == 0) {
    begin_time_ = time;
    begin_angle_ = angle;
    begin_run_ = web_run;
  }
  tension_[filled_] = tension;
  pressure_[filled_] = pressure;
  end_time_ = time;
  end_angle_ = angle;
  end_run_ = web_run;
  if (++filled_ == length_) {
    take();
    filled_ = 0;
  }
}

void SwingKeeper::take() {
  if (seen_++ % every_ != 0) return;
  Swing swing;
  const double lasts = end_time_ - begin_time_;
  if (!(lasts > 0)) return;
  swing.time = (begin_time_ + end_time_) / 2;
  swing.speed = (end_run_ - begin_run_) / lasts;
  const double turned = end_angle_ - begin_angle_;
  if (turned > 0) swing.radius = (end_run_ - begin_run_) / turned;
  // The straight trend off.
  const auto n = static_cast<double>(length_);
  const double middle = (n - 1) / 2;
  double mean = 0, slope = 0, squares = 0;
  for (const double value : tension_) mean += value / n;
  for (std::size_t j = 0; j < length_; ++j) slope += (static_cast<double>(j) - middle) * (tension_[j] - mean);
  slope /= n * (n * n - 1) / 12;
  for (std::size_t j = 0; j < length_; ++j) {
    const double off = tension_[j] - mean - slope * (static_cast<double>(j) - middle);
    squares += off * off;
    work_[j] = off * window_[j];
  }
  const double variance = squares / n;
  swing.deviation = std::sqrt(variance);
  fft_.forward_real(work_.data(), transform_.data());
  // Σw² is 3/8 n: energy of a line over its lobe of five entries.
  const double to_power = 2 / (n * n * 3 / 8);
  std::vector<double> power(transform_.size());
  for (std::size_t k = 0; k < power.size(); ++k) power[k] = to_power * std::norm(transform_[k]);
  const auto lobe = [&](std::size_t k) {
    double sum = 0;
    for (std::size_t i = k > 2 ? k - 2 : 0; i <= std::min(power.size() - 1, k + 2); ++i) sum += power[i];
    return sum;
  };
  const double step = 2 * pi * rate_ / n;
  if (swing.radius > 0) {
    const auto k = static_cast<std::size_t>(std::lround(swing.speed / swing.radius / step));
    if (k >= 2 && k + 2 < power.size()) swing.roll = std::sqrt(2 * lobe(k));
  }
  std::size_t best = 0;
  for (std::size_t k = 3; k + 2 < power.size(); ++k)
    if (power[k] >= power[k - 1] && power[k] >= power[k + 1] && (best == 0 || power[k] > power[best])) best = k;
  // A swing that is no sine has harmonics; what counts is the slowest of its lines.
  for (const std::size_t part : {4U, 3U, 2U}) {
    const std::size_t k = (best + part / 2) / part;
    std::size_t top = k;
    for (const std::size_t near : {k - 1, k + 1})
      if (k > 3 && power[near] > power[top]) top = near;
    if (top >= 3 && lobe(top) > 0.2 * lobe(best) && power[top] >= power[top - 1] && power[top] >= power[top + 1] &&
        std::abs(static_cast<double>(best) / static_cast<double>(part) - static_cast<double>(top)) < 1) {
      best = top;
      break;
    }
  }
  if (best != 0) {
    const double weight = power[best - 1] + power[best] + power[best + 1];
    const double off = weight > 0 ? (power[best + 1] - power[best - 1]) / weight : 0;
    swing.frequency = (static_cast<double>(best) + off) * step;
    swing.amplitude = std::sqrt(2 * lobe(best));
    swing.share = variance > 0 ? std::min(1.0, lobe(best) / variance) : 0;
    if (2 * best + 2 < power.size()) swing.second = std::sqrt(lobe(2 * best) / std::max(lobe(best), 1e-300));
    std::complex<double> sum{};
    bool known = true;
    for (std::size_t j = 0; j < length_; ++j) {
      known = known && !std::isnan(pressure_[j]);
      sum += window_[j] * pressure_[j] * std::polar(1.0, -swing.frequency / rate_ * static_cast<double>(j));
    }
    if (known) swing.pressure = 2 * std::abs(sum) / (n / 2);
  }
  if (kept_.size() == most) {
    for (std::size_t i = 0; i < most / 2; ++i) kept_[i] = kept_[2 * i];
    kept_.resize(most / 2);
    every_ *= 2;
  }
  kept_.push_back(swing);
}

}  // namespace holdback::field
