#include "holdback/numerics/spectrum.hpp"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <numbers>
#include <numeric>
#include <stdexcept>

namespace holdback::numerics {

std::vector<double> hann_window(std::size_t length) {
  std::vector<double> window(length);
  for (std::size_t j = 0; j < length; ++j)
    window[j] = 0.5 - 0.5 * std::cos(2 * std::numbers::pi * static_cast<double>(j) / static_cast<double>(length));
  return window;
}

Spectrum amplitude_spectrum(const std::vector<double>& values, double rate) {
  Spectrum made;
  const std::size_t n = values.size();
  if (n < 2 || !(rate > 0)) return made;
  std::vector<double> work = hann_window(n);
  const double sum = std::accumulate(work.begin(), work.end(), 0.0);
  for (std::size_t j = 0; j < n; ++j) work[j] *= values[j];
  std::vector<std::complex<double>> transform(n / 2 + 1);
  Fft(n).forward_real(work.data(), transform.data());
  made.step = rate / static_cast<double>(n);
  for (std::size_t k = 0; k < transform.size(); ++k)
    made.value.push_back((k == 0 || 2 * k == n ? 1 : 2) * std::abs(transform[k]) / sum);
  return made;
}

WelchStream::WelchStream(double rate, std::size_t segment, Detrend detrend)
    : rate_(rate), segment_(segment), detrend_(detrend), fft_(std::max<std::size_t>(segment, 1)) {
  if (!(rate > 0) || segment < 4 || segment % 2 != 0) throw std::invalid_argument("no segment to average over");
  window_ = hann_window(segment);
  double squares = 0;
  for (const double w : window_) squares += w * w;
  scale_ = 1 / (rate * squares);
  kept_.reserve(segment);
  work_.resize(segment);
  transform_.resize(segment / 2 + 1);
  sum_.assign(segment / 2 + 1, 0.0);
}

void WelchStream::take() {
  const auto n = static_cast<double>(segment_);
  const double middle = (n - 1) / 2;
  double mean = 0;
  for (const double value : kept_) mean += value;
  mean /= n;
  double slope = 0;
  if (detrend_ == Detrend::line) {
    for (std::size_t j = 0; j < segment_; ++j) slope += (static_cast<double>(j) - middle) * (kept_[j] - mean);
    slope /= n * (n * n - 1) / 12;
  }
  for (std::size_t j = 0; j < segment_; ++j)
    work_[j] = window_[j] * (kept_[j] - mean - slope * (static_cast<double>(j) - middle));
  fft_.forward_real(work_.data(), transform_.data());
  latest_.resize(sum_.size());
  for (std::size_t k = 0; k < sum_.size(); ++k) {
    const double sides = k == 0 || k + 1 == sum_.size() ? 1 : 2;
    latest_[k] = sides * scale_ * std::norm(transform_[k]);
    sum_[k] += latest_[k];
  }
  ++segments_;
  kept_.erase(kept_.begin(), kept_.begin() + static_cast<std::ptrdiff_t>(segment_ / 2));
}

Spectrum WelchStream::density() const {
  Spectrum made;
  if (segments_ == 0) return made;
  made.step = rate_ / static_cast<double>(segment_);
  made.segments = segments_;
  made.value = sum_;
  for (double& value : made.value) value /= segments_;
  return made;
}

Spectrum welch_density(const std::vector<double>& values, double rate, std::size_t segment, Detrend detrend) {
  segment = std::min(segment, values.size() / 2 * 2);
  if (segment < 4 || !(rate > 0)) return {};
  WelchStream stream(rate, segment, detrend);
  for (const double value : values) stream.put(value);
  return stream.density();
}

double independent_segments(double segments) {
  return segments <= 1 ? segments : segments / (1 + 2.0 / 36 * (1 - 1 / segments));
}

std::vector<double> noise_floor(const Spectrum& density, std::size_t reach) {
  const std::size_t count = density.value.size();
  std::vector<double> floor(count);
  if (count == 0) return floor;
  const double k = std::max(0.5, independent_segments(density.segments));
  const double median_over_mean = boost::math::gamma_p_inv(k, 0.5) / k;
  std::vector<double> near;
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t half = std::min(reach, std::max<std::size_t>(4, i / 2));
    const std::size_t begin = std::max<std::size_t>(i > half ? i - half : 0, std::min<std::size_t>(1, i));
    const std::size_t end = std::min(count, i + half + 1);
    near.assign(density.value.begin() + static_cast<std::ptrdiff_t>(begin),
                density.value.begin() + static_cast<std::ptrdiff_t>(end));
    const auto middle = near.begin() + static_cast<std::ptrdiff_t>(near.size() / 2);
    std::nth_element(near.begin(), middle, near.end());
    floor[i] = *middle / median_over_mean;
  }
  return floor;
}

double false_alarm_chance(double over_noise, double independent, double entries) {
  if (!(over_noise > 0) || !(independent > 0)) return 1;
  const double one = boost::math::gamma_q(independent, std::min(independent * over_noise, 1e6));
  return one >= 1 ? 1 : -std::expm1(entries * std::log1p(-one));
}

namespace {

constexpr std::size_t lobe = 2;  // entries to either side that a pure tone fills under a Hann window

Line line_at(const Spectrum& density, const std::vector<double>& floor, std::size_t at) {
  const std::vector<double>& p = density.value;
  Line line;
  // The top of a parabola through the logarithms.
  double off = 0;
  if (at > 0 && at + 1 < p.size() && p[at - 1] > 0 && p[at + 1] > 0) {
    const double low = std::log(p[at - 1] / p[at]), high = std::log(p[at + 1] / p[at]);
    if (low + high < 0) off = std::clamp((low - high) / (2 * (low + high)), -0.5, 0.5);
  }
  line.place = density.step * (static_cast<double>(at) + off);
  // Out to where it has sunk to a fiftieth or into the noise, at least over the lobe of a tone, and never uphill far.
  const auto reach = [&](int direction) {
    std::size_t last = at, here = at;
    for (std::size_t steps = 1;; ++steps) {
      if ((direction < 0 && here == 0) || (direction > 0 && here + 1 >= p.size())) break;
      here = direction < 0 ? here - 1 : here + 1;
      if (steps > lobe && (p[here] < 0.02 * p[at] || p[here] < 2 * floor[here] || p[here] > 1.5 * p[last])) break;
      last = here;
    }
    return last;
  };
  const std::size_t first = reach(-1), last = reach(+1);
  double power = 0, half = 0;
  for (std::size_t i = first; i <= last; ++i) {
    power += std::max(0.0, p[i] - floor[i]);
    if (p[i] > p[at] / 2) ++half;
  }
  line.amplitude = std::sqrt(2 * power * density.step);
  line.width = half * density.step;
  return line;
}

}  // namespace

std::vector<Line> find_lines(const Spectrum& density, const std::vector<double>& floor, double false_alarm,
                             std::size_t first) {
  std::vector<Line> lines;
  const std::vector<double>& p = density.value;
  const double independent = independent_segments(density.segments);
  const auto entries = static_cast<double>(p.size());
  for (std::size_t i = std::max<std::size_t>(first, 1); i + 1 < p.size(); ++i) {
    if (!(floor[i] > 0) || !(p[i] > 2 * floor[i])) continue;
    const std::size_t from = i > lobe ? i - lobe : 0, to = std::min(p.size() - 1, i + lobe);
    const auto top = std::max_element(p.begin() + static_cast<std::ptrdiff_t>(from),
                                      p.begin() + static_cast<std::ptrdiff_t>(to) + 1);
    if (static_cast<std::size_t>(top - p.begin()) != i) continue;
    const double over = p[i] / floor[i];
    const double chance = false_alarm_chance(over, independent, entries);
    if (chance > false_alarm) continue;
    Line line = line_at(density, floor, i);
    line.over_noise = over;
    line.false_alarm = chance;
    lines.push_back(line);
  }
  std::sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) { return a.amplitude > b.amplitude; });
  return lines;
}

}  // namespace holdback::numerics
