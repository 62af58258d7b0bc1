#include "holdback/sizing/plausibility.hpp"

#include <cmath>
#include <numbers>

#include "holdback/physics/roll.hpp"
#include "holdback/sizing/cooling_curve.hpp"
#include "holdback/sizing/target.hpp"

namespace holdback::sizing {

namespace {

constexpr double worth_a_word = 0.03;  // labels round, paper is measured at a few per cent
constexpr double not_the_same = 0.10;

std::string path_of_job(std::size_t index) { return "job[" + std::to_string(index) + "]"; }

// The path of the roll's own table when the job runs it as it stands there; a job table may bring a roll of its own.
std::string path_of_roll(const Stand& stand, std::size_t job) {
  for (std::size_t i = 0; i < stand.rolls.size(); ++i)
    if (stand.rolls[i] == stand.jobs[job].roll) return "roll[" + std::to_string(i) + "]";
  return path_of_job(job) + ".roll";
}

// A problem when `stated` and `computed` differ by more than labels do.
bool differs(double stated, double computed, Problem& problem) {
  const double off = std::abs(stated / computed - 1);
  if (off <= worth_a_word) return false;
  problem.severity = off > not_the_same ? Severity::error : Severity::warning;
  return true;
}

void check_length(const Stand& stand, std::size_t j, Problems& problems) {
  const Job& job = stand.jobs[j];
  if (!job.roll.length) return;
  const double computed = physics::roll_length(job.roll.core_radius(), job.roll.full_radius(), job.web.caliper);
  Problem problem;
  if (!differs(*job.roll.length, computed, problem)) return;
  const double face = std::numbers::pi * (std::pow(job.roll.full_radius(), 2) - std::pow(job.roll.core_radius(), 2));
  problem.what = {"the length of roll \"" + job.roll.name + "\" does not fit its diameters and the caliper of web \"" +
                      job.web.name + "\": {0} stated, {1} by diameters {2} to {3} at {4}",
                  {{*job.roll.length, Quantity::web_length},
                   {computed, Quantity::web_length},
                   {job.roll.core_diameter, Quantity::short_length},
                   {job.roll.full_diameter, Quantity::short_length},
                   {job.web.caliper, Quantity::caliper}}};
  problem.field = path_of_roll(stand, j) + ".length";
  problem.accepted = {"about {0}; or a caliper of {1}",
                      {{computed, Quantity::web_length}, {face / *job.roll.length, Quantity::caliper}}};
  problems.push_back(problem);
}

void check_mass(const Stand& stand, std::size_t j, Problems& problems) {
  const Job& job = stand.jobs[j];
  if (!job.roll.mass) return;
  const double length = physics::roll_length(job.roll.core_radius(), job.roll.full_radius(), job.web.caliper);
  const double computed = physics::web_mass(job.web.basis_weight, job.web.width, length);
  Problem problem;
  if (!differs(*job.roll.mass, computed, problem)) return;
  problem.what = {"the mass of roll \"" + job.roll.name + "\" does not fit web \"" + job.web.name +
                      "\": {0} stated, {1} by {2} over {3} of web {4} wide",
                  {{*job.roll.mass, Quantity::mass},
                   {computed, Quantity::mass},
                   {job.web.basis_weight, Quantity::basis_weight},
                   {length, Quantity::web_length},
                   {job.web.width, Quantity::short_length}}};
  problem.field = path_of_roll(stand, j) + ".mass";
  problem.accepted = {
      "about {0}; or a basis weight of {1}",
      {{computed, Quantity::mass}, {*job.roll.mass / (job.web.width * length), Quantity::basis_weight}}};
  problems.push_back(problem);
}

void check_tension(const Stand& stand, std::size_t j, Problems& problems) {
  const Job& job = stand.jobs[j];
  const TensionTarget target = tension_target(job, stand.limits);
  if (target.setpoint <= 0) {
    Problem problem;
    problem.what = {"job \"" + job.name + "\" gives no tension, and its web \"" + job.web.name +
                    "\" gives nothing to recommend one from"};
    problem.field = path_of_job(j) + ".tension";
    problem.accepted = {"a tension for the job; or the web's material, yield_strength or modulus"};
    problems.push_back(problem);
    return;
  }
  const double per_width = target.setpoint / job.web.width;
  if (!job.web.wound_tension || per_width <= *job.web.wound_tension) return;
  Problem problem;
  problem.severity = Severity::warning;
  problem.what = {"job \"" + job.name +
                      "\" unwinds its web harder than it was wound, {0} against {1}: layers may slip "
                      "on each other (common practice, no source)",
                  {{per_width, Quantity::tension_per_width}, {*job.web.wound_tension, Quantity::tension_per_width}}};
  problem.field = path_of_job(j) + ".tension";
  problem.accepted = {"at most {0}", {{*job.web.wound_tension, Quantity::tension_per_width}}};
  problems.push_back(problem);
}

/// The web lies on the shaft between its bearings, or beyond the front one.
void check_shaft(const Stand& stand, std::size_t j, Problems& problems) {
  if (!stand.shaft) return;
  const Shaft& shaft = *stand.shaft;
  const double beside = shaft.support == Support::cantilever
                            ? shaft.roll_centre - shaft.bearing_span
                            : std::min(shaft.roll_centre, shaft.bearing_span - shaft.roll_centre);
  const double width = stand.jobs[j].web.width;
  if (width <= 2 * beside) return;
  Problem problem;
  problem.what = {"the web of job \"" + stand.jobs[j].name +
                      "\", {0} wide, does not fit on the shaft: there are {1} from the middle of the roll to the next "
                      "bearing",
                  {{width, Quantity::short_length}, {beside, Quantity::short_length}}};
  problem.field = "shaft.roll_centre";
  problem.accepted = {"at least {0} on either side of the middle of the roll", {{width / 2, Quantity::short_length}}};
  problems.push_back(problem);
}

/// A map that is far from what the disc's dimensions make is likelier a slip of a unit than a marvel.
void check_map(const Stand& stand, std::size_t b, Problems& problems) {
  const Brake& brake = stand.brakes[b];
  if (brake.cooling.empty()) return;
  const double ratio = CoolingCurve(brake, site_of(stand)).map_over_model();
  constexpr double odd = 8;  // fins and forced air make a few times what a plain disc sheds
  if (ratio < odd && ratio > 1 / odd) return;
  const CoolingPoint& middle = brake.cooling[brake.cooling.size() / 2];
  Problem problem;
  problem.severity = Severity::warning;
  problem.what = {"the cooling map of brake \"" + brake.name +
                      "\" gives {0} at {1}, but a disc of its dimensions would shed about {2}",
                  {{middle.power, Quantity::power},
                   {middle.speed, Quantity::rotational_speed},
                   {middle.power / ratio, Quantity::power}}};
  problem.field = "brake[" + std::to_string(b) + "].cooling";
  problem.accepted = {"the powers and the cooling_rise of the data sheet; look at their units"};
  problems.push_back(problem);
}

}  // namespace

Problems implausible(const Stand& stand) {
  Problems problems;
  for (std::size_t j = 0; j < stand.jobs.size(); ++j) {
    check_length(stand, j, problems);
    check_mass(stand, j, problems);
    check_tension(stand, j, problems);
    check_shaft(stand, j, problems);
  }
  for (std::size_t b = 0; b < stand.brakes.size(); ++b) check_map(stand, b, problems);
  return problems;
}

}  // namespace holdback::sizing
