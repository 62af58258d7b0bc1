#include "holdback/field/measure_verdict.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "holdback/field/measure.hpp"

namespace holdback::field {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double confidence = 0.95;
constexpr double sure = 0.95;   // probability from which "inside" is said plainly
constexpr double small = 0.02;  // probability of a side that is not worth a word

/// One digit of the uncertainty is meant ([jcgm101], 7.9.2 and 8.1).
DrawnCheck check_of(const numerics::Propagated& linear, const numerics::Drawn& drawn, double expanded) {
  DrawnCheck check;
  check.draws = drawn.count;
  check.points = drawn.even ? "quasi-random (Sobol)" : "pseudo-random (Mersenne twister)";
  check.seed = static_cast<int>(measure_seed);
  check.mean = drawn.mean;
  check.uncertainty = drawn.uncertainty;
  check.low = drawn.low;
  check.high = drawn.high;
  check.tolerance = numerics::numerical_tolerance(linear.uncertainty, 1);
  check.linear_low = linear.value - expanded;
  check.linear_high = linear.value + expanded;
  check.agrees = drawn.lost == 0 && std::abs(check.linear_low - drawn.low) <= check.tolerance &&
                 std::abs(check.linear_high - drawn.high) <= check.tolerance;
  return check;
}

/// No one counts on the far tails of a distribution: beyond a thousandth they are told as such.
double told(double probability) { return std::clamp(probability, 1e-3, 1 - 1e-3); }

/// "{3}", with "less than" or "more than" before it where it is told so.
std::string likely(double probability, const std::string& place) {
  if (told(probability) > probability) return "less than " + place;
  return told(probability) < probability ? "more than " + place : place;
}

Note verdict_of(const MeasuredWindow& window) {
  const std::string inside = likely(window.probability, "{0}");
  const std::string both = "below " + likely(window.below, "{3}") + ", above " + likely(window.above, "{4}");
  const bool one_side = std::min(window.below, window.above) < small;
  const std::string side = window.above > window.below ? "above" : "below";
  Note verdict;
  verdict.amounts = {{told(window.probability), Quantity::ratio},
                     {window.low, Quantity::force},
                     {window.high, Quantity::force},
                     {told(window.below), Quantity::ratio},
                     {told(window.above), Quantity::ratio}};
  if (one_side) verdict.amounts.resize(3);
  if (window.state == "inside")
    verdict.text = "The tension lies inside the window of {1} to {2}; " + inside + " likely by these readings.";
  else if (window.state == "outside" && one_side)
    verdict.text = "The tension lies " + side + " the window of {1} to {2}; inside is " + inside + " likely.";
  else if (window.state == "outside")
    verdict.text =
        "The tension lies outside of the window of {1} to {2}, but the readings do not tell on which side: " + both +
        ", inside " + inside + " likely.";
  else
    verdict.text = "The readings do not tell whether the tension lies inside the window of {1} to {2}; " + inside +
                   " likely" + (one_side ? ", else " + side + " it." : "; " + both + ".");
  if (window.state == "inside") verdict.amounts.resize(3);
  return verdict;
}

}  // namespace

Sureness::Sureness(const MeasureModel& model, const std::vector<numerics::UnsureInput>& inputs)
    : linear_(numerics::propagate(model.tension, inputs)) {
  if (!std::isfinite(linear_.value) || !(linear_.uncertainty > 0)) return;
  drawn_ = numerics::draw(model.tension, inputs, confidence, measure_draws, measure_seed);
  if (drawn_.count > 0) check_ = check_of(linear_, drawn_, linear_expanded());
}

double Sureness::linear_expanded() const {
  return numerics::coverage_factor(linear_.freedom, confidence) * linear_.uncertainty;
}

double Sureness::below(double bound) const {
  const auto& all = drawn_.sorted;
  if (by_draws())
    return static_cast<double>(std::lower_bound(all.begin(), all.end(), bound) - all.begin()) /
           static_cast<double>(all.size());
  if (!(linear_.uncertainty > 0)) return linear_.value < bound ? 1 : 0;
  return numerics::probability_between(linear_.value, linear_.uncertainty, linear_.freedom, -infinity, bound);
}

double Sureness::above(double bound) const {
  const auto& all = drawn_.sorted;
  if (by_draws())
    return static_cast<double>(all.end() - std::upper_bound(all.begin(), all.end(), bound)) /
           static_cast<double>(all.size());
  if (!(linear_.uncertainty > 0)) return linear_.value > bound ? 1 : 0;
  return numerics::probability_between(linear_.value, linear_.uncertainty, linear_.freedom, bound, infinity);
}

MeasuredWindow window_of(const MeasureInput& input, const Sureness& sureness) {
  const TensionTarget& target = *input.target;
  MeasuredWindow window;
  window.job = input.job;
  window.low = target.low;
  window.high = target.high;
  window.setpoint = target.setpoint;
  window.below = sureness.below(target.low);
  window.above = sureness.above(target.high);
  window.probability = std::clamp(1 - window.below - window.above, 0.0, 1.0);
  const bool inside = window.probability >= sure;
  const bool outside = window.probability <= 1 - sure;
  window.state = inside ? "inside" : outside ? "outside" : "may be outside";
  window.verdict = verdict_of(window);
  return window;
}

}  // namespace holdback::field
