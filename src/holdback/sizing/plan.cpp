#include "holdback/sizing/plan.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/brake.hpp"
#include "holdback/physics/pressure.hpp"
#include "holdback/physics/roll.hpp"
#include "holdback/sizing/notes.hpp"

namespace holdback::sizing {

namespace {

constexpr int automatic_points = 10;
constexpr int most_settings = 60;

// The brake as a planner sees it: nominal friction, as hot as it runs at the diameter in question, at the job's speed.
class Planner {
 public:
  Planner(const Job& job, const Candidate& candidate, const Site& site, int pairs)
      : job_(job),
        demand_(demand_of(job, site)),
        candidate_(candidate),
        site_(site),
        drag_(site.drag + candidate.brakes * candidate.brake->drag),
        cold_(physics::pair_torque_per_pressure(*candidate.brake, *candidate.grade).capacity * candidate.brakes *
              pairs) {}

  const Demand& demand() const { return demand_; }
  double core() const { return demand_.radius.front(); }
  double full() const { return demand_.radius.back(); }
  double threshold() const { return candidate_.brake->threshold_pressure; }
  double setpoint() const { return demand_.tension.setpoint; }

  // What holds the web back without the brake: drag, and the roll that turns faster as it thins. The second is most of
  // it near the core of a heavy, fast roll.
  double without_brake(double radius) const {
    const auto& roll = job_.roll;
    const double inertia =
        site_.shaft_inertia + candidate_.brakes * candidate_.brake->disc_inertia +
        physics::core_inertia(roll.core_mass, roll.core_radius()) +
        physics::web_inertia(job_.web.basis_weight, job_.web.width, job_.web.caliper, roll.core_radius(), radius);
    return drag_ + inertia * physics::roll_acceleration(0, job_.web.caliper, demand_.speed, radius);
  }
  double slope(double radius) const {
    const double torque = setpoint() * radius - without_brake(radius);
    const double temperature = disc_temperature(candidate_, site_, torque, demand_.speed / radius);
    return cold_ * physics::fade_factor(*candidate_.grade, temperature);
  }
  double pressure_for(double tension, double radius) const {
    return physics::pressure_for_tension(tension, radius, without_brake(radius), slope(radius), threshold());
  }
  double tension_at(double pressure, double radius) const {
    return physics::tension_at_pressure(pressure, radius, without_brake(radius), slope(radius), threshold());
  }

 private:
  const Job& job_;
  Demand demand_;
  const Candidate& candidate_;
  const Site& site_;
  double drag_;
  double cold_;  // [N·m/Pa] all engaged pairs
};

std::vector<PlanPoint> automatic(const Planner& planner) {
  std::vector<PlanPoint> points;
  for (int i = 0; i < automatic_points; ++i) {
    const double radius = planner.full() + (planner.core() - planner.full()) * i / (automatic_points - 1);
    const double pressure = planner.pressure_for(planner.setpoint(), radius);
    const double torque = physics::pad_torque(planner.slope(radius), pressure, planner.threshold());
    points.push_back({2 * radius, pressure, torque, planner.tension_at(pressure, radius)});
  }
  return points;
}

double rounded(double pressure, double step) { return step > 0 ? std::round(pressure / step) * step : pressure; }

// The pressure at which the tension starts as far below the setpoint as it ends above: it rises with the pressure.
double balanced(const Planner& planner, double from, double to) {
  double low = planner.threshold();
  double high = std::max(planner.pressure_for(planner.setpoint(), from), planner.pressure_for(planner.setpoint(), to));
  for (int i = 0; i < 60 && low < high; ++i) {
    const double middle = (low + high) / 2;
    const double sum = planner.tension_at(middle, from) + planner.tension_at(middle, to);
    (sum < 2 * planner.setpoint() ? low : high) = middle;
  }
  return (low + high) / 2;
}

// Settings at diameters in geometric progression, for between two of them tension rises as 1/R and a little more.
std::vector<HandSetting> settings(const Planner& planner, int count, double step) {
  const double ratio = std::pow(planner.full() / planner.core(), 1.0 / count);
  std::vector<HandSetting> card;
  for (int i = 0; i < count; ++i) {
    const double from = planner.full() / std::pow(ratio, i);
    const double to = i + 1 == count ? planner.core() : from / ratio;
    const double pressure = rounded(balanced(planner, from, to), step);
    card.push_back({2 * from, 2 * to, pressure, planner.tension_at(pressure, from), planner.tension_at(pressure, to)});
  }
  return card;
}

double worst_deviation(const std::vector<HandSetting>& card, double setpoint) {
  double worst = 0;
  for (const HandSetting& s : card)
    worst = std::max({worst, std::abs(s.tension_from / setpoint - 1), std::abs(s.tension_to / setpoint - 1)});
  return worst;
}

// The fewest settings by formula hold for any pressure; a regulator sets only whole steps, so a few more may be due.
void plan_by_hand(JobPlan& job, const Planner& planner, const AirSupply& air) {
  const int fewest = physics::hand_settings(planner.full(), planner.core(), job.tolerance);
  const double kept = job.tolerance * (1 + 1e-9);
  for (int count = fewest; count <= std::max(fewest, most_settings); ++count) {
    job.by_hand = settings(planner, count, air.resolution);
    if (worst_deviation(job.by_hand, planner.setpoint()) <= kept) return;
  }
  job.by_hand = settings(planner, fewest, air.resolution);
  job.notes.push_back({"the regulator's steps of {0} are too coarse for {1}: the card keeps {2}",
                       {{air.resolution, Quantity::pressure},
                        {job.tolerance, Quantity::ratio},
                        {worst_deviation(job.by_hand, planner.setpoint()), Quantity::ratio}}});
}

JobPlan plan_job(const Job& job, const Candidate& fit, const Site& site, const Stand& stand,
                 const std::optional<double>& tolerance) {
  const Demand demand = demand_of(job, site);
  const Assessment assessment = assess_job(demand, fit, site);
  const Planner planner(job, fit, site, assessment.pairs);
  JobPlan result;
  result.job = job.name;
  result.fit = fit_of(fit);
  result.pairs = assessment.pairs;
  result.state = assessment.state;
  result.binding = assessment.binding;
  result.tension = demand.tension;
  result.automatic = automatic(planner);
  result.tolerance = tolerance.value_or(demand.tolerance);
  plan_by_hand(result, planner, stand.air);
  if (assessment.state == State::fails)
    result.notes.push_back({"this fit does not cover the job (" + std::string(info(assessment.binding).name) +
                            " fails): do not run from this plan"});
  return result;
}

}  // namespace

Plan plan(const Stand& stand, const PlanOptions& options) {
  const Site site = site_of(stand);
  Plan result;
  result.title = stand.title;
  result.assumptions = assumptions(stand, site);
  result.cautions = cautions(stand, site);
  const Coverage coverage = cover(stand, site, candidates(stand, site, options.choose), options.choose.threads);
  if (coverage.fits.empty()) return result;
  std::vector<FitResult> results;
  for (std::size_t fit = 0; fit < coverage.fits.size(); ++fit) results.push_back(sum_up(coverage, fit, stand));
  const Candidate& fit = coverage.fits[rank(results, coverage.fits).front()];
  result.fit = fit_of(fit);
  for (const Job& job : stand.jobs)
    if (options.choose.job.empty() || options.choose.job == job.name)
      result.jobs.push_back(plan_job(job, fit, site, stand, options.tolerance));
  return result;
}

}  // namespace holdback::sizing
