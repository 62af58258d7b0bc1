// One run in numbers: how it ended, its phases, what sums it up.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/loop_words.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

constexpr std::size_t most_phases = 24;

Table phases_table(const std::vector<PhaseFacts>& phases, units::System system) {
  using Number = std::optional<double>;
  const auto positive = [](double value) { return value > 0 ? Number(value) : Number{}; };
  Rows<PhaseFacts> rows(phases, system);
  rows.text("phase", &PhaseFacts::what)
      .result("begins", Quantity::duration, &PhaseFacts::begin)
      .result("lasts", Quantity::duration, [](const PhaseFacts& phase) { return phase.end - phase.begin; })
      .result("Ø", Quantity::short_length, &PhaseFacts::diameter)
      .result("tension, lowest", Quantity::force, &PhaseFacts::lowest_tension)
      .result("highest", Quantity::force, &PhaseFacts::highest_tension)
      .result("outside", Quantity::duration, [=](const PhaseFacts& phase) { return positive(phase.outside); })
      .result("slack", Quantity::short_length, [=](const PhaseFacts& phase) { return positive(phase.slack); })
      .cells({"settled after", "", true}, [=](const PhaseFacts& phase) {
        return Cell{phase.settles ? meant(phase.settling, Quantity::duration, system, 2) : std::string("never"),
                    phase.settles ? Tone::normal : Tone::strong, false, State::holds};
      });
  return rows.under("Phase by phase; outside: time with the tension outside of its window");
}

void phases(Chapter& chapter, const std::vector<PhaseFacts>& all) {
  const auto count = std::min(all.size(), most_phases);
  const std::vector<PhaseFacts> first(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(count));
  chapter.table(phases_table(first, chapter.system()));
  if (count < all.size())
    chapter.say(fmt::format("And {} more, which the answer holds.",
                            report::counted(static_cast<int>(all.size() - count), "phase")),
                Tone::muted);
}

std::string outside_of(const MotionRun& run, units::System system) {
  if (!(run.outside > 0)) return "never";
  auto out = meant(run.outside, Quantity::duration, system, 2);
  if (run.moving > 0) out += ", " + meant(run.outside / run.moving, Quantity::ratio, system, 2) + " of moving";
  return out;
}

/// What the steps lost or made, of the energy that was slipped away.
std::string unaccounted(const EnergyBooks& energy, units::System system) {
  constexpr double little = 1e-5;
  if (!(energy.slipped > 0)) return meant(energy.residual, Quantity::energy, system);
  const double share = std::abs(energy.residual) / energy.slipped;
  return share < little ? "below " + given(little, Quantity::ratio, system) + " of it"
                        : meant(share, Quantity::ratio, system, 2) + " of it";
}

std::string times(double count) {
  if (!(count > 0)) return {};
  return count == 1 ? "once" : fmt::format("{:.0f} times", count);
}

void numbers(Chapter& chapter, const MotionRun& run) {
  const auto system = chapter.system();
  const auto show = [system](double si, Quantity kind) { return meant(si, kind, system); };
  const auto steady = run.run_highest > 0
                          ? show(run.run_lowest, Quantity::force) + " to " + show(run.run_highest, Quantity::force)
                          : std::string{};
  const auto slack = run.slack > 0
                         ? report::slack_of(run.slack, system) + " at " + show(run.slack_time, Quantity::duration)
                         : std::string("none");
  chapter.facts(
      {{"tension in steady run", steady},
       {"highest of all", show(run.peak, Quantity::force) + " at " + show(run.peak_time, Quantity::duration)},
       {"outside of the window", outside_of(run, system)},
       {"outside in steady run",
        run.steady_outside > 0 ? meant(run.steady_outside, Quantity::ratio, system, 2) : std::string{}},
       {"most slack", slack},
       {"settles within", run.settling > 0 ? meant(run.settling, Quantity::duration, system, 2) : std::string{}},
       {"hottest disc", show(run.disc_highest, Quantity::temperature)},
       {"hottest pads", show(run.pads_highest, Quantity::temperature)},
       {"highest pressure", show(run.highest_pressure, Quantity::pressure)},
       {"highest brake torque", show(run.highest_torque, Quantity::torque)},
       {"into brake and drag", show(run.energy.slipped, Quantity::energy)},
       {"energy unaccounted for", unaccounted(run.energy, system)},
       {"pad wear, of a pad", meant(run.pad_wear, Quantity::ratio, system, 2)},
       {"brake caught or let go", times(run.sticks)},
       {"dancer hit a stop", times(run.dancer_stops)},
       {"ran", spell(run.line_time, system) + ", " + show(run.web_run, Quantity::web_length)},
       {"ended", std::string(key_of(run.end))},
       {"computed by", fmt::format("{:.0f} {} steps", run.steps, key_of(run.method))}});
}

}  // namespace

void run_shown(Chapter& chapter, const MotionRun& run) {
  const auto system = chapter.system();
  if (run.end == RunEnd::failed) {
    chapter.verdict(State::fails, fmt::format("fails: the run stopped at {}: {}; none of it is to be relied on",
                                              meant(run.fault_time, Quantity::duration, system),
                                              run.fault.empty() ? "the steps failed" : run.fault));
  } else {
    chapter.verdict(run.state, draw::joined(std::string(key_of(run.state)), report::filled(run.verdict, system)));
  }
  if (run.accident) chapter.say("The scenario holds an accident: the web breaks or the air fails.", Tone::muted);
  phases(chapter, run.phases);
  numbers(chapter, run);
}

}  // namespace holdback::papers::selection
