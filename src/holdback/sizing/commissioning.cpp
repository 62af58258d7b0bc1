#include "holdback/sizing/commissioning.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/brake.hpp"
#include "holdback/sizing/site.hpp"

namespace holdback::sizing {

namespace {

constexpr double smallest_share = 0.8;  // of the full roll: readings are taken on a roll that is not quite new
constexpr int levels_up = 5;            // docs/guide.md: five pressures tell torque per pressure, threshold and drag

/// Most tension [N] of a job's web: the high end of its window, and what strength, strain and the wound roll allow.
double most_pull(const JobFit& job) {
  double most = job.tension.high;
  for (const WindowBound& bound : job.window.bounds)
    if (!is_lower(bound.id) && bound.id != BoundId::usual_most) most = std::min(most, bound.tension);
  return most;
}

const Roll* roll_of(const Stand& stand, const std::string& job) {
  for (const Job& one : stand.jobs)
    if (one.name == job) return &one.roll;
  return nullptr;
}

/// Chooses the job whose web bears the most torque on its full roll.
void choose_roll(const Stand& stand, const FitResult& result, Commissioning& out) {
  double most = 0;
  for (const JobFit& job : result.jobs) {
    const Roll* roll = roll_of(stand, job.job);
    const double torque = roll == nullptr ? 0 : most_pull(job) * roll->full_radius();
    if (torque <= most) continue;
    most = torque;
    out.job = job.job;
    out.diameter = roll->full_diameter;
    out.least_diameter = std::max(smallest_share * roll->full_diameter, roll->core_diameter);
    out.highest_pull = most_pull(job);
    out.lowest_pull = job.tension.low;
  }
}

class Settings {
 public:
  Settings(const Site& site, const Brake& brake, double step, Commissioning& out)
      : brake_(brake), step_(step), resolution_(site.pressure_step - site.hysteresis), out_(out) {
    floor_ = pressure_floor(site, brake);
  }

  void add(int pairs, bool sweep) {
    const auto levels = levels_for(pairs);
    if (levels.size() < 2) {
      out_.left_out.push_back(pairs);
      return;
    }
    if (!sweep) {
      point(pairs, levels[levels.size() / 2], PressureCourse::rising);
      if (levels.size() > 2) point(pairs, levels.back(), PressureCourse::rising);
      return;
    }
    for (const double pressure : levels) point(pairs, pressure, PressureCourse::rising);
    for (std::size_t i = levels.size() - 1; i-- > 0;) point(pairs, levels[i], PressureCourse::falling);
  }

  void point(int pairs, double pressure, PressureCourse course) {
    CommissioningPoint one;
    one.pairs = pairs;
    one.pressure = pressure;
    one.course = course;
    const double off = pressure > 0 ? out_.pressure_error : 0;
    one.torque = torque(pairs, pressure, 1) + out_.drag;
    one.torque_low = torque(pairs, pressure - off, out_.band_low) + out_.drag_low;
    one.torque_high = torque(pairs, pressure + off, out_.band_high) + out_.drag_high;
    const double radius = out_.diameter / 2;
    one.pull = one.torque / radius;
    one.pull_low = one.torque_low / radius;
    one.pull_high = one.torque_high / radius;
    one.slack = one.pull < out_.lowest_pull;
    out_.points.push_back(one);
  }

 private:
  double torque(int pairs, double pressure, double share) const {
    return out_.fit.brakes * pairs * physics::pad_torque(share * out_.torque_per_pressure, pressure, out_.threshold);
  }

  /// Highest pressure that neither brake nor web minds, whatever the friction of the grade.
  double top(int pairs) const {
    const double by_web = (out_.highest_pull * out_.least_diameter / 2 - out_.drag_high) / out_.fit.brakes;
    const double slope = pairs * out_.band_high * out_.torque_per_pressure;
    const double most = std::min(brake_.rated_torque, by_web);
    if (!(most > 0)) return 0;
    const double pressure = physics::pad_pressure_for(slope, most, out_.threshold) - out_.pressure_error;
    return std::min(pressure, out_.highest_pressure);
  }

  std::vector<double> levels_for(int pairs) const {
    const double high = top(pairs);
    for (const double grid : {step_, resolution_, 0.0}) {
      auto levels = even_levels(high, grid);
      if (levels.size() >= levels_up || grid == 0) return levels;
    }
    return {};
  }

  /// Up to five rising pressures from a fifth of the highest on, on the grid, none outside of floor and `high`.
  std::vector<double> even_levels(double high, double grid) const {
    const double trace = 1e-9 * high;
    const double top = grid > 0 ? grid * std::floor((high + trace) / grid) : high;
    const double low = std::max(floor_, top / levels_up);
    std::vector<double> levels;
    for (int i = 0; i < levels_up && top > low; ++i) {
      double pressure = low + (top - low) * i / (levels_up - 1);
      if (grid > 0) pressure = grid * std::round(pressure / grid);
      if (pressure < floor_ - trace) pressure += grid;
      if (pressure > high + trace || (!levels.empty() && pressure <= levels.back() + trace)) continue;
      levels.push_back(pressure);
    }
    return levels;
  }

  const Brake& brake_;
  double step_;
  double resolution_;
  double floor_{};
  Commissioning& out_;
};

const Brake* brake_of(const Stand& stand, const Fit& fit) {
  for (const Brake& brake : stand.brakes)
    if (brake.name == fit.brake) return &brake;
  return nullptr;
}

const Grade* grade_of(const Brake& brake, const Fit& fit) {
  for (const Grade& grade : brake.grades)
    if (grade.name == fit.grade) return &grade;
  return nullptr;
}

void give_constants(const Stand& stand, const Site& site, const Brake& brake, const Grade& grade, Commissioning& out) {
  const auto pair = physics::pair_torque_per_pressure(brake, grade);
  out.highest_pressure = pressure_ceiling(site, brake);
  out.rated_torque = out.fit.brakes * brake.rated_torque;
  out.torque_per_pressure = pair.capacity;
  out.band_low = 1 - grade.friction_band;
  out.band_high = (1 + grade.friction_band) * (pair.capacity > 0 ? pair.highest / pair.capacity : 1);
  out.threshold = brake.threshold_pressure;
  out.pressure_error = site.pressure_step;
  out.drag = site.drag + out.fit.brakes * brake.drag;
  out.drag_low = out.drag * std::max(0.0, 1 - stand.uncertainty.drag);
  out.drag_high = out.drag * (1 + stand.uncertainty.drag);
  out.highest_temperature = grade.fade_start.value_or(0);
}

}  // namespace

Commissioning commissioning(const Stand& stand, const FitResult& result, double step) {
  Commissioning out;
  out.fit = result.fit;
  const Brake* brake = brake_of(stand, out.fit);
  const Grade* grade = brake == nullptr ? nullptr : grade_of(*brake, out.fit);
  if (grade == nullptr) return out;
  const Site site = site_of(stand);
  give_constants(stand, site, *brake, *grade, out);
  choose_roll(stand, result, out);
  if (out.job.empty() || !(out.torque_per_pressure > 0)) return out;
  Settings settings(site, *brake, step, out);
  settings.point(out.fit.pairs, 0, PressureCourse::unknown);
  for (int pairs = 1; pairs <= out.fit.pairs; ++pairs) settings.add(pairs, pairs == 1 || pairs == out.fit.pairs);
  return out;
}

}  // namespace holdback::sizing
