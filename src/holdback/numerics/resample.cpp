#include "holdback/numerics/resample.hpp"

#include <algorithm>
#include <boost/math/special_functions/bessel.hpp>
#include <cmath>
#include <numbers>
#include <stdexcept>
#include <utility>

namespace holdback::numerics {

namespace {

constexpr double cut_at = 0.8;            // of half the new rate
constexpr double kaiser_shape = 10;       // some 100 dB
constexpr std::size_t table_points = 64;  // of a kernel, a lobe

double sinc(double x) { return std::abs(x) < 1e-9 ? 1 : std::sin(std::numbers::pi * x) / (std::numbers::pi * x); }

double kaiser(double share, double shape) {
  const double inside = 1 - share * share;
  if (inside <= 0) return 0;
  return boost::math::cyl_bessel_i(0, shape * std::sqrt(inside)) / boost::math::cyl_bessel_i(0, shape);
}

std::vector<double> kernel(std::size_t lobes, double edge) {
  std::vector<double> made(lobes * table_points + 2);
  for (std::size_t i = 0; i < made.size(); ++i) {
    const double x = static_cast<double>(i) / table_points;
    made[i] = sinc(edge * x) * kaiser(x / static_cast<double>(lobes), kaiser_shape);
  }
  return made;
}

}  // namespace

Decimator::Decimator(std::size_t factor)
    : factor_(std::max<std::size_t>(1, factor)), half_(factor > 1 ? 8 * factor : 0) {
  if (factor_ == 1) return;
  double sum = 0;
  for (std::size_t j = 0; j <= 2 * half_; ++j) {
    const double x = (static_cast<double>(j) - static_cast<double>(half_)) / static_cast<double>(factor_);
    tap_.push_back(sinc(cut_at * x) * kaiser(x / 8, kaiser_shape * 0.8));
    sum += tap_.back();
  }
  for (double& tap : tap_) tap /= sum;
  ring_.resize(2 * tap_.size());
}

void Decimator::cut() {
  filled_ = 0;
  due_ = 0;
}

bool Decimator::put(double sample, double& value) {
  if (factor_ == 1) {
    value = sample;
    return true;
  }
  const std::size_t n = tap_.size();
  ring_[at_] = ring_[at_ + n] = sample;
  at_ = at_ + 1 == n ? 0 : at_ + 1;
  if (filled_ < n) ++filled_;
  if (filled_ < n) return false;
  if (due_ > 0) {
    --due_;
    return false;
  }
  due_ = factor_ - 1;
  double sum = 0;
  for (std::size_t j = 0; j < n; ++j) sum += tap_[j] * ring_[at_ + j];
  value = sum;
  return true;
}

EvenSteps::EvenSteps(double step, Take take, std::size_t lobes)
    : step_(step),
      take_(std::move(take)),
      lobes_(lobes),
      full_(kernel(lobes, 1)),
      cut_(kernel(lobes, numerics::cut_at)) {}

void EvenSteps::cut() {
  sample_.clear();
  angle_.clear();
  begun_ = false;
  at_ = 0;
}

void EvenSteps::put(double sample, double angle) {
  sample_.push_back(sample);
  angle_.push_back(angle);
  const std::size_t last = sample_.size() - 1;
  if (!begun_) {
    begun_ = true;
    next_ = angle;
    at_ = 0;
  }
  while (at_ + 1 <= last) {
    const double rise = angle_[at_ + 1] - angle_[at_];
    if (next_ >= angle_[at_ + 1] || !(rise > 0)) {
      if (next_ < angle_[at_ + 1]) next_ = angle_[at_ + 1];
      ++at_;
      continue;
    }
    const double samples_a_step = step_ / rise;
    const double scale = std::max(1.0, samples_a_step);
    const auto reach = static_cast<std::size_t>(std::ceil(scale * static_cast<double>(lobes_))) + 1;
    if (reach > 200000) {  // next to standstill
      cut();
      return;
    }
    behind_ = reach;
    if (at_ + reach > last) break;
    if (at_ >= reach) give(static_cast<double>(at_) + (next_ - angle_[at_]) / rise, scale);
    next_ += step_;
  }
  // What lies far behind is no longer needed; dropped in large pieces.
  if (at_ > 8192 + 4 * behind_) {
    const std::size_t drop = at_ - 2 * behind_ - 16;
    sample_.erase(sample_.begin(), sample_.begin() + static_cast<std::ptrdiff_t>(drop));
    angle_.erase(angle_.begin(), angle_.begin() + static_cast<std::ptrdiff_t>(drop));
    at_ -= drop;
  }
}

void EvenSteps::give(double place, double scale) {
  const double* const kernel = scale > 1 ? cut_.data() : full_.data();
  const double a_sample = table_points / scale;
  const double last = static_cast<double>(lobes_ * table_points);
  double sum = 0, weight = 0;
  const auto tap = [&](double x, double sample) {
    const auto cell = static_cast<std::size_t>(x);
    const double w = kernel[cell] + (x - static_cast<double>(cell)) * (kernel[cell + 1] - kernel[cell]);
    sum += w * sample;
    weight += w;
  };
  const auto middle = static_cast<std::size_t>(place);
  const double off = place - static_cast<double>(middle);
  const double* sample = &sample_[middle];
  for (double x = off * a_sample; x < last; x += a_sample) tap(x, *sample--);
  sample = &sample_[middle];
  for (double x = (1 - off) * a_sample; x < last; x += a_sample) tap(x, *++sample);
  take_(sum / weight);
}

std::vector<double> cubic_spline(const std::vector<double>& x, const std::vector<double>& y,
                                 const std::vector<double>& at) {
  const std::size_t n = x.size();
  if (n < 4 || y.size() != n) throw std::invalid_argument("a cubic spline needs four points");
  for (std::size_t i = 0; i + 1 < n; ++i)
    if (!(x[i + 1] > x[i])) throw std::invalid_argument("the places of a spline must rise");
  // Second derivatives m: h₀ m₀ + 2 (h₀ + h₁) m₁ + h₁ m₂ = 6 (d₁ − d₀). The third is one cubic over the first two and
  // the last two pieces, which takes m at the ends out of the first and the last equation.
  std::vector<double> h(n - 1), d(n - 1), low(n), middle(n), high(n), right(n), m(n);
  for (std::size_t i = 0; i + 1 < n; ++i) {
    h[i] = x[i + 1] - x[i];
    d[i] = (y[i + 1] - y[i]) / h[i];
  }
  for (std::size_t i = 1; i + 1 < n; ++i) {
    low[i] = h[i - 1];
    middle[i] = 2 * (h[i - 1] + h[i]);
    high[i] = h[i];
    right[i] = 6 * (d[i] - d[i - 1]);
  }
  const double first = h[0] / h[1], last = h[n - 2] / h[n - 3];
  middle[1] += low[1] * (1 + first);
  high[1] -= low[1] * first;
  middle[n - 2] += high[n - 2] * (1 + last);
  low[n - 2] -= high[n - 2] * last;
  for (std::size_t i = 2; i + 1 < n; ++i) {
    const double share = low[i] / middle[i - 1];
    middle[i] -= share * high[i - 1];
    right[i] -= share * right[i - 1];
  }
  m[n - 2] = right[n - 2] / middle[n - 2];
  for (std::size_t i = n - 3; i >= 1; --i) m[i] = (right[i] - high[i] * m[i + 1]) / middle[i];
  m[0] = (1 + first) * m[1] - first * m[2];
  m[n - 1] = (1 + last) * m[n - 2] - last * m[n - 3];
  std::vector<double> values;
  values.reserve(at.size());
  for (const double place : at) {
    const auto above = std::upper_bound(x.begin() + 1, x.end() - 1, place);
    const auto i = static_cast<std::size_t>(above - x.begin()) - 1;
    const double a = x[i + 1] - place, b = place - x[i];
    values.push_back((m[i] * a * a * a + m[i + 1] * b * b * b) / (6 * h[i]) + (y[i] / h[i] - m[i] * h[i] / 6) * a +
                     (y[i + 1] / h[i] - m[i + 1] * h[i] / 6) * b);
  }
  return values;
}

}  // namespace holdback::numerics
