#include "holdback/field/measure.hpp"

#include <algorithm>
#include <numbers>

#include "holdback/api/measure_readings.hpp"
#include "holdback/api/on_site.hpp"
#include "holdback/api/request_problem.hpp"
#include "holdback/field/measure_foretell.hpp"
#include "holdback/field/pluck.hpp"
#include "holdback/files/suggest.hpp"
#include "holdback/files/wav.hpp"
#include "holdback/physics/air.hpp"
#include "holdback/sizing/target.hpp"

namespace holdback::api {

namespace {

void refuse_method(const std::string& name, Problems& problems) {
  std::vector<std::string> known;
  for (const MeasureMethod& method : measure_methods()) known.emplace_back(method.key);
  const std::string near = files::nearest(name, known);
  problems.push_back(request_problem("no such way to measure" + (near.empty() ? "" : "; did you mean " + near + "?"),
                                     "method", name, measure_method_words()));
}

const Job* job_of(const Stand& stand, const std::string& name) {
  const auto found = std::find_if(stand.jobs.begin(), stand.jobs.end(),
                                  [&](const Job& job) { return name.empty() || job.name == name; });
  return found == stand.jobs.end() ? nullptr : &*found;
}

/// Wrap of the idler that the stand's load cell sits on: the one it names, else the last.
std::optional<double> cell_wrap(const Stand& stand) {
  if (!stand.load_cell || stand.idlers.empty()) return std::nullopt;
  for (const Idler& idler : stand.idlers)
    if (idler.name == stand.load_cell->idler) return idler.wrap;
  return stand.idlers.back().wrap;
}

double air_density(const Stand& stand) {
  return physics::air_density(physics::standard_pressure(stand.altitude), stand.ambient);
}

/// What the stand says: the job's web and window, the air, the spans. A stand of several jobs needs the name of one.
void add_stand(field::MeasureInput& input, const Stand& stand, const std::string& name, Problems& problems) {
  input.air_density = air_density(stand);
  input.span = stand.path.longest_span.value_or(stand.path.first_span);
  if (!(*input.span > 0)) input.span.reset();
  input.cell_wrap = cell_wrap(stand);
  input.caliper_share = stand.uncertainty.caliper;
  if (name.empty() && stand.jobs.size() > 1) {
    Problem problem = request_problem(
        "the stand has several jobs and none is named: neither web nor window is known from "
        "it",
        "--job", "", "the name of one of its jobs");
    problem.severity = Severity::warning;
    problems.push_back(problem);
    return;
  }
  const Job* job = job_of(stand, name);
  if (job == nullptr) return;
  input.job = job->name;
  input.web = job->web;
  input.target = sizing::tension_target(*job, stand.limits);
}

/// The frequency that the job's tension would give.
std::optional<double> expected_frequency(const field::MeasureInput& input) {
  if (!input.target || !(input.target->setpoint > 0)) return std::nullopt;
  return field::read_value(field::foretell(input, *input.method, input.target->setpoint).input, "frequency");
}

void add_recording(field::MeasureInput& input, const Source& recording, Problems& problems) {
  if (input.method->key != "pluck") {
    problems.push_back(request_problem("a recording goes with pluck alone", "recording", recording.name, "pluck"));
    return;
  }
  if (field::read_value(input, "frequency")) {
    problems.push_back(
        request_problem("give the recording or the frequency, not both", "frequency", "", "one of them"));
    return;
  }
  auto sound = files::read_wav(recording.text, recording.name);
  if (auto* problem = std::get_if<Problem>(&sound)) {
    problem->field = "recording";
    problems.push_back(std::move(*problem));
    return;
  }
  const field::PluckKnown known{expected_frequency(input), field::partial_spread(input)};
  input.sound = field::pluck_frequency(std::get<Sound>(sound), known, recording.name, problems);
}

/// What would be accepted for a reading that is missing or out of range.
void add_accepted(const MeasureMethod& method, Problems& problems) {
  for (Problem& problem : problems) {
    if (!problem.accepted.text.empty() || problem.severity != Severity::error) continue;
    if (const ReadingKey* key = reading_key(method, problem.field))
      problem.accepted = {problem.field + "=" + std::string(key->sample)};
  }
}

void add_problems(Answer& answer, const Problems& problems) {
  answer.problems.insert(answer.problems.end(), problems.begin(), problems.end());
  if (has_errors(problems)) answer.outcome = Outcome::bad_input;
}

/// Of what the stand file does not say, only web, path and air matter here.
void keep_defaults_that_matter(std::vector<DefaultUsed>& defaults) {
  std::erase_if(defaults, [](const DefaultUsed& one) {
    return one.field.rfind("web", 0) != 0 && one.field.rfind("path", 0) != 0 && one.field != "stand.altitude";
  });
}

}  // namespace

void measure(const Stand* stand, const Request& request, Answer& answer) {
  keep_defaults_that_matter(answer.defaults);
  Problems problems;
  const MeasureRequest& asked = *request.measure;
  field::MeasureInput input;
  input.method = measure_method(asked.method);
  if (input.method == nullptr) {
    refuse_method(asked.method, problems);
    return add_problems(answer, problems);
  }
  if (stand == nullptr && !request.job.empty())
    problems.push_back(request_problem("a job is named, but no stand", "--job", request.job, "--stand FILE with it"));
  if (stand != nullptr) add_stand(input, *stand, request.job, problems);
  input.readings = read_readings(*input.method, asked.readings, problems);
  if (asked.instruction) {
    if (!has_errors(problems)) answer.measurement = field::instruct(input);
    return add_problems(answer, problems);
  }
  if (asked.recording) add_recording(input, *asked.recording, problems);
  // What could not be read is not missing as well.
  Problems found;
  auto measured = field::measure(input, found);
  for (Problem& problem : found) {
    const bool told = std::any_of(problems.begin(), problems.end(), [&](const Problem& other) {
      return other.severity == Severity::error &&
             (other.field == problem.field || (other.field == "recording" && problem.field == "frequency"));
    });
    if (!told) problems.push_back(std::move(problem));
  }
  add_accepted(*input.method, problems);
  if (!has_errors(problems)) answer.measurement = std::move(measured);
  add_problems(answer, problems);
}

}  // namespace holdback::api
