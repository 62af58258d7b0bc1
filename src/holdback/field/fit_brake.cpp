#include "holdback/field/fit_brake.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

#include "holdback/field/brake_causes.hpp"
#include "holdback/field/brake_model.hpp"
#include "holdback/field/brake_refusal.hpp"
#include "holdback/field/brake_words.hpp"
#include "holdback/field/next_reading.hpp"
#include "holdback/physics/brake.hpp"

namespace holdback::field {

namespace {

constexpr double widest_slope = 0.2;      // [1] half the interval from which the slope is not known
constexpr double widest_threshold = 3e4;  // [Pa] the same for the threshold
constexpr double worth_telling = 0.05;    // [1] share from which a cause is told; the first is told anyhow
constexpr double least_rise = 0.05;       // [1] of the file's torque per pressure: below it nothing bites
constexpr std::size_t most_verdicts = 4;

using Q = Quantity;

/// Half an interval: Student's t on the standard error, the scatter not below what is believed.
double half(const BrakeModel& model, double error) {
  if (model.fit.freedom < 1) return 0;
  const double believed = model.fit.deviation > 0 ? std::max(1.0, model.scale / model.fit.deviation) : 1;
  return numerics::half_width(believed * error, model.fit.freedom);
}

FittedNumber number(double value, double half_interval, double in_file) {
  return {value, value - half_interval, value + half_interval, in_file};
}

FittedNumber scaled(const FittedNumber& number, double factor, double in_file) {
  return {number.value * factor, number.low * factor, number.high * factor, in_file};
}

/// Pressure, with the torque of one pair at it, of the readings that are not released.
double median_slope(const BrakeModel& model, const std::vector<BrakeReading>& readings, const FitSetup& setup) {
  std::vector<double> pressure;
  std::vector<double> torque;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const double pairs = biting_pairs(readings[i], setup, model.dead);
    if (model.released[i] || pairs <= 0) continue;
    pressure.push_back(readings[i].pressure);
    torque.push_back((readings[i].torque - model.drag()) / pairs);
  }
  const std::set<double> different(pressure.begin(), pressure.end());
  return different.size() < 2 ? 0 : numerics::repeated_medians(pressure, torque).slope;
}

/// How far the file's drag may shift the threshold when it could not be read [Pa].
double threshold_by_drag(const BrakeModel& model, const FitSetup& setup) {
  if (model.parts.drag) return 0;
  double pairs = 0;
  double rows = 0;
  for (std::size_t i = 0; i < model.design.rows(); ++i, rows += 1) pairs -= model.design(i, 1);
  if (pairs <= 0) return 0;
  return setup.drag_band * model.given_drag / (pairs / rows * model.slope());
}

void give_constants(BrakeFit& out, const BrakeModel& model, const std::vector<BrakeReading>& readings,
                    const FitSetup& setup) {
  const auto nominal = physics::pair_torque_per_pressure(setup.brake, setup.grade).capacity;
  out.torque_per_pressure = number(model.slope(), half(model, model.slope_error()), nominal);
  out.median_torque_per_pressure = median_slope(model, readings, setup);
  out.friction_share = scaled(out.torque_per_pressure, 1 / nominal, 1);
  if (setup.grade.friction) out.friction = scaled(out.friction_share, *setup.grade.friction, *setup.grade.friction);
  const GradeBand band = band_of(setup.brake, setup.grade, nominal);
  out.band_low = band.low;
  out.band_high = band.high;
  out.threshold =
      number(model.threshold(), std::hypot(half(model, model.threshold_error()), threshold_by_drag(model, setup)),
             setup.brake.threshold_pressure);
  out.drag_read = model.parts.drag;
  const double drag = drag_in_file(setup);
  const double drag_half = model.parts.drag && !model.fit.standard_errors.empty()
                               ? half(model, model.fit.standard_errors[2])
                               : setup.drag_band * drag;
  out.drag = number(model.drag(), drag_half, drag);
  if (model.parts.hysteresis) {
    out.hysteresis = number(model.gap(), half(model, model.gap_error()), 0);
    double middle = 0;
    int count = 0;
    for (std::size_t i = 0; i < readings.size(); ++i)
      if (!model.released[i]) middle += readings[i].pressure, ++count;
    const double pressing = count > 0 ? middle / count - model.threshold() : 0;
    out.hysteresis_share = pressing > 0 ? model.gap() / pressing : 0;
  }
  out.scatter = model.scale;
}

void give_readings(BrakeFit& out, const BrakeModel& model, const std::vector<BrakeReading>& readings) {
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const BrakeReading& each = readings[i];
    out.readings.push_back({each.row, each.pressure, each.pairs, each.course, each.torque,
                            each.torque - model.residuals[i], model.residuals[i], static_cast<bool>(model.outlier[i])});
    out.outliers += model.outlier[i] ? 1 : 0;
  }
}

/// One notion for each pair that may be dead; those that cannot be told apart stand once.
std::vector<BrakeModel> models_of(const std::vector<BrakeReading>& readings, const FitSetup& setup) {
  std::vector<BrakeModel> models{fit_model(readings, setup, 0)};
  std::set<int> counts;
  for (const auto& reading : readings) counts.insert(reading.pairs);
  // A dead pair shows from the first number of pairs that engages it; lower ones are whole.
  for (const int count : counts) {
    if (setup.brakes * count < 2 && counts.size() == 1) continue;  // nothing would bite at all
    BrakeModel model = fit_model(readings, setup, count);
    if (!model.fit.full_rank || !(model.slope() > 0) || model.fit.freedom < 1) continue;
    models.push_back(std::move(model));
  }
  return models;
}

/// The model of the likeliest cause.
const BrakeModel& likeliest(const std::vector<BrakeModel>& models, const std::vector<WeighedCause>& causes) {
  const int dead = causes.empty() ? 0 : causes.front().pair;
  return *std::find_if(models.begin(), models.end(), [&](const BrakeModel& each) { return each.dead == dead; });
}

/// True when torque rises with pressure, plainly more than scatter would make it and by more than a trace.
bool rises(const BrakeModel& model, const FitSetup& setup) {
  if (!model.fit.full_rank || !(model.slope() > 0)) return false;
  const double nominal = physics::pair_torque_per_pressure(setup.brake, setup.grade).capacity;
  if (model.slope() < least_rise * nominal) return false;
  const double believed = model.fit.deviation > 0 ? std::max(1.0, model.scale / model.fit.deviation) : 1;
  return model.fit.freedom < 1 || model.slope() > 2 * believed * model.slope_error();
}

/// True when the best line rises, but scatter alone could make it.
bool is_lost_in_scatter(const BrakeModel& model, const FitSetup& setup) {
  const double nominal = physics::pair_torque_per_pressure(setup.brake, setup.grade).capacity;
  return model.fit.full_rank && model.slope() >= least_rise * nominal;
}

bool carries(const BrakeFit& fit, const BrakeModel& model) {
  const double slope = (fit.torque_per_pressure.high - fit.torque_per_pressure.low) / 2;
  const double threshold = (fit.threshold.high - fit.threshold.low) / 2;
  const double widest = std::max(widest_threshold, fit.threshold.in_file);
  return model.fit.freedom >= 1 && slope <= widest_slope * fit.torque_per_pressure.value && threshold <= widest;
}

/// Below the two lowest numbers of pairs a dead pair may be any of them.
int lowest_pairs(const std::vector<BrakeReading>& readings) {
  int least = readings.front().pairs;
  for (const auto& reading : readings) least = std::min(least, reading.pairs);
  return least;
}

void give_verdicts(BrakeFit& out, const std::vector<BrakeModel>& models, const std::vector<WeighedCause>& causes,
                   const std::vector<BrakeReading>& readings, const FitSetup& setup) {
  for (const WeighedCause& cause : causes) {
    const bool first = &cause == &causes.front();
    if (!first && (cause.share < worth_telling || out.verdicts.size() >= most_verdicts)) continue;
    BrakeVerdict verdict;
    verdict.cause = cause.cause;
    verdict.share = cause.share;
    verdict.grade = cause.grade;
    const bool any = (cause.pair > 1 && cause.pair == lowest_pairs(readings)) || cause.alike > 0;
    verdict.pair = any ? 0 : cause.pair;
    tell(verdict, out, models, cause, setup);
    out.verdicts.push_back(std::move(verdict));
  }
}

}  // namespace

BrakeFit fit_brake(const std::vector<BrakeReading>& readings, const FitSetup& setup) {
  std::set<double> pressures;
  for (const auto& reading : readings) pressures.insert(reading.pressure);
  if (pressures.size() < 2) throw std::invalid_argument("readings at two different pressures at least");
  BrakeFit out;
  int most_pairs = 1;
  for (const auto& reading : readings) most_pairs = std::max(most_pairs, reading.pairs);
  out.fit = {setup.brake.name, setup.grade.name, setup.brakes, most_pairs};
  tell_assumptions(out, readings, setup);
  const auto models = models_of(readings, setup);
  const BrakeModel& sound = models.front();
  const bool line = sound.fit.full_rank && sound.slope() > 0;
  if (!line || std::none_of(models.begin(), models.end(), [&](const auto& each) { return rises(each, setup); })) {
    for (const auto& each : readings)
      out.readings.push_back({each.row, each.pressure, each.pairs, each.course, each.torque, 0, 0, false});
    out.verdicts.push_back(no_line_words(is_lost_in_scatter(sound, setup) ? &sound : nullptr, readings, setup));
    out.next = next_readings(nullptr, setup);
    tell_dangers(out, setup);
    return out;
  }
  const bool judged = sound.fit.freedom >= 1;
  const auto causes = judged ? weigh_causes(models, setup, worth_telling) : std::vector<WeighedCause>{};
  const BrakeModel& model = likeliest(models, causes);
  give_constants(out, model, readings, setup);
  give_readings(out, model, readings);
  out.sufficient = carries(out, model);
  out.next = next_readings(&model, setup);
  if (!out.sufficient) out.verdicts.push_back(too_few_words(out, model, readings));
  give_verdicts(out, models, causes, readings, setup);
  if (!refusal_of(out)) tell_may_replace(out);
  tell_limits_of(out, model, readings, setup);
  return out;
}

FittedBrake fitted_brake(const BrakeFit& fit, const FitSetup& setup) {
  FittedBrake out{setup.brake, setup.grade, refusal_of(fit)};
  if (out.refusal) return out;
  const double slope = fit.torque_per_pressure.value;
  out.brake.threshold_pressure = std::max(0.0, fit.threshold.value);
  if (fit.drag_read) out.brake.drag = std::max(0.0, (fit.drag.value - setup.shaft_drag) / setup.brakes);
  if (const auto* sheet = std::get_if<DataSheetPad>(&setup.brake.pad)) {
    const double span = sheet->torque_pressure - out.brake.threshold_pressure;
    if (span <= 0) {
      out.refusal = Note{
          "the fitted threshold lies above the torque_pressure of the file, so that no torque_per_pair "
          "can state the fit"};
      return out;
    }
    out.grade.torque_per_pair = slope * span;
  } else {
    out.grade.friction = fit.friction_share.value * setup.grade.friction.value_or(0);
  }
  for (Grade& grade : out.brake.grades)
    if (grade.name == out.grade.name) grade = out.grade;
  return out;
}

}  // namespace holdback::field
