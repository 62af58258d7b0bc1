// The tuning of a loop: settings, margins over the roll, what shakes the tension, the run that proves it.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/figures.hpp"
#include "holdback/draw/loop_words.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

using Number = std::optional<double>;

constexpr std::size_t most_rows = 10;  // of the table over the roll

bool by_dancer(const Tuning& tuning) { return tuning.control == key_of(ControlKind::dancer); }

/// What a real gain is measured in, as a person sets it: pressure over what the sensor says.
Quantity sensed(const Tuning& tuning) { return by_dancer(tuning) ? Quantity::short_length : Quantity::force; }

std::string real_gain_unit(const Tuning& tuning, units::System system) {
  return units::unit_of(Quantity::pressure, system) + "/" + units::unit_of(sensed(tuning), system);
}

std::string real_gain(const Tuning& tuning, const LoopTuning& loop, units::System system) {
  const double shown = units::in_display_unit(loop.real_gain, Quantity::pressure, system) /
                       units::in_display_unit(1, sensed(tuning), system);
  return meant(shown, Quantity::number, system);
}

bool stable_throughout(const LoopTuning& loop) {
  return std::all_of(loop.points.begin(), loop.points.end(), [](const TunePoint& point) { return point.stable; });
}

Cell number_cell(std::string text) { return {std::move(text), Tone::normal, false, State::holds}; }

Cell gain_cell(double margin, bool stable) {
  if (!stable) return {"unstable", Tone::strong, false, State::fails};
  return number_cell(margin > 0 ? fmt::format("{:.1f}", draw::decibels(margin)) : "no limit");
}

Number phase_of(double margin, bool stable) { return stable && margin > 0 ? Number(margin) : Number{}; }

void settings(Chapter& chapter, const Tuning& tuning) {
  const auto system = chapter.system();
  const auto show = [system](double si, Quantity kind) { return meant(si, kind, system); };
  chapter.say(fmt::format("{}; tension {}, window {} to {}.", under(tuning.fit, tuning.pairs),
                          show(tuning.tension.setpoint, Quantity::force), show(tuning.tension.low, Quantity::force),
                          show(tuning.tension.high, Quantity::force)));
  if (tuning.loops.empty()) return chapter.say("Control by " + tuning.control + " has no loop to tune.");
  chapter.say(
      fmt::format("Asked: a gain margin of at least {:.2f} ({:.1f} dB) and a phase margin of at least {}. The "
                  "loop has {} of dead time and {} of lag.",
                  tuning.asked_gain_margin, draw::decibels(tuning.asked_gain_margin),
                  show(tuning.asked_phase_margin, Quantity::angle), show(tuning.dead_time, Quantity::duration),
                  show(tuning.lag, Quantity::duration)));
}

void advice(Chapter& chapter, const Tuning& tuning) {
  const auto state = tuning.holds ? State::holds : State::fails;
  const std::string head = tuning.holds ? "holds: the window is held" : "fails: the window is not held";
  chapter.verdict(state, head + (tuning.advice.text.empty() ? "" : ". " + sentence(tuning.advice, chapter.system())));
}

Table loops_table(const Tuning& tuning, units::System system) {
  const auto index = [&tuning](const LoopTuning& loop) {
    return static_cast<std::size_t>(&loop - tuning.loops.data());
  };
  Rows<LoopTuning> rows(tuning.loops, system);
  rows.text("settings", [&](const LoopTuning& loop) { return draw::name_of_loop(tuning, index(loop)); })
      .result("gain", Quantity::number, &LoopTuning::gain)
      .result("integral time", Quantity::duration, &LoopTuning::integral_time)
      .result("derivative time", Quantity::duration,
              [](const LoopTuning& loop) { return loop.derivative_time > 0 ? Number(loop.derivative_time) : Number{}; })
      .cells({"real gain", real_gain_unit(tuning, system), true},
             [&](const LoopTuning& loop) { return number_cell(real_gain(tuning, loop, system)); })
      .cells({"gain margin", "dB", true},
             [](const LoopTuning& loop) { return gain_cell(loop.least_gain_margin, stable_throughout(loop)); })
      .result(
          "phase margin", Quantity::angle,
          [](const LoopTuning& loop) { return phase_of(loop.least_phase_margin, stable_throughout(loop)); }, 2)
      .result("least at Ø", Quantity::short_length, &LoopTuning::worst_diameter)
      .result("crossover", Quantity::frequency, &LoopTuning::slowest_crossover)
      .state("state", &LoopTuning::state);
  return rows.under(
      "Settings, and the least margins over the roll; gain and times as the stand file takes them, the "
      "real gain at the full roll");
}

/// Places of the diameters shown, the first and the last among them.
std::vector<std::size_t> shown_of(std::size_t count) {
  std::vector<std::size_t> out;
  const auto rows = std::min(count, most_rows);
  for (std::size_t row = 0; row < rows; ++row) out.push_back(rows > 1 ? row * (count - 1) / (rows - 1) : 0);
  return out;
}

Table over_roll(const Tuning& tuning, units::System system) {
  const auto& points = tuning.loops.front().points;
  const auto at = shown_of(points.size());
  Rows<std::size_t> rows(at, system);
  rows.result("Ø", Quantity::short_length, [&](std::size_t i) { return points[i].diameter; })
      .result("mode", Quantity::frequency, [&](std::size_t i) { return points[i].mode_frequency; })
      .cells({"its damping", "", true}, [&](std::size_t i) {
        const double damping = points[i].mode_damping;
        return Cell{fmt::format("{:.3f}", damping), damping < 0 ? Tone::strong : Tone::normal, false, State::holds};
      });
  for (std::size_t k = 0; k < tuning.loops.size(); ++k) {
    const auto& loop = tuning.loops[k];
    const auto name = draw::name_of_loop(tuning, k);
    const auto known = [&loop](std::size_t i) { return i < loop.points.size(); };
    rows.cells({name + ", gain", "dB", true},
               [&loop, known](std::size_t i) {
                 return known(i) ? gain_cell(loop.points[i].gain_margin, loop.points[i].stable) : number_cell("–");
               })
        .result(
            name + ", phase", Quantity::angle,
            [&loop, known](std::size_t i) {
              return known(i) ? phase_of(loop.points[i].phase_margin, loop.points[i].stable) : Number{};
            },
            2);
  }
  return rows.under("Over the roll: the mode of roll against web, and the margins of each loop");
}

/// Where the runout meets the mode: first, middle and last.
std::string meetings(const RunoutMap& runout, units::System system) {
  std::vector<std::string> met;
  for (std::size_t i = 0; i < std::min(runout.meets.size(), runout.diameter.size()); ++i)
    if (runout.meets[i] > 0)
      met.push_back(fmt::format("at {} with Ø {}", meant(runout.meets[i], Quantity::speed, system),
                                meant(runout.diameter[i], Quantity::short_length, system)));
  if (met.size() > 3) met = {met.front(), met[met.size() / 2], met.back()};
  std::string out;
  for (const auto& each : met) out += (out.empty() ? "" : ", ") + each;
  return out;
}

void shakes(Chapter& chapter, const Tuning& tuning) {
  const auto system = chapter.system();
  const auto& runout = tuning.runout;
  const auto show = [system](double si, Quantity kind) { return meant(si, kind, system); };
  std::vector<std::string> items;
  if (runout.speed.empty()) {
    items.emplace_back("the roll runs true: no runout is given");
  } else {
    items.push_back(fmt::format("runout, loop closed: at worst ±{} of the setpoint, at {} with Ø {}",
                                show(runout.worst_share, Quantity::ratio), show(runout.worst_speed, Quantity::speed),
                                show(runout.worst_diameter, Quantity::short_length)));
    const auto met = meetings(runout, system);
    items.push_back(met.empty() ? "it does not meet the mode of roll and web up to " +
                                      show(runout.speed.back(), Quantity::speed)
                                : "it meets the mode of roll and web " + met);
  }
  items.push_back(tuning.stick_slip_onset > 0 ? "stick-slip: below " + show(tuning.stick_slip_onset, Quantity::speed) +
                                                    " friction makes the swing grow, at some diameter"
                                              : std::string("stick-slip: friction makes no swing grow at any speed"));
  chapter.heading("What shakes the tension", 3);
  chapter.items(std::move(items));
  if (!runout.speed.empty()) chapter.figure(draw::runout_figure(tuning, system));
}

void others(Chapter& chapter, const Tuning& tuning) {
  std::vector<std::string> items;
  for (const auto& other : tuning.others)
    items.push_back(draw::joined(other.control + (other.holds ? " holds the window" : " does not hold it"),
                                 report::filled(other.evidence, chapter.system())));
  chapter.heading("Other controls that were tried", 3);
  chapter.items(std::move(items));
}

}  // namespace

void tuning_shown(Chapter& chapter, const Tuning& tuning, bool run_is_shown) {
  const auto system = chapter.system();
  chapter.heading("Job " + report::named(tuning.job) + ", loop tuned");
  settings(chapter, tuning);
  advice(chapter, tuning);
  const bool points = !tuning.loops.empty() && !tuning.loops.front().points.empty();
  chapter.table(loops_table(tuning, system));
  if (points) chapter.table(over_roll(tuning, system));
  if (points) chapter.figure(draw::tuning_figure(tuning, system));
  shakes(chapter, tuning);
  if (!tuning.run.control.empty()) {
    chapter.heading("The usual scenario, run with these settings", 3);
    if (run_is_shown)
      chapter.say("It runs as simulated above.");
    else
      run_shown(chapter, tuning.run);
  }
  others(chapter, tuning);
}

}  // namespace holdback::papers::selection
