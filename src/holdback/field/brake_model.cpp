#include "holdback/field/brake_model.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "holdback/physics/brake.hpp"

namespace holdback::field {

namespace {

using numerics::LinearFit;

constexpr double far_off = 4;            // robust deviations from which a reading is an outlier
constexpr double most_misfit = 3.5;      // deviations beyond which one reading cannot speak any louder
constexpr std::size_t most_breaks = 24;  // places that are tried for the threshold

/// Readings that count, with their rows.
struct System {
  numerics::Design design{};
  std::vector<double> torque{};
  std::vector<std::size_t> of{};  // index among all readings
};

bool is_constant(const ModelParts& parts) { return parts.drag; }

/// A released reading says nothing when drag stands not in the model.
System system_of(const std::vector<BrakeReading>& readings, const FitSetup& setup, const BrakeModel& model) {
  System system;
  system.design.columns = 2U + (model.parts.drag ? 1U : 0U) + (model.parts.hysteresis ? 1U : 0U);
  for (std::size_t i = 0; i < readings.size(); ++i) {
    if (model.outlier[i] || (model.released[i] && !is_constant(model.parts))) continue;
    const auto row = model_row(readings[i], setup, model.dead, model.parts, model.released[i]);
    system.design.entries.insert(system.design.entries.end(), row.begin(), row.end());
    system.torque.push_back(readings[i].torque - (model.parts.drag ? 0 : model.given_drag));
    system.of.push_back(i);
  }
  return system;
}

/// What the model gives, with the bend at the threshold. A vented brake gives drag alone even where the gauge reads too
/// low, so that the line meets zero below zero pressure.
double torque_of(const BrakeReading& reading, const FitSetup& setup, const BrakeModel& model) {
  if (is_vented(reading)) return model.drag();
  const double side = reading.course == PressureCourse::rising    ? 0.5
                      : reading.course == PressureCourse::falling ? -0.5
                                                                  : 0;
  return model.drag() +
         biting_pairs(reading, setup, model.dead) *
             physics::pad_torque(model.slope(), reading.pressure, model.threshold() + side * model.gap());
}

void give_residuals(const std::vector<BrakeReading>& readings, const FitSetup& setup, BrakeModel& model) {
  model.residuals.clear();
  for (const auto& reading : readings) model.residuals.push_back(reading.torque - torque_of(reading, setup, model));
}

double sum_of_sizes(const std::vector<double>& values) {
  double sum = 0;
  for (const double value : values) sum += std::abs(value);
  return sum;
}

/// Robust scatter of the residuals, made wider for the constants that were fitted to them.
double scatter_of(const std::vector<double>& residuals, std::size_t constants, double floor) {
  const auto n = static_cast<double>(residuals.size());
  const auto p = static_cast<double>(constants);
  if (n <= p) return floor;
  return std::max(floor, numerics::median_deviation(residuals) * std::sqrt(n / (n - p)));
}

/// Huber's estimate, then the outliers left out and least squares for the rest.
void solve(const std::vector<BrakeReading>& readings, const FitSetup& setup, BrakeModel& model) {
  const double floor = least_scatter(readings);
  model.outlier.assign(readings.size(), false);
  const System all = system_of(readings, setup, model);
  if (all.design.rows() < all.design.columns) return;
  model.design = all.design;
  model.fit = numerics::huber(all.design, all.torque, 1.345, floor);
  if (!model.fit.full_rank || !(model.slope() > 0)) return;
  give_residuals(readings, setup, model);
  model.scale = scatter_of(model.residuals, all.design.columns, floor);
  const std::size_t most = readings.size() / 4;  // more of them are no outliers but another brake
  std::vector<std::size_t> order(all.of);
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return std::abs(model.residuals[a]) > std::abs(model.residuals[b]); });
  for (std::size_t k = 0; k < std::min(most, order.size()); ++k)
    model.outlier[order[k]] = std::abs(model.residuals[order[k]]) > far_off * model.scale;
  System kept = system_of(readings, setup, model);
  LinearFit plain = numerics::least_squares(kept.design, kept.torque);
  if (plain.full_rank && plain.freedom > 0 && !(plain.deviation > 0)) {
    // Points that lie on a line to the last digit leave no scatter to be made wider; a trace of it does.
    for (std::size_t i = 0; i < kept.torque.size(); ++i) kept.torque[i] += (i % 2 == 0 ? 1e-6 : -1e-6) * floor;
    plain = numerics::least_squares(kept.design, kept.torque);
  }
  if (!plain.full_rank || !(plain.coefficients[0] > 0)) return;
  model.design = kept.design;
  model.fit = plain;
  give_residuals(readings, setup, model);
  model.scale = std::max(floor, plain.freedom > 0 ? plain.deviation : floor);
}

bool has_both_courses(const std::vector<BrakeReading>& readings) {
  const auto count = [&](PressureCourse course) {
    return std::count_if(readings.begin(), readings.end(), [&](const auto& each) { return each.course == course; });
  };
  return count(PressureCourse::rising) >= 2 && count(PressureCourse::falling) >= 2;
}

/// Drag is read when its standard error is small against what the file's drag may be off by.
bool tells_drag(const BrakeModel& model, const FitSetup& setup, const std::vector<BrakeReading>& readings) {
  if (!model.fit.full_rank || model.fit.freedom < 1 || !(model.slope() > 0)) return false;
  double highest = 0;
  for (const auto& reading : readings) highest = std::max(highest, reading.torque);
  const double error = std::max(model.fit.standard_errors[2], least_scatter(readings) * model.fit.standard_errors[2] /
                                                                  std::max(model.fit.deviation, 1e-300));
  return error < std::max(0.5 * drag_in_file(setup), 0.02 * highest);
}

/// Places for the threshold: how many of the lowest pressures lie below it.
std::vector<double> breaks_of(const std::vector<BrakeReading>& readings) {
  std::set<double> pressures;
  for (const auto& reading : readings) pressures.insert(reading.pressure);
  std::vector<double> all(pressures.begin(), pressures.end());
  const double most = all.front() + 0.6 * (all.back() - all.front());
  std::vector<double> breaks{-1};  // none but the vented is released
  for (const double pressure : all)
    if (pressure <= most && breaks.size() < most_breaks) breaks.push_back(pressure);
  return breaks;
}

bool is_line(const BrakeModel& model) { return model.fit.full_rank && model.slope() > 0; }

/// The model with the readings up to a pressure, and the vented ones, below the threshold.
BrakeModel bent_at(double edge, const std::vector<BrakeReading>& readings, const FitSetup& setup, int dead,
                   ModelParts parts) {
  BrakeModel model;
  model.dead = dead;
  model.parts = parts;
  model.given_drag = drag_in_file(setup);
  for (const auto& reading : readings) model.released.push_back(is_vented(reading) || reading.pressure <= edge);
  solve(readings, setup, model);
  return model;
}

/// The best bend for given parts. Readings above the file's threshold lie below the real one only when the straight
/// line with the file's drag is plainly worse: else scatter alone would bend it.
BrakeModel bent(const std::vector<BrakeReading>& readings, const FitSetup& setup, int dead, ModelParts parts) {
  constexpr double plainly = 0.6;  // of the straight line's residuals
  const BrakeModel straight = bent_at(-1, readings, setup, dead, {false, parts.hysteresis});
  const double of_straight = is_line(straight) ? sum_of_sizes(straight.residuals) : 1e300;
  const double scatter = 0.8 * least_scatter(readings) * static_cast<double>(readings.size());
  BrakeModel best;
  double least = 0;
  for (const double edge : breaks_of(readings)) {
    BrakeModel model = bent_at(edge, readings, setup, dead, parts);
    if (!is_line(model)) continue;
    const double sum = sum_of_sizes(model.residuals);
    if (edge > setup.brake.threshold_pressure && (of_straight <= scatter || sum > plainly * of_straight)) continue;
    if (best.fit.full_rank && sum >= least * (1 - 1e-9)) continue;
    least = sum;
    best = std::move(model);
  }
  return best;
}

}  // namespace

double BrakeModel::slope_error() const { return fit.standard_errors.empty() ? 0 : fit.standard_errors[0]; }

// p_0 = b_1/b_0: δp_0 = (δb_1 − p_0 δb_0)/b_0
double BrakeModel::threshold_error() const {
  if (fit.covariance.empty()) return 0;
  const std::size_t n = design.columns;
  const double p = threshold();
  const double variance = fit.covariance[n + 1] - 2 * p * fit.covariance[1] + p * p * fit.covariance[0];
  return std::sqrt(std::max(0.0, variance)) / slope();
}

double BrakeModel::threshold_slope_covariance() const {
  if (fit.covariance.empty()) return 0;
  return (fit.covariance[1] - threshold() * fit.covariance[0]) / slope();
}

double BrakeModel::gap_error() const {
  return fit.standard_errors.empty() || !parts.hysteresis ? 0 : 2 * fit.standard_errors.back() / slope();
}

double biting_pairs(const BrakeReading& reading, const FitSetup& setup, int dead) {
  const int engaged = setup.brakes * reading.pairs - (dead > 0 && reading.pairs >= dead ? 1 : 0);
  return engaged * (reading.temperature ? physics::fade_factor(setup.grade, *reading.temperature) : 1.0);
}

std::vector<double> model_row(const BrakeReading& reading, const FitSetup& setup, int dead, ModelParts parts,
                              bool released) {
  const double pairs = released ? 0 : biting_pairs(reading, setup, dead);
  std::vector<double> row{pairs * reading.pressure, -pairs};
  if (parts.drag) row.push_back(1);
  if (parts.hysteresis)
    row.push_back(reading.course == PressureCourse::rising    ? -pairs
                  : reading.course == PressureCourse::falling ? pairs
                                                              : 0);
  return row;
}

BrakeModel fit_model(const std::vector<BrakeReading>& readings, const FitSetup& setup, int dead) {
  const bool both = has_both_courses(readings);
  BrakeModel model;
  for (const bool hysteresis : {both, false}) {
    model = bent(readings, setup, dead, {true, hysteresis});
    if (tells_drag(model, setup, readings)) return model;
    model = bent(readings, setup, dead, {false, hysteresis});
    if (model.fit.full_rank && model.fit.freedom >= 1) return model;
  }
  return model;
}

double misfit_of(const BrakeModel& model, double scale) {
  double sum = 0;
  for (const double residual : model.residuals)
    sum += std::min(residual * residual / (scale * scale), most_misfit * most_misfit);
  return sum;
}

double least_scatter(const std::vector<BrakeReading>& readings) {
  double highest = 0;
  for (const auto& reading : readings) highest = std::max(highest, reading.torque);
  return std::max(3e-3 * highest, 1e-9);
}

double drag_in_file(const FitSetup& setup) { return setup.shaft_drag + setup.brakes * setup.brake.drag; }

}  // namespace holdback::field
