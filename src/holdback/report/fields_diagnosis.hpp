// The fields of a log that was judged.
#pragma once

#include <cmath>
#include <optional>
#include <vector>

#include "holdback/report/words.hpp"
#include "holdback/results/diagnosis.hpp"

namespace holdback::report {

/// A stretch of the thinned log; a channel that is not logged there, or has no reading, is left out.
struct LogTracePoint {
  double time{};
  std::optional<double> speed{};
  std::optional<double> tension{};
  std::optional<double> lowest_tension{};
  std::optional<double> highest_tension{};
  std::optional<double> pressure{};
  std::optional<double> diameter{};
};

inline std::vector<LogTracePoint> points_of(const LogTrace& trace) {
  const auto at = [](const std::vector<double>& values, std::size_t i) {
    const bool there = i < values.size() && std::isfinite(values[i]);
    return there ? std::optional<double>(values[i]) : std::nullopt;
  };
  std::vector<LogTracePoint> points;
  for (std::size_t i = 0; i < trace.time.size(); ++i)
    points.push_back({trace.time[i], at(trace.speed, i), at(trace.tension, i), at(trace.lowest_tension, i),
                      at(trace.highest_tension, i), at(trace.pressure, i), at(trace.diameter, i)});
  return points;
}

constexpr auto fields_of(Of<LogTracePoint> /*unused*/) {
  using P = LogTracePoint;
  return record("log_point", "a stretch of the log; what has no reading there is left out",  //
                field("time", &P::time, Quantity::duration, "of its middle"),
                field("speed", &P::speed, Quantity::speed, "mean"),
                field("tension", &P::tension, Quantity::force, "mean"),
                field("lowest_tension", &P::lowest_tension, Quantity::force, "in it"),
                field("highest_tension", &P::highest_tension, Quantity::force, "in it"),
                field("pressure", &P::pressure, Quantity::pressure, "mean"),
                field("diameter", &P::diameter, Quantity::short_length, "of the roll, logged or estimated"));
}

constexpr auto fields_of(Of<LogLeftOut> /*unused*/) {
  using L = LogLeftOut;
  return record("left_out", "rows of a log that were left out for one reason",  //
                field("why", &L::why, "the reason"), field("rows", &L::rows, Quantity::number, "how many"),
                field("first_line", &L::first_line, Quantity::number, "line of the first of them"));
}

constexpr auto fields_of(Of<LogReading> /*unused*/) {
  using R = LogReading;
  return record("log_reading", "a log as it was read",  //
                field("name", &R::name, "of the log"), field("bytes", &R::bytes, Quantity::number, "that were read"),
                field("lines", &R::lines, Quantity::number, "all of them"),
                field("rows", &R::rows, Quantity::number, "handed on"),
                field("first_stamp", &R::first_stamp, "as written; empty when the rows are counted"),
                field("span", &R::span, Quantity::duration, "from the first row handed on to the last"),
                field("interval", &R::interval, Quantity::duration, "median from row to row"),
                field("interval_spread", &R::interval_spread, Quantity::duration, "of it, 5th to 95th percentile"),
                field("repeated", &R::repeated, Quantity::number, "rows with the stamp of the row above"),
                field("clock_set_back", &R::clock_set_back, Quantity::number, "how often the clock was set back"),
                field("left_out", &R::left_out, "rows that were left out, by reason"),
                field("assumptions", &R::assumptions, "how the log was understood where it does not say so itself"));
}

constexpr auto fields_of(Of<ChannelFacts> /*unused*/) {
  using C = ChannelFacts;
  return record("channel", "what one channel of the log held; values in the SI unit of the channel",  //
                field("channel", &C::channel, "which"),
                field("readings", &C::readings, Quantity::number, "cells with a number"),
                field("missing", &C::missing, Quantity::number, "cells without one"),
                field("dropouts", &C::dropouts, Quantity::number, "times that it fell away for a moment"),
                field("stuck", &C::stuck, Quantity::duration, "longest that it stood still while it should have moved"),
                field("lowest", &C::lowest, Quantity::number, "of its readings, dropouts left out"),
                field("highest", &C::highest, Quantity::number, "of its readings, dropouts left out"),
                field("mean", &C::mean, Quantity::number, "of its readings, dropouts left out"));
}

constexpr auto fields_of(Of<LogGap> /*unused*/) {
  return record("log_gap", "a hole in the log's times",  //
                field("begin", &LogGap::begin, Quantity::duration, "last row before it"),
                field("end", &LogGap::end, Quantity::duration, "first row behind it"));
}

constexpr auto fields_of(Of<PhaseTension> /*unused*/) {
  using P = PhaseTension;
  return record("phase_tension", "the tension over one kind of phase; means are over time",  //
                field("phase", &P::phase, "which"),
                field("time", &P::time, Quantity::duration, "in it, with a reading of tension"),
                field("share", &P::share, Quantity::ratio, "of the log's time"),
                field("inside", &P::inside, Quantity::ratio, "share of the time inside the window"),
                field("below", &P::below, Quantity::ratio, "share below it"),
                field("above", &P::above, Quantity::ratio, "share above it"),
                field("mean", &P::mean, Quantity::force, "of the tension"),
                field("deviation", &P::deviation, Quantity::force, "standard deviation"),
                field("lowest", &P::lowest, Quantity::force, "of the tension"),
                field("highest", &P::highest, Quantity::force, "of the tension"));
}

constexpr auto fields_of(Of<LogChange> /*unused*/) {
  using C = LogChange;
  return record(
      "log_change", "a stop or a ramp as it went",  //
      field("phase", &C::phase, "ramp up, ramp down or emergency stop"),
      field("begin", &C::begin, Quantity::duration, "of the log's time"),
      field("end", &C::end, Quantity::duration, "of the log's time"),
      field("from_speed", &C::from_speed, Quantity::speed, "of the web"),
      field("to_speed", &C::to_speed, Quantity::speed, "of the web"),
      field("rate", &C::rate, Quantity::acceleration, "mean, negative when it slows"),
      field("diameter", &C::diameter, Quantity::short_length, "of the roll, when known"),
      field("lowest_tension", &C::lowest_tension, Quantity::force, "in it"),
      field("highest_tension", &C::highest_tension, Quantity::force, "in it"),
      field("slack", &C::slack, Quantity::duration, "with next to no tension while web moved"),
      field("settling", &C::settling, Quantity::duration, "from its end until the tension stays in the window"),
      field("settles", &C::settles, "whether it does before the next change"),
      field("state", &C::state, "tight: outside of the window for a while; fails: slack or worse"),
      field("verdict", &C::verdict, "why, in words"));
}

constexpr auto fields_of(Of<LogSpectrum> /*unused*/) {
  using S = LogSpectrum;
  return record("log_spectrum",
                "amplitudes of the tension in steady run; empty lists when there is none. The unit of `place` and "
                "`resolution` is rad/s by frequency, 1 by order",  //
                field("place", &S::place, Quantity::number, "frequency [rad/s] or order [1], evenly spaced"),
                field("amplitude", &S::amplitude, Quantity::force, "of a sine at that place"),
                field("floor", &S::floor, Quantity::force, "what chance alone makes there"),
                field("resolution", &S::resolution, Quantity::number, "width of one line before grouping"),
                field("segments", &S::segments, Quantity::number, "stretches that were averaged"));
}

constexpr auto fields_of(Of<LogPeak> /*unused*/) {
  using P = LogPeak;
  return record("log_peak", "a line of a spectrum that stands out of the noise",  //
                field("by_order", &P::by_order, "found over orders of the roll, else over frequency"),
                field("order", &P::order, Quantity::number, "of the roll at the mean diameter; 0 when not known"),
                field("frequency", &P::frequency, Quantity::frequency, "at mean speed and diameter; 0 when not known"),
                field("amplitude", &P::amplitude, Quantity::force, "of the sine"),
                field("share", &P::share, Quantity::ratio, "of the setpoint"),
                field("false_alarm", &P::false_alarm, Quantity::ratio, "chance that noise alone makes one so high"),
                field("source", &P::source, "what likely makes it"),
                field("confidence", &P::confidence, Quantity::ratio, "in the source"),
                field("harmonic", &P::harmonic, "of the source: 1 is the fundamental"),
                field("idler", &P::idler, "name of the idler meant; else empty"),
                field("diameter", &P::diameter, Quantity::short_length, "of the roller that fits; 0: none"),
                field("why", &P::why, "what speaks for the source"));
}

constexpr auto fields_of(Of<FrictionTrack> /*unused*/) {
  using F = FrictionTrack;
  return record("friction_track", "effective over nominal friction as the log goes on; empty lists when not known",  //
                field("time", &F::time, Quantity::duration, "of stretches of steady run"),
                field("ratio", &F::ratio, Quantity::number, "effective over nominal friction"),
                field("diameter", &F::diameter, Quantity::short_length, "of the roll"),
                field("temperature", &F::temperature, Quantity::temperature, "of the disc; empty when not logged"),
                field("level", &F::level, Quantity::number, "median of the ratios"),
                field("level_uncertainty", &F::level_uncertainty, Quantity::number, "standard uncertainty by scatter"),
                field("first", &F::first, Quantity::number, "at the beginning, by the fitted line"),
                field("last", &F::last, Quantity::number, "at the end, by the fitted line"),
                field("change", &F::change, Quantity::number, "last less first"),
                field("change_uncertainty", &F::change_uncertainty, Quantity::number, "standard uncertainty of it"),
                field("per_kelvin", &F::per_kelvin, Quantity::fade, "change with the disc's temperature, when logged"));
}

constexpr auto fields_of(Of<HandTurn> /*unused*/) {
  using H = HandTurn;
  return record("hand_turn", "a new setting of the pressure by hand",  //
                field("time", &H::time, Quantity::duration, "of the log"),
                field("pressure_before", &H::pressure_before, Quantity::pressure, "as it stood"),
                field("pressure_after", &H::pressure_after, Quantity::pressure, "as it stood then"),
                field("diameter", &H::diameter, Quantity::short_length, "of the roll, when known"),
                field("tension_before", &H::tension_before, Quantity::force, "mean"),
                field("tension_after", &H::tension_after, Quantity::force, "mean"));
}

constexpr auto fields_of(Of<LikelyCause> /*unused*/) {
  using C = LikelyCause;
  return record("likely_cause", "what may be wrong",  //
                field("kind", &C::kind, "which cause"), field("confidence", &C::confidence, Quantity::ratio, "in it"),
                field("what", &C::what, "what it is and how much it does"),
                field("evidence", &C::evidence, "what in the log speaks for it and against it"),
                field("to_try", &C::to_try, "what to look at or change first"),
                field("to_tell_apart", &C::to_tell_apart, "reading that would decide; may be empty"));
}

constexpr auto fields_of(Of<Diagnosis> /*unused*/) {
  using T = Diagnosis;
  return record(
      "diagnosis", "a log, read and judged",  //
      field("title", &T::title, "of the stand"), field("log", &T::log, "name of the log"),
      field("job", &T::job, "that the log was held against"),
      field("tension", &T::tension, "where the tension comes from, and its window"),
      field("control", &T::control, "of the stand: hand, diameter, load cell or dancer"),
      field("pairs", &T::pairs, "believed engaged on each brake"),
      field("state", &T::state, "of the tension in steady run, the stops and the ramps"),
      field("verdict", &T::verdict, "the first cause in a sentence"),
      field("reading", &T::reading, "what was read and what was left out"),
      field("rows", &T::rows, Quantity::number, "judged"), field("begin", &T::begin, Quantity::duration, "of the log"),
      field("end", &T::end, Quantity::duration, "of the log"),
      field("interval", &T::interval, Quantity::duration, "usual time between two rows"),
      field("longest_gap", &T::longest_gap, Quantity::duration, "between two rows that follow on each other"),
      field("gaps", &T::gaps, Quantity::number, "how many"),
      field("longest_gaps", &T::longest_gaps, "at most 20, in the order of time"),
      field("channels", &T::channels, "those that the log has"),
      field("diameter_source", &T::diameter_source, "where the diameter of the roll comes from"),
      field("first_diameter", &T::first_diameter, Quantity::short_length, "0 when not known"),
      field("last_diameter", &T::last_diameter, Quantity::short_length, "0 when not known"),
      field("web_run", &T::web_run, Quantity::web_length, "by the speed logged"),
      field("steady_speed", &T::steady_speed, Quantity::speed, "mean in steady run"),
      field("steady_diameter", &T::steady_diameter, Quantity::short_length, "mean in steady run; 0 when not known"),
      field("phases", &T::phases, "those that occur"), field("changes", &T::changes, "stops and ramps, at most 500"),
      field("changes_found", &T::changes_found, Quantity::number, "all of them"),
      field("by_frequency", &T::by_frequency, "the spectrum in time"),
      field("by_order", &T::by_order, "the spectrum in turns of the roll"),
      field("peaks", &T::peaks, "highest first, at most 30"),
      field("loop_frequency", &T::loop_frequency, Quantity::frequency, "predicted crossover of the loop; 0: no loop"),
      field("mode_frequency", &T::mode_frequency, Quantity::frequency, "predicted swing of roll and web; 0: not known"),
      field("friction", &T::friction, "as the log shows it"),
      field("hand_turns", &T::hand_turns, "settings by hand, at most 200"),
      field("hand_turns_found", &T::hand_turns_found, Quantity::number, "all of them"),
      field("causes", &T::causes, "most likely first"),
      derived(
          "trace", [](const T& it) { return points_of(it.trace); }, "the log thinned out"),
      field("assumptions", &T::assumptions, "what the models assume"),
      field("cautions", &T::cautions, "what a person must heed"));
}

}  // namespace holdback::report
