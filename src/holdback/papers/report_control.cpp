// Control: jobs simulated through the usual scenario, with what was found, and the tuning of the loop.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/figures.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

std::string setting(const Simulation& simulation, units::System system) {
  const auto force = [system](double si) { return meant(si, Quantity::force, system); };
  const auto length = [system](double si) { return given(si, Quantity::short_length, system); };
  return fmt::format("{}; tension {}, window {} to {}; {}; roll from Ø {} to {}; scenario {}.",
                     under(simulation.fit, simulation.pairs), force(simulation.tension.setpoint),
                     force(simulation.tension.low), force(simulation.tension.high),
                     given(simulation.speed, Quantity::speed, system), length(simulation.full_diameter),
                     length(simulation.core_diameter), report::named(simulation.scenario));
}

State state_of(const MotionRun& run) { return run.end == RunEnd::failed ? State::fails : run.state; }

Table side_by_side(const std::vector<MotionRun>& runs, units::System system) {
  Rows<MotionRun> rows(runs, system);
  rows.text("control", &MotionRun::control)
      .state("state", state_of)
      .result("steady, lowest", Quantity::force, &MotionRun::run_lowest)
      .result("highest", Quantity::force, &MotionRun::run_highest)
      .result("peak", Quantity::force, &MotionRun::peak)
      .result("outside", Quantity::duration, &MotionRun::outside, 2)
      .result("slack", Quantity::short_length, &MotionRun::slack, 2)
      .result("settles within", Quantity::duration, &MotionRun::settling, 2)
      .result("hottest disc", Quantity::temperature, &MotionRun::disc_highest)
      .result("hottest pads", Quantity::temperature, &MotionRun::pads_highest);
  return rows.under("Controls side by side");
}

void one_run(Chapter& chapter, const Simulation& simulation, std::size_t index) {
  const auto& run = simulation.runs[index];
  chapter.heading("Control by " + run.control, 3);
  if (!run.trace.time.empty()) chapter.figure(draw::motion_figure(simulation, index, chapter.system()));
  run_shown(chapter, run);
}

void simulated(Chapter& chapter, const Simulation& simulation) {
  if (simulation.runs.empty()) return;
  const auto system = chapter.system();
  chapter.heading("Job " + report::named(simulation.job) + ", simulated");
  chapter.say(setting(simulation, system));
  if (simulation.runs.size() > 1) {
    chapter.table(side_by_side(simulation.runs, system));
    const auto best = sentence(simulation.best, system);
    if (!best.empty()) chapter.say("Best: " + best, Tone::strong);
  }
  for (std::size_t i = 0; i < simulation.runs.size(); ++i) one_run(chapter, simulation, i);
}

/// Whether the tuning's run is one that was simulated: a control without a loop runs the same either way.
bool is_shown(const Tuning& tuning, const Dossier& dossier) {
  return std::any_of(dossier.simulations.begin(), dossier.simulations.end(), [&](const Answer& answer) {
    if (!answer.simulation || answer.simulation->job != tuning.job) return false;
    const auto& runs = answer.simulation->runs;
    return std::any_of(runs.begin(), runs.end(), [&](const MotionRun& run) {
      return run.control == tuning.run.control && run.steps == tuning.run.steps && run.peak == tuning.run.peak;
    });
  });
}

}  // namespace

void control(Chapter& chapter, const Dossier& dossier) {
  for (const auto& answer : dossier.simulations)
    if (answer.simulation) simulated(chapter, *answer.simulation);
  for (const auto& answer : dossier.tunings)
    if (answer.tuning) tuning_shown(chapter, *answer.tuning, is_shown(*answer.tuning, dossier));
}

}  // namespace holdback::papers::selection
