// The fields of a tension that was measured on site.
#pragma once

#include "holdback/report/words.hpp"
#include "holdback/results/measurement.hpp"
#include "holdback/units/units.hpp"

namespace holdback::report {

constexpr auto fields_of(Of<BudgetLine> /*unused*/) {
  using T = BudgetLine;
  return record("budget_line", "one input of the tension, and what it makes unsure",  //
                field("key", &T::key, "of the reading"), field("name", &T::name, "as a person reads it"),
                field("value", &T::value, "mean where it was read several times"),
                field("uncertainty", &T::uncertainty, "standard uncertainty of the input"),
                field("sensitivity", &T::sensitivity, Quantity::number, "newton per SI unit of the input"),
                field("contribution", &T::contribution, Quantity::force, "standard uncertainty it makes"),
                field("share", &T::share, Quantity::ratio, "of the variance of the tension"),
                field("readings", &T::readings, "how often it was read; 0: from the job, or taken"),
                field("origin", &T::origin, "where value and uncertainty are from"));
}

constexpr auto fields_of(Of<MeasuredPart> /*unused*/) {
  using T = MeasuredPart;
  return record("measured_part", "a value beside the tension",  //
                field("key", &T::key, "name for programs"), field("name", &T::name, "as a person reads it"),
                field("value", &T::value, "of the part"),
                field("uncertainty", &T::uncertainty, "standard uncertainty"));
}

constexpr auto fields_of(Of<DrawnCheck> /*unused*/) {
  using T = DrawnCheck;
  return record("drawn_check", "the tension by draws from the inputs' distributions (JCGM 101)",  //
                field("draws", &T::draws, "how many"), field("points", &T::points, "what kind of points"),
                field("seed", &T::seed, "of the points"), field("mean", &T::mean, Quantity::force, "of the draws"),
                field("uncertainty", &T::uncertainty, Quantity::force, "standard; none with two or three readings"),
                field("low", &T::low, Quantity::force, "end of the 95 % interval"),
                field("high", &T::high, Quantity::force, "end of the 95 % interval"),
                field("tolerance", &T::tolerance, Quantity::force, "by which the ends of both intervals may differ"),
                field("agrees", &T::agrees, "the linear interval is as good"),
                field("linear_low", &T::linear_low, Quantity::force, "end of the linear 95 % interval"),
                field("linear_high", &T::linear_high, Quantity::force, "end of the linear 95 % interval"));
}

constexpr auto fields_of(Of<MeasuredWindow> /*unused*/) {
  using T = MeasuredWindow;
  return record("measured_window", "how the tension lies in the window of the job",  //
                field("job", &T::job, "of the stand"), field("low", &T::low, Quantity::force, "end of the window"),
                field("high", &T::high, Quantity::force, "end of the window"),
                field("setpoint", &T::setpoint, Quantity::force, "of the job"),
                field("probability", &T::probability, Quantity::ratio, "that the tension lies inside"),
                field("below", &T::below, Quantity::ratio, "probability that it lies below"),
                field("above", &T::above, Quantity::ratio, "probability that it lies above"),
                field("state", &T::state, "inside, may be outside, outside"),
                field("verdict", &T::verdict, "in a sentence"));
}

constexpr auto fields_of(Of<SimpleFormula> /*unused*/) {
  using T = SimpleFormula;
  return record("simple_formula", "the usual short cut, and how wrong it is here",  //
                field("formula", &T::formula, "in words"), field("tension", &T::tension, Quantity::force, "it gives"),
                field("error", &T::error, Quantity::force, "too high where positive"),
                field("error_share", &T::error_share, Quantity::ratio, "of the tension"));
}

constexpr auto fields_of(Of<BetterReading> /*unused*/) {
  using T = BetterReading;
  return record("better_reading", "the reading that would help most",  //
                field("key", &T::key, "of the reading"), field("what", &T::what, "what to do"),
                field("uncertainty", &T::uncertainty, Quantity::force, "standard uncertainty of the tension then"));
}

constexpr auto fields_of(Of<MethodOutlook> /*unused*/) {
  using T = MethodOutlook;
  return record("method_outlook", "what a method would be worth on this web and span, with usual instruments",  //
                field("method", &T::method, "push, sag, pluck, pull or cell"),
                field("possible", &T::possible, "whether enough is known to tell"),
                field("uncertainty", &T::uncertainty, Quantity::force, "standard; 0 when not possible"),
                field("share", &T::share, Quantity::ratio, "of the tension"),
                field("why", &T::why, "what limits it, or what is missing"));
}

constexpr auto fields_of(Of<SpectrumPeak> /*unused*/) {
  using T = SpectrumPeak;
  return record("spectrum_peak", "one peak of the spectrum of a plucked span",  //
                field("frequency", &T::frequency, Quantity::frequency, "of the peak"),
                field("level", &T::level, Quantity::ratio, "of the highest"),
                field("partial", &T::partial, "which one of the span's; 0: none"));
}

constexpr auto fields_of(Of<PluckSound> /*unused*/) {
  using T = PluckSound;
  return record("pluck_sound", "what a recording of a plucked span says",  //
                field("rate", &T::rate, Quantity::frequency, "of sampling"),
                field("duration", &T::duration, Quantity::duration, "that was used"),
                field("frequency", &T::frequency, Quantity::frequency, "of the span"),
                field("partial", &T::partial, "which of the span's tones the frequency is, 1 the lowest"),
                field("uncertainty", &T::uncertainty, Quantity::frequency, "standard"),
                field("peaks", &T::peaks, "from low to high"));
}

constexpr auto fields_of(Of<ReadingField> /*unused*/) {
  using T = ReadingField;
  return record("reading_field", "a reading of the method",  //
                field("key", &T::key, "its name"),
                derived(
                    "kind", [](const T& it) { return units::key_of(it.kind); }, "kind of quantity"),
                derived(
                    "unit", [](const T& it) { return units::si_unit_of(it.kind); }, "in SI"),
                field("needed", &T::needed, "nothing is found without it"),
                field("from_web", &T::from_web, "the job of the stand gives it"), field("help", &T::help, "one line"),
                field("otherwise", &T::otherwise, "taken when it is not read"),
                field("step", &T::step, "what the usual instrument shows"));
}

constexpr auto fields_of(Of<Instruction> /*unused*/) {
  using T = Instruction;
  return record("instruction", "how to take the readings",  //
                field("title", &T::title, "what is done"), field("idea", &T::idea, "why it tells the tension"),
                field("steps", &T::steps, "in order"), field("cautions", &T::cautions, "what a person must heed"),
                field("expected", &T::expected, "what to expect on the job's web"),
                field("fields", &T::fields, "what is read"));
}

constexpr auto fields_of(Of<Measurement> /*unused*/) {
  using T = Measurement;
  return record(
      "measurement", "the tension of a web, from readings by one method",  //
      field("method", &T::method, "push, sag, pluck, pull or cell"),
      field("job", &T::job, "of the stand; empty when none was named"),
      field("tension", &T::tension, Quantity::force, "over the whole width; none without readings"),
      field("per_width", &T::per_width, Quantity::tension_per_width, "where the width is known"),
      field("uncertainty", &T::uncertainty, Quantity::force, "standard uncertainty of the tension"),
      field("freedom", &T::freedom, Quantity::number, "effective degrees of freedom; none: very many, or by draws"),
      field("coverage", &T::coverage, Quantity::number, "expanded over standard uncertainty"),
      field("expanded", &T::expanded, Quantity::force, "expanded uncertainty, 95 %: half of the interval"),
      field("low", &T::low, Quantity::force, "end of the 95 % interval"),
      field("high", &T::high, Quantity::force, "end of the 95 % interval"),
      field("by_draws", &T::by_draws, "interval and window are those of the draws, which reject the linear ones"),
      field("budget", &T::budget, "what each input makes unsure, the largest first"),
      field("parts", &T::parts, "values beside the tension"), field("drawn", &T::drawn, "check by draws (JCGM 101)"),
      field("window", &T::window, "against the window of the job"), field("simple", &T::simple, "the usual short cut"),
      field("better", &T::better, "the reading that would help most"),
      field("methods", &T::methods, "every method on this web and span, the best first"),
      field("sound", &T::sound, "what the recording says"),
      field("instruction", &T::instruction, "how to take the readings"),
      field("assumptions", &T::assumptions, "what the models assume"),
      field("cautions", &T::cautions, "what a person must heed"));
}

}  // namespace holdback::report
