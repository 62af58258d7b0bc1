#include "holdback/draw/figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "holdback/draw/elevation.hpp"
#include "holdback/draw/figure_parts.hpp"

namespace holdback::draw {

namespace {

constexpr std::size_t most_plans = 50;
constexpr std::size_t longest_name = 60;  // bytes of a job in the name of a file

/// Lower-case ASCII letters and digits as they are; a dash for anything between them.
std::string safe(std::string_view name) {
  std::string out;
  for (const char c : name) {
    const bool upper = c >= 'A' && c <= 'Z';
    const bool kept = upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (kept) {
      out += upper ? static_cast<char>(c - 'A' + 'a') : c;
    } else if (!out.empty() && out.back() != '-') {
      out += '-';
    }
    if (out.size() >= longest_name) break;
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out.empty() ? "job" : out;
}

/// Collects figures under names that differ.
class Figures {
 public:
  void add(const std::string& kind, const std::string& of, Scene scene) {
    const auto stem = of.empty() ? kind : kind + "-" + safe(of);
    auto name = stem;
    for (int i = 2; !names_.insert(name).second; ++i) name = fmt::format("{}-{}", stem, i);
    auto title = scene.title;
    figures_.push_back({std::move(name), std::move(title), std::move(scene)});
  }
  std::vector<NamedFigure> take() { return std::move(figures_); }

 private:
  std::set<std::string> names_{};
  std::vector<NamedFigure> figures_{};
};

/// The job of the figures: the one asked for, else that of the envelope, else the one with the least in hand.
const JobFit* job_of(const Choice& choice) {
  if (choice.job) return &*choice.job;
  if (!choice.recommended || choice.recommended->jobs.empty()) return nullptr;
  const auto& jobs = choice.recommended->jobs;
  if (choice.envelope) {
    const auto found =
        std::find_if(jobs.begin(), jobs.end(), [&](const JobFit& each) { return each.job == choice.envelope->job; });
    if (found != jobs.end()) return &*found;
  }
  return &*std::min_element(jobs.begin(), jobs.end(),
                            [](const JobFit& a, const JobFit& b) { return a.margin < b.margin; });
}

std::string under_of(const Choice& choice, const std::string& job, const JobFit* on_fit) {
  std::string out = job;
  if (choice.recommended) out += " · " + fit_text(choice.recommended->fit);
  if (on_fit != nullptr) out += fmt::format("; {} on", on_fit->pairs);
  return out;
}

void add_window(Figures& figures, const JobFit& job, const std::string& under, units::System system) {
  if (job.window.over_speed.empty() && job.window.over_roll.empty()) return;
  figures.add("window", job.job, window_figure(job.window, job.tension, under, system));
}

void add_job(Figures& figures, const Choice& choice, units::System system) {
  const auto* job = job_of(choice);
  if (choice.envelope && !choice.envelope->diameter.empty()) {
    const auto& envelope = *choice.envelope;
    const auto* same = job != nullptr && job->job == envelope.job ? job : nullptr;
    const auto under = under_of(choice, envelope.job, same);
    figures.add("torque", envelope.job, torque_figure(envelope, same, under, system));
    figures.add("temperature", envelope.job, temperature_figure(envelope, same, under, system));
    figures.add("pressure", envelope.job, pressure_figure(envelope, same, under, system));
  }
  if (job == nullptr) return;
  const auto under = under_of(choice, job->job, job);
  if (job->thermal && !job->thermal->time.empty())
    figures.add("heat", job->job, heat_figure(*job->thermal, job, under, system));
  add_window(figures, *job, under, system);
  if (job->likelihood) figures.add("drivers", job->job, drivers_figure(*job->likelihood, under));
}

/// The stand with the roll of the job that the other figures show, else of the first one.
void add_stand(Figures& figures, const Choice& choice, const Stand& stand, units::System system) {
  if (stand.jobs.empty()) return;
  const auto* shown_job = job_of(choice);
  const auto found = std::find_if(stand.jobs.begin(), stand.jobs.end(),
                                  [&](const Job& job) { return shown_job != nullptr && job.name == shown_job->job; });
  const Job& job = found == stand.jobs.end() ? stand.jobs.front() : *found;
  const Fit* fit = choice.recommended ? &choice.recommended->fit : nullptr;
  figures.add("stand", job.name, elevation_figure(stand, job, fit, system));
}

void add_runs(Figures& figures, const Simulation& simulation, units::System system) {
  const auto& runs = simulation.runs;
  const auto kept = [](const MotionRun& run) { return !run.trace.time.empty(); };
  if (runs.size() > 1 && std::any_of(runs.begin(), runs.end(), kept))
    figures.add("comparison", simulation.job, comparison_figure(simulation, system));
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (!kept(runs[i])) continue;
    const auto kind = runs.size() > 1 ? "run-" + safe(runs[i].control) : std::string("run");
    figures.add(kind, simulation.job, motion_figure(simulation, i, system));
  }
}

void add_tuning(Figures& figures, const Tuning& tuning, units::System system) {
  const auto& loops = tuning.loops;
  if (std::any_of(loops.begin(), loops.end(), [](const LoopTuning& loop) { return !loop.points.empty(); }))
    figures.add("margins", tuning.job, tuning_figure(tuning, system));
  if (!tuning.runout.speed.empty()) figures.add("runout", tuning.job, runout_figure(tuning, system));
}

void add_history(Figures& figures, const History& history, units::System system) {
  const auto known = [](const PadCourse& course) { return !course.points.empty(); };
  if (std::any_of(history.courses.begin(), history.courses.end(), known))
    figures.add("history", history.stand, history_figure(history, system));
}

void add_diagnosis(Figures& figures, const Diagnosis& found, units::System system) {
  if (!found.trace.time.empty()) figures.add("log", found.job, log_figure(found, system));
  if (!found.by_frequency.empty() || !found.by_order.empty())
    figures.add("spectra", found.job, log_spectra_figure(found, system));
  if (!found.friction.empty()) figures.add("friction", found.job, log_friction_figure(found, system));
}

void add_measurement(Figures& figures, const Measurement& found, units::System system) {
  figures.add("measure", found.method, measure_figure(found, system));
  if (found.tension) figures.add("measured", found.method, measured_figure(found, system));
}

}  // namespace

std::vector<NamedFigure> figures_of(const Answer& answer, units::System system, const Stand* stand) {
  Figures figures;
  if (answer.choice && stand != nullptr) add_stand(figures, *answer.choice, *stand, system);
  if (answer.choice) {
    const auto& choice = *answer.choice;
    if (choice.recommended && !choice.recommended->jobs.empty()) figures.add("coverage", "", coverage_figure(choice));
    add_job(figures, choice, system);
  }
  if (answer.plan) {
    const auto& jobs = answer.plan->jobs;
    for (std::size_t i = 0; i < std::min(jobs.size(), most_plans); ++i)
      figures.add("pressure", jobs[i].job, pressure_figure(jobs[i], system));
  }
  if (answer.simulation) add_runs(figures, *answer.simulation, system);
  if (answer.tuning) add_tuning(figures, *answer.tuning, system);
  if (answer.fit && !answer.fit->readings.empty()) figures.add("fit", "", fit_figure(*answer.fit, system));
  if (answer.history) add_history(figures, *answer.history, system);
  if (answer.diagnosis) add_diagnosis(figures, *answer.diagnosis, system);
  if (answer.measurement) add_measurement(figures, *answer.measurement, system);
  return figures.take();
}

}  // namespace holdback::draw
