#include "holdback/api/dossier.hpp"

#include <algorithm>

#include "holdback/api/motion.hpp"
#include "holdback/api/on_site.hpp"
#include "holdback/api/stand_job.hpp"
#include "holdback/sizing/check.hpp"
#include "holdback/sizing/choose.hpp"
#include "holdback/sizing/commissioning.hpp"
#include "holdback/sizing/plan.hpp"
#include "holdback/sizing/worked.hpp"

namespace holdback::api {

namespace {

using papers::Dossier;

constexpr std::size_t most_in_depth = 3;

/// Where the file lies is nothing to print.
std::string without_folders(const std::string& path) {
  const auto slash = path.find_last_of("/\\");
  return slash == std::string::npos ? path : path.substr(slash + 1);
}

/// The first job in this order; jobs in depth are those that a checker would ask for first.
template <class Less>
std::string first_by(const std::vector<JobFit>& jobs, Less less) {
  return std::min_element(jobs.begin(), jobs.end(), less)->job;
}

/// The job that was asked for; else the one with the least in hand, the hottest, and the heaviest roll.
std::vector<std::string> jobs_in_depth(const FitResult& best, const std::string& asked) {
  if (!asked.empty()) return {asked};
  if (best.jobs.empty()) return {};
  std::vector<std::string> names{
      first_by(best.jobs, [](const JobFit& a, const JobFit& b) { return a.margin < b.margin; }),
      first_by(best.jobs, [](const JobFit& a, const JobFit& b) { return a.hottest > b.hottest; }),
      first_by(best.jobs, [](const JobFit& a, const JobFit& b) { return a.roll.mass > b.roll.mass; })};
  std::vector<std::string> once;
  for (auto& name : names)
    if (std::find(once.begin(), once.end(), name) == once.end()) once.push_back(std::move(name));
  once.resize(std::min(once.size(), most_in_depth));
  return once;
}

/// The same stand with one job alone: what is asked of it in depth takes no account of the others.
Stand alone(const Stand& stand, const std::string& name) {
  Stand one = stand;
  one.jobs.clear();
  std::copy_if(stand.jobs.begin(), stand.jobs.end(), std::back_inserter(one.jobs),
               [&](const Job& job) { return job.name == name; });
  return one;
}

/// A request for one job on the fit that was recommended for the mix.
Request about(const Request& base, const std::string& command, const std::string& job, const Fit& fit) {
  Request request = base;
  request.command = command;
  request.job = job;
  request.brake = fit.brake;
  request.grade = fit.grade;
  request.brakes = fit.brakes;
  request.brief = false;
  request.compare.clear();
  request.progress = {};
  return request;
}

sizing::ChooseOptions options_of(const Request& request) {
  return {request.job, request.all, request.brake, request.grade, request.brakes, request.threads, false};
}

Answer sized(const Stand& stand, const Request& request) {
  Answer answer;
  answer.command = "size";
  answer.choice = sizing::choose(stand, options_of(request));
  answer.outcome = answer.choice->recommended && answer.choice->uncovered.empty() ? Outcome::holds : Outcome::fails;
  return answer;
}

Answer planned(const Stand& stand, const Request& request) {
  Answer answer;
  answer.command = "plan";
  answer.plan = sizing::plan(stand, {options_of(request), request.tolerance});
  return answer;
}

/// A job in motion, or the reason why it cannot be moved.
Answer moved(const Stand& stand, const Request& request) {
  Answer answer;
  answer.command = request.command;
  answer.problems = unmovable(stand, request);
  if (has_errors(answer.problems)) {
    answer.outcome = Outcome::bad_input;
    return answer;
  }
  if (request.command == "simulate") {
    answer.simulation = simulate(stand, request);
    answer.outcome = answer.simulation->runs.front().state == State::fails ? Outcome::fails : Outcome::holds;
  } else {
    answer.tuning = tune(stand, request);
    answer.outcome = answer.tuning->holds ? Outcome::holds : Outcome::fails;
  }
  return answer;
}

bool has_a_loop(const Stand& stand) {
  return stand.control.kind == ControlKind::dancer || stand.control.kind == ControlKind::load_cell;
}

void ask_in_depth(Dossier& dossier, const PapersRequest& request, const FitResult& best) {
  const auto names = jobs_in_depth(best, request.base.job);
  const double steps = static_cast<double>(names.size());
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (request.base.progress) request.base.progress("job in depth", 0.2 + 0.8 * static_cast<double>(i) / steps);
    const Stand one = alone(dossier.stand, names[i]);
    const auto ask = [&](const char* command) { return about(request.base, command, names[i], best.fit); };
    dossier.in_depth.push_back(sized(one, ask("size")));
    dossier.simulations.push_back(moved(one, ask("simulate")));
    if (has_a_loop(one)) dossier.tunings.push_back(moved(one, ask("tune")));
  }
  if (names.empty() || !dossier.in_depth.front().choice->job) return;
  const Stand one = alone(dossier.stand, names.front());
  dossier.worked = sizing::worked_job(one, *dossier.in_depth.front().choice->job, best.fit);
}

/// How the tension of each job is checked by a sideways push.
std::vector<Answer> pushes(const Stand& stand) {
  std::vector<Answer> all;
  for (const Job& job : stand.jobs) {
    Request request;
    request.command = "measure";
    request.job = job.name;
    request.measure = MeasureRequest{"push", {}, {}, true};
    Answer answer;
    answer.command = request.command;
    measure(&stand, request, answer);
    all.push_back(std::move(answer));
  }
  return all;
}

/// The grid of pressures that a person sets with ease.
double round_pressure(units::System system) {
  return std::get<double>(units::parse(system == units::System::us ? "1 psi" : "0.1 bar", Quantity::pressure));
}

}  // namespace

papers::Dossier make_dossier(const PapersRequest& request, const Stand& stand, const Answer& read, Depth depth) {
  Dossier dossier;
  dossier.file = without_folders(request.base.stand.name);
  dossier.date = request.date;
  dossier.system = request.system;
  dossier.stand = stand;
  if (request.base.progress) request.base.progress("choice for the mix", 0);
  Request mix = request.base;
  mix.job.clear();
  mix.all = false;
  dossier.size = sized(stand, mix);
  dossier.size.check = sizing::check(stand);
  dossier.size.defaults = read.defaults;
  dossier.size.problems = read.problems;
  const auto& best = dossier.size.choice->recommended;
  if (!best || depth == Depth::choice) return dossier;
  if (request.base.progress) request.base.progress("pressure plans", 0.1);
  dossier.plan = planned(stand, about(request.base, "plan", "", best->fit));
  dossier.pushes = pushes(stand);
  dossier.commissioning = sizing::commissioning(stand, *best, round_pressure(request.system));
  ask_in_depth(dossier, request, *best);
  return dossier;
}

}  // namespace holdback::api
