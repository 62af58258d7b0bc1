#include "holdback/api/answer.hpp"
#include "holdback/api/motion.hpp"
#include "holdback/api/on_site.hpp"
#include "holdback/api/request_problem.hpp"
#include "holdback/api/stand_job.hpp"

#include <algorithm>

#include "holdback/files/stand_file.hpp"
#include "holdback/sizing/check.hpp"
#include "holdback/sizing/choose.hpp"
#include "holdback/sizing/plan.hpp"
#include "holdback/sizing/plausibility.hpp"

namespace holdback::api {

namespace {

template <class Named>
std::string names_of(const std::vector<Named>& all) {
  std::string names;
  for (const Named& one : all) names += (names.empty() ? "" : ", ") + one.name;
  return names;
}

bool known_job(const Stand& stand, const std::string& name) {
  return std::any_of(stand.jobs.begin(), stand.jobs.end(), [&](const Job& job) { return job.name == name; });
}

sizing::ChooseOptions choose_options(const Request& request) {
  return {request.job, request.all, request.brake, request.grade, request.brakes, request.threads, request.brief};
}

bool is_motion(const std::string& command) { return command == "simulate" || command == "tune"; }

bool is_on_site(const std::string& command) {
  return command == "measure" || command == "fit" || command == "diagnose" || command == "history";
}

// Which of the on-site commands lacks what it is about; hosts see to it, so that it is told plainly.
bool lacks_readings(const Request& request) {
  return (request.command == "measure" && !request.measure) || (request.command == "fit" && !request.fit) ||
         (request.command == "diagnose" && !request.log) || (request.command == "history" && !request.history);
}

bool does_without_stand(const Request& request) {
  return request.stand.text.empty() && (request.command == "measure" || request.command == "history");
}

bool chooses_a_fit(const std::string& command) {
  return command != "check" && command != "measure" && command != "history";
}

// What the request asks for must be in the stand: a job by its name, a fit by its words.
Problems problems_of(const Request& request, const Stand& stand) {
  Problems problems;
  if (!request.job.empty() && !known_job(stand, request.job))
    problems.push_back(
        request_problem("the stand has no such job", "--job", request.job, "one of: " + names_of(stand.jobs)));
  if (request.tolerance && !(*request.tolerance > 0 && *request.tolerance < 1))
    problems.push_back(request_problem("the tolerance of a hand card lies between 0 and 100 %", "--tolerance",
                                       units::show(*request.tolerance, Quantity::ratio, units::System::si),
                                       "such as 10 %"));
  if (chooses_a_fit(request.command) &&
      sizing::candidates(stand, sizing::site_of(stand), choose_options(request)).empty())
    problems.push_back(request_problem("no candidate brake is left to try", "--brake, --grade, --brakes", "",
                                       "one of the brakes " + names_of(stand.brakes) + " with its grades and numbers"));
  if (is_motion(request.command)) {
    const Problems more = unmovable(stand, request);
    problems.insert(problems.end(), more.begin(), more.end());
  }
  return problems;
}

Outcome outcome_of(const Choice& choice) {
  return choice.recommended && choice.uncovered.empty() ? Outcome::holds : Outcome::fails;
}

Outcome outcome_of(const Plan& plan) {
  const bool failing =
      std::any_of(plan.jobs.begin(), plan.jobs.end(), [](const JobPlan& job) { return job.state == State::fails; });
  return failing || plan.jobs.empty() ? Outcome::fails : Outcome::holds;
}

// Of several controls, one that holds is what was looked for.
Outcome outcome_of(const Simulation& simulation) {
  return simulation.runs.front().state == State::fails ? Outcome::fails : Outcome::holds;
}

void run(const Request& request, const Stand& stand, Answer& answer) {
  if (request.command == "check") {
    answer.check = sizing::check(stand);
  } else if (request.command == "size") {
    answer.choice = sizing::choose(stand, choose_options(request));
    answer.outcome = outcome_of(*answer.choice);
  } else if (request.command == "plan") {
    answer.plan = sizing::plan(stand, {choose_options(request), request.tolerance});
    answer.outcome = outcome_of(*answer.plan);
  } else if (request.command == "simulate") {
    answer.simulation = simulate(stand, request);
    answer.outcome = outcome_of(*answer.simulation);
  } else if (request.command == "measure") {
    measure(&stand, request, answer);
  } else if (request.command == "fit") {
    fit(stand, request, answer);
  } else if (request.command == "diagnose") {
    diagnose(stand, request, answer);
  } else if (request.command == "history") {
    history(&stand, request, answer);
  } else {
    answer.tuning = tune(stand, request);
    answer.outcome = answer.tuning->holds ? Outcome::holds : Outcome::fails;
  }
}

bool known_command(const std::string& command) {
  return command == "check" || command == "size" || command == "plan" || is_motion(command) || is_on_site(command);
}

}  // namespace

std::optional<ControlKind> control_called(const std::string& name) {
  if (name == "hand") return ControlKind::hand;
  if (name == "diameter") return ControlKind::diameter;
  if (name == "dancer") return ControlKind::dancer;
  if (name == "load cell" || name == "loadcell" || name == "load_cell") return ControlKind::load_cell;
  return std::nullopt;
}

namespace {

/// Reads and checks; what was read is left in `answer`, problems with it.
std::optional<Stand> read_into(Answer& answer, const Request& request) {
  answer.command = request.command;
  answer.outcome = Outcome::bad_input;
  if (!known_command(request.command)) {
    answer.problems.push_back(
        request_problem("unknown command", "command", request.command,
                        "one of: check, size, plan, simulate, tune, measure, fit, diagnose, history"));
    return std::nullopt;
  }
  if (lacks_readings(request)) {
    answer.problems.push_back(
        request_problem("the readings are missing", request.command, "",
                        "measure: method and readings; fit: table; diagnose: log; history: entries"));
    return std::nullopt;
  }
  files::StandFile file = files::read_stand(request.stand.text, request.stand.name);
  if (request.jobs) files::read_jobs(request.jobs->text, request.jobs->name, file, request.jobs->sheet);
  answer.problems = file.problems;
  answer.defaults = file.defaults;
  answer.columns = file.columns;
  if (has_errors(answer.problems)) return std::nullopt;

  Problems more = sizing::implausible(file.stand);
  const Problems asked = problems_of(request, file.stand);
  more.insert(more.end(), asked.begin(), asked.end());
  files::add_problems(more, request.jobs ? request.jobs->name : "", file);
  answer.problems = file.problems;
  if (has_errors(answer.problems)) return std::nullopt;
  return std::move(file.stand);
}

}  // namespace

StandRead read_stand_for(const Request& request) {
  StandRead read;
  read.stand = read_into(read.answer, request);
  return read;
}

// Without a stand: the readings alone.
void run_alone(const Request& request, Answer& answer) {
  answer.command = request.command;
  if (request.command == "measure") measure(nullptr, request, answer);
  if (request.command == "history") history(nullptr, request, answer);
}

Answer answer(const Request& request) {
  Answer answer;
  if (does_without_stand(request) && !lacks_readings(request)) {
    run_alone(request, answer);
    return answer;
  }
  const std::optional<Stand> stand = read_into(answer, request);
  if (!stand) return answer;
  answer.outcome = Outcome::holds;
  run(request, *stand, answer);
  return answer;
}

}  // namespace holdback::api
