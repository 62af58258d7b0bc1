// Bayes' rule over a short list of causes. Each says which values of slope and threshold it would bring, and how often
// it is met; the readings say how well each value fits. Shares of causes are common practice, no source.
#include "holdback/field/brake_causes.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

#include "holdback/physics/brake.hpp"

namespace holdback::field {

namespace {

// How often each is met before anything is read.
constexpr double often_as_expected = 0.62;
constexpr double often_wrong_grade = 0.08;
constexpr double often_dead_pair = 0.08;
constexpr double often_low_friction = 0.09;
constexpr double often_worn = 0.06;
constexpr double often_gauge_offset = 0.05;
constexpr double often_unexplained = 0.02;

constexpr double least_share_error = 0.01;  // [1] of the slope: a model is no better than that
constexpr double least_shift_error = 1000;  // [Pa]
constexpr double largest_shift = 1.5e5;     // [Pa] of a threshold, by wear or by a gauge
constexpr double clear_shift = 2.5;         // usual shifts from which a shift is one
constexpr double lowest_friction = 0.3;     // [1] of the low end of the band, of glazed or oily pads

using Density = std::function<double(double)>;

Density even(double low, double high) {
  return [=](double x) { return x >= low && x <= high ? 1 / (high - low) : 0; };
}

Density bell(double deviation) {
  return
      [=](double x) { return std::exp(-0.5 * (x / deviation) * (x / deviation)) / (deviation * 2.5066282746310002); };
}

/// ∫∫ likelihood(x, z)·slope(x)·shift(z) by the middle-point rule over ± 5 standard deviations; the likelihood is the
/// normal one about what was fitted.
double agreement(const ConstantsKnown& known, const Density& slope, const Density& shift) {
  constexpr int steps = 71;
  constexpr double reach = 5;
  constexpr double width = 2 * reach / steps;
  const double rest = std::sqrt(1 - known.correlation * known.correlation);
  double sum = 0;
  for (int i = 0; i < steps; ++i) {
    const double u = -reach + (i + 0.5) * width;
    const double at = slope(known.slope_share + u * known.slope_deviation);
    if (at <= 0) continue;
    for (int k = 0; k < steps; ++k) {
      const double w = -reach + (k + 0.5) * width;
      const double z = known.shift + (known.correlation * u + rest * w) * known.shift_deviation;
      sum += std::exp(-0.5 * (u * u + w * w)) * at * shift(z);
    }
  }
  return sum * width * width / (2 * std::numbers::pi);
}

/// How well the readings agree with a notion of which pairs bite, relative to the best: the profile likelihood of
/// residuals with unknown scatter.
double structure_weight(const BrakeModel& model, const BrakeModel& best) {
  const double n = static_cast<double>(model.residuals.size());
  const double free = std::max(1.0, n - static_cast<double>(model.design.columns));
  const double misfit = misfit_of(model, best.scale);
  const double least = std::max(free, misfit_of(best, best.scale));
  return std::pow(std::max(1.0, misfit / least), -free / 2);
}

double nominal_of(const FitSetup& setup) {
  return physics::pair_torque_per_pressure(setup.brake, setup.grade).capacity;
}

bool likelier(const WeighedCause& a, const WeighedCause& b) { return a.share > b.share; }

/// Of a cause with several entries those below `least` go into the first one; `causes` comes the likeliest first.
void gather(std::vector<WeighedCause>& causes, BrakeCause cause, double least) {
  const auto is = [cause](const WeighedCause& each) { return each.cause == cause; };
  const auto first = std::find_if(causes.begin(), causes.end(), is);
  if (first == causes.end()) return;
  const double best = first->share;
  for (auto each = first + 1; each != causes.end(); ++each) {
    if (!is(*each) || each->share >= least) continue;
    if (each->share > 0.1 * best) first->alike += 1;  // less than that does not fit as well
    first->share += each->share;
    each->share = 0;
  }
  causes.erase(
      std::remove_if(first + 1, causes.end(), [&](const WeighedCause& each) { return is(each) && each.share <= 0; }),
      causes.end());
}

}  // namespace

ConstantsKnown constants_known(const BrakeModel& model, const FitSetup& setup) {
  const double nominal = nominal_of(setup);
  // What t leaves open beyond the normal law, for few degrees of freedom.
  const double wide = model.fit.freedom >= 1 ? numerics::student_quantile(0.975, model.fit.freedom) / 1.959964 : 1;
  const double believed = model.fit.deviation > 0 ? std::max(1.0, model.scale / model.fit.deviation) : 1;
  double pairs = 0;
  for (std::size_t i = 0; i < model.design.rows(); ++i) pairs = std::max(pairs, -model.design(i, 1));
  const double from_drag = model.parts.drag || pairs <= 0 ? 0
                                                          : std::max(setup.drag_band, 0.3) * model.given_drag /
                                                                (std::sqrt(3.0) * pairs * model.slope());
  ConstantsKnown known;
  known.slope_share = model.slope() / nominal;
  known.slope_deviation = std::hypot(least_share_error, wide * believed * model.slope_error() / nominal);
  known.shift = model.threshold() - setup.brake.threshold_pressure;
  known.shift_deviation = std::hypot(least_shift_error, wide * believed * model.threshold_error(), from_drag);
  const double covariance = wide * wide * believed * believed * model.threshold_slope_covariance() / nominal;
  known.correlation = std::clamp(covariance / (known.slope_deviation * known.shift_deviation), -0.99, 0.99);
  return known;
}

GradeBand band_of(const Brake& brake, const Grade& grade, double nominal) {
  const auto slope = physics::pair_torque_per_pressure(brake, grade);
  return {slope.capacity * (1 - grade.friction_band) / nominal, slope.highest * (1 + grade.friction_band) / nominal};
}

double usual_shift(const FitSetup& setup) {
  return std::hypot(setup.brake.threshold_pressure / 3, setup.pressure_step, 2000.0);
}

std::vector<WeighedCause> weigh_causes(const std::vector<BrakeModel>& models, const FitSetup& setup, double least) {
  std::vector<WeighedCause> causes;
  const double nominal = nominal_of(setup);
  const GradeBand band = band_of(setup.brake, setup.grade, nominal);
  const Density in_band = even(band.low, band.high);
  const double usual = usual_shift(setup);
  const Density unshifted = bell(usual);
  const double largest = std::max(largest_shift, 3 * setup.brake.threshold_pressure);
  const double clear = std::min(clear_shift * usual, largest / 2);
  const Density either_way = [clear, largest](double z) {
    return std::abs(z) >= clear && std::abs(z) <= largest ? 0.5 / (largest - clear) : 0;
  };

  const auto best = std::min_element(models.begin(), models.end(),
                                     [](const BrakeModel& a, const BrakeModel& b) { return a.scale < b.scale; });
  const auto weigh = [&](BrakeCause cause, double often, const BrakeModel& model, const Density& slope,
                         const Density& shift) -> WeighedCause& {
    const double share =
        often * structure_weight(model, *best) * agreement(constants_known(model, setup), slope, shift);
    causes.push_back({cause, share, "", 0, 0});
    return causes.back();
  };

  const BrakeModel& sound = models.front();
  weigh(BrakeCause::as_expected, often_as_expected, sound, in_band, unshifted);
  const auto others = static_cast<double>(setup.brake.grades.size()) - 1;
  for (const Grade& grade : setup.brake.grades) {
    if (grade.name == setup.grade.name) continue;
    const GradeBand of_grade = band_of(setup.brake, grade, nominal);
    if (!(of_grade.high > of_grade.low)) continue;
    weigh(BrakeCause::wrong_grade, often_wrong_grade / others, sound, even(of_grade.low, of_grade.high), unshifted)
        .grade = grade.name;
  }
  const auto structures = static_cast<double>(models.size()) - 1;
  for (std::size_t i = 1; i < models.size(); ++i)
    weigh(BrakeCause::dead_pair, often_dead_pair / structures, models[i], in_band, unshifted).pair = models[i].dead;
  weigh(BrakeCause::low_friction, often_low_friction, sound, even(lowest_friction * band.low, band.low), unshifted);
  weigh(BrakeCause::worn, often_worn, sound, in_band, even(clear, largest));
  weigh(BrakeCause::gauge_offset, often_gauge_offset, sound, in_band, either_way);
  weigh(BrakeCause::unexplained, often_unexplained, sound, even(0.05, 4), even(-2 * largest, 2 * largest));

  double sum = 0;
  for (const auto& each : causes) sum += each.share;
  for (auto& each : causes) {
    if (sum > 0)
      each.share /= sum;
    else
      each.share = each.cause == BrakeCause::unexplained ? 1 : 0;
  }
  std::stable_sort(causes.begin(), causes.end(), likelier);
  for (const BrakeCause cause : {BrakeCause::wrong_grade, BrakeCause::dead_pair}) gather(causes, cause, least);
  std::stable_sort(causes.begin(), causes.end(), likelier);
  return causes;
}

}  // namespace holdback::field
