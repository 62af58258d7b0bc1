#include "holdback/sizing/plausibility.hpp"

#include <cmath>
#include <numbers>

#include "holdback/physics/roll.hpp"
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

}  // namespace

Problems implausible(const Stand& stand) {
  Problems problems;
  for (std::size_t j = 0; j < stand.jobs.size(); ++j) {
    check_length(stand, j, problems);
    check_mass(stand, j, problems);
    check_tension(stand, j, problems);
  }
  return problems;
}

}  // namespace holdback::sizing
