#include "holdback/numerics/gum.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <numbers>
#include <random>
#include <stdexcept>

#include "holdback/numerics/sobol.hpp"

namespace holdback::numerics {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double many = 1e6;  // degrees of freedom from which a t is a normal to nine digits

double normal_quantile(double p) { return boost::math::quantile(boost::math::normal_distribution<>(), p); }

// Closed forms where there are any: drawing asks for them very often.
double student_quantile(double p, double freedom) {
  if (freedom > many) return normal_quantile(p);
  if (freedom == 1) return std::tan(std::numbers::pi * (p - 0.5));
  if (freedom == 2) return (2 * p - 1) / std::sqrt(2 * p * (1 - p));
  return boost::math::quantile(boost::math::students_t_distribution<>(freedom), p);
}

double student_below(double t, double freedom) {
  if (freedom > many) return boost::math::cdf(boost::math::normal_distribution<>(), t);
  return boost::math::cdf(boost::math::students_t_distribution<>(freedom), t);
}

// Welch and Satterthwaite: ν = 1/Σ ((u_i/u)⁴/ν_i), as shares so that nothing overflows.
double freedom_share(double part, double whole, double freedom) {
  return std::isfinite(freedom) && whole > 0 ? std::pow(part / whole, 4) / freedom : 0;
}

double at_least_one(double freedom) { return freedom > 1 ? freedom : 1; }

}  // namespace

Doubt resolution_doubt(double step) { return {Shape::rectangular, step / std::sqrt(12.0), infinity}; }

Doubt limit_doubt(double half_width) { return {Shape::rectangular, half_width / std::sqrt(3.0), infinity}; }

double mean_of(const std::vector<double>& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return values.empty() ? 0 : sum / static_cast<double>(values.size());
}

Doubt repeat_doubt(const std::vector<double>& readings) {
  if (readings.size() < 2) throw std::invalid_argument("repeat_doubt: two readings are needed");
  const double mean = mean_of(readings);
  double squares = 0;
  for (const double reading : readings) squares += (reading - mean) * (reading - mean);
  const auto n = static_cast<double>(readings.size());
  return {Shape::student, std::sqrt(squares / (n - 1) / n), n - 1};
}

double uncertainty_of(const UnsureInput& input) {
  double squares = 0;
  for (const Doubt& doubt : input.doubts) squares += doubt.uncertainty * doubt.uncertainty;
  return std::sqrt(squares);
}

double freedom_of(const UnsureInput& input) {
  const double whole = uncertainty_of(input);
  double shares = 0;
  for (const Doubt& doubt : input.doubts) shares += freedom_share(doubt.uncertainty, whole, doubt.freedom);
  return shares > 0 ? 1 / shares : infinity;
}

Propagated propagate(const Model& model, const std::vector<UnsureInput>& inputs) {
  std::vector<double> at;
  for (const UnsureInput& input : inputs) at.push_back(input.value);
  Propagated out;
  out.value = model(at);
  double squares = 0;
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    const double uncertainty = uncertainty_of(inputs[i]);
    const double step = 1e-5 * (at[i] != 0 ? std::abs(at[i]) : std::max(uncertainty, 1e-6));
    auto moved = at;
    moved[i] = at[i] + step;
    const double above = model(moved);
    moved[i] = at[i] - step;
    out.sensitivity.push_back((above - model(moved)) / (2 * step));
    out.contribution.push_back(std::abs(out.sensitivity[i]) * uncertainty);
    squares += out.contribution[i] * out.contribution[i];
  }
  out.uncertainty = std::sqrt(squares);
  double shares = 0;
  for (std::size_t i = 0; i < inputs.size(); ++i)
    shares += freedom_share(out.contribution[i], out.uncertainty, freedom_of(inputs[i]));
  out.freedom = shares > 0 ? 1 / shares : infinity;
  return out;
}

double coverage_factor(double freedom, double probability) {
  return student_quantile((1 + probability) / 2, at_least_one(freedom));
}

double probability_between(double value, double uncertainty, double freedom, double low, double high) {
  if (!(uncertainty > 0)) return value >= low && value <= high ? 1 : 0;
  const double degrees = at_least_one(freedom);
  return student_below((high - value) / uncertainty, degrees) - student_below((low - value) / uncertainty, degrees);
}

namespace {

double drawn(const Doubt& doubt, double p) {
  if (doubt.shape == Shape::rectangular) return doubt.uncertainty * std::sqrt(3.0) * (2 * p - 1);
  if (doubt.shape == Shape::student) return doubt.uncertainty * student_quantile(p, doubt.freedom);
  return doubt.uncertainty * normal_quantile(p);
}

// Points of so many coordinates in (0, 1), row by row.
std::vector<double> pseudo_points(int count, int dimensions, std::uint32_t seed) {
  std::mt19937_64 engine(seed);
  std::vector<double> points(static_cast<std::size_t>(count) * static_cast<std::size_t>(dimensions));
  // 53 bits, half a step inside: the standard's own distributions differ between libraries.
  for (double& point : points) point = (static_cast<double>(engine() >> 11) + 0.5) / 9007199254740992.0;
  return points;
}

int doubts_of(const std::vector<UnsureInput>& inputs) {
  std::size_t count = 0;
  for (const UnsureInput& input : inputs) count += input.doubts.size();
  return static_cast<int>(count);
}

bool has_deviation(const std::vector<UnsureInput>& inputs) {
  for (const UnsureInput& input : inputs)
    for (const Doubt& doubt : input.doubts)
      if (doubt.shape == Shape::student && doubt.freedom <= 2 && doubt.uncertainty > 0) return false;
  return true;
}

// The value below which that share of the sorted draws lies.
double quantile_of(const std::vector<double>& sorted, double share) {
  const double at = share * static_cast<double>(sorted.size()) - 0.5;
  const auto last = static_cast<double>(sorted.size() - 1);
  const double inside = std::clamp(at, 0.0, last);
  const auto below = static_cast<std::size_t>(inside);
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  return sorted[below] + (inside - static_cast<double>(below)) * (sorted[above] - sorted[below]);
}

void sum_up(Drawn& out, double probability, bool deviation) {
  std::sort(out.sorted.begin(), out.sorted.end());
  out.count = static_cast<int>(out.sorted.size());
  if (out.sorted.empty()) return;
  out.mean = mean_of(out.sorted);
  double squares = 0;
  for (const double value : out.sorted) squares += (value - out.mean) * (value - out.mean);
  if (deviation && out.count > 1) out.uncertainty = std::sqrt(squares / (out.count - 1));
  out.low = quantile_of(out.sorted, (1 - probability) / 2);
  out.high = quantile_of(out.sorted, (1 + probability) / 2);
}

}  // namespace

Drawn draw(const Model& model, const std::vector<UnsureInput>& inputs, double probability, int count,
           std::uint32_t seed) {
  const int dimensions = doubts_of(inputs);
  Drawn out;
  out.even = dimensions <= most_sobol_dimensions;
  std::vector<double> points;
  if (dimensions > 0)
    points = out.even ? sobol_points(static_cast<std::size_t>(count), dimensions, seed)
                      : pseudo_points(count, dimensions, seed);
  std::vector<double> at(inputs.size());
  const double* next = points.data();
  for (int k = 0; k < count; ++k) {
    for (std::size_t i = 0; i < inputs.size(); ++i) {
      at[i] = inputs[i].value;
      for (const Doubt& doubt : inputs[i].doubts) at[i] += drawn(doubt, *next++);
    }
    const double result = model(at);
    if (std::isfinite(result))
      out.sorted.push_back(result);
    else
      ++out.lost;
  }
  sum_up(out, probability, has_deviation(inputs));
  return out;
}

double numerical_tolerance(double uncertainty, int digits) {
  if (!(uncertainty > 0)) return 0;
  const int exponent = static_cast<int>(std::floor(std::log10(uncertainty)));
  return 0.5 * std::pow(10.0, exponent - digits + 1);
}

}  // namespace holdback::numerics
