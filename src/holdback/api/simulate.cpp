#include <algorithm>
#include <tuple>

#include "holdback/api/motion.hpp"
#include "holdback/api/motion_notes.hpp"
#include "holdback/api/stand_job.hpp"

namespace holdback::api {

namespace {

/// Better first: by state, then by slack, then by the share of moving time in which the tension leaves its window, then
/// by the band of steady running.
bool is_better(const MotionRun& a, const MotionRun& b) {
  const auto rank = [](const MotionRun& run) {
    const double share = run.moving > 0 ? run.outside / run.moving : 0;
    return std::tuple(run.state, run.slack > 1e-3 ? run.slack : 0, share, run.run_highest - run.run_lowest);
  };
  return rank(a) < rank(b);
}

Note best_of(const std::vector<MotionRun>& runs) {
  const MotionRun& best = runs.front();
  const MotionRun& next = runs[1];
  const auto share = [](const MotionRun& run) { return run.moving > 0 ? run.outside / run.moving : 0; };
  const std::string verdict = best.state == State::fails ? "None of these controls holds; least bad is " : "Take ";
  return {verdict + best.control + ": outside of the window for {0} of the moving time, against {1} with " +
              next.control + "; most slack {2} against {3}.",
          {{share(best), Quantity::ratio},
           {share(next), Quantity::ratio},
           {best.slack, Quantity::short_length},
           {next.slack, Quantity::short_length}}};
}

}  // namespace

Simulation simulate(const Stand& stand, const Request& request) {
  const StandJob job(stand, request);
  const Scenario scenario = job.scenario(request.scenario);
  Simulation made;
  made.title = stand.title;
  made.job = job.job().name;
  made.scenario = scenario.name;
  made.fit = job.fit();
  made.pairs = job.pairs();
  made.tension = job.tension();
  made.full_diameter = job.job().roll.full_diameter;
  made.core_diameter = job.job().roll.core_diameter;
  made.speed = job.job().speed;
  std::vector<ControlKind> kinds = request.compare;
  if (kinds.empty()) kinds = {stand.control.kind};
  // The same for all controls, so that they are compared on one stand.
  const bool each =
      request.idlers == Idlers::each ||
      (request.idlers == Idlers::as_needed &&
       std::any_of(kinds.begin(), kinds.end(), [&](ControlKind kind) { return job.idlers_matter(kind); }));
  for (const ControlKind kind : kinds) {
    dynamics::RunRequest run = job.run_request(kind, scenario, each);
    if (request.progress) run.progress = [&](double share) { request.progress(std::string(key_of(kind)), share); };
    made.runs.push_back(dynamics::run(run));
  }
  if (made.runs.size() > 1) {
    std::stable_sort(made.runs.begin(), made.runs.end(), is_better);
    made.best = best_of(made.runs);
  }
  made.assumptions = motion_assumptions(stand, job, kinds, each);
  made.cautions = motion_cautions(job);
  return made;
}

}  // namespace holdback::api
