// The fields of a brake that was fitted to readings. A number with its interval is a record of one kind each, so that
// every value has a unit.
#pragma once

#include "holdback/report/words.hpp"
#include "holdback/results/brake_fit.hpp"

namespace holdback::report {

/// One of the numbers of a fitted number: value, low, high, in the file.
constexpr auto part(std::string_view key, FittedNumber BrakeFit::*number, double FittedNumber::*which, Quantity kind,
                    std::string_view help) {
  const auto get = [number, which](const BrakeFit& fit) { return fit.*number.*which; };
  return Field<decltype(get)>{key, get, kind, help};
}
constexpr auto part(std::string_view key, std::optional<FittedNumber> BrakeFit::*number, double FittedNumber::*which,
                    Quantity kind, std::string_view help) {
  const auto get = [number, which](const BrakeFit& fit) {
    return fit.*number ? std::optional<double>((*(fit.*number)).*which) : std::nullopt;
  };
  return Field<decltype(get)>{key, get, kind, help};
}

constexpr BrakeCause last(Of<BrakeCause> /*unused*/) { return last_brake_cause; }
constexpr PressureCourse last(Of<PressureCourse> /*unused*/) { return PressureCourse::falling; }

constexpr auto fields_of(Of<FittedReading> /*unused*/) {
  using T = FittedReading;
  return record("fitted_reading", "one reading beside what the fitted brake would give",  //
                field("row", &T::row, "of the table, as a sheet counts"),
                field("pressure", &T::pressure, Quantity::pressure, "as read"),
                field("pairs", &T::pairs, "engaged on each brake"),
                field("course", &T::course, "which way the pressure was moved"),
                field("torque", &T::torque, Quantity::torque, "at the shaft, drag included"),
                field("fitted", &T::fitted, Quantity::torque, "what the fitted brake gives there"),
                field("residual", &T::residual, Quantity::torque, "torque less fitted"),
                field("outlier", &T::outlier, "too far off: left out of the fit"));
}

constexpr auto fields_of(Of<BrakeVerdict> /*unused*/) {
  using T = BrakeVerdict;
  return record("brake_verdict", "what the readings may show",  //
                field("cause", &T::cause, "which"),
                field("share", &T::share, Quantity::ratio, "how likely among all causes; absent for a remark"),
                field("grade", &T::grade, "of wrong_grade: the one that fits better; else empty"),
                field("pair", &T::pair, "of dead_pair: which one, as they are engaged; 0: not known"),
                field("what", &T::what, "in words"), field("evidence", &T::evidence, "what speaks for it"),
                field("remedy", &T::remedy, "what to look at or to do"));
}

constexpr auto fields_of(Of<NextReading> /*unused*/) {
  using T = NextReading;
  return record("next_reading", "a reading to take next; widths are half of the 95 % interval, 0 when not known",  //
                field("pressure", &T::pressure, Quantity::pressure, "to set; 0: the brake released"),
                field("pairs", &T::pairs, "to engage on each brake"),
                field("torque", &T::torque, Quantity::torque, "to expect at the shaft"),
                field("slope_now", &T::slope_now, Quantity::ratio, "width of the torque per pressure before it"),
                field("slope_then", &T::slope_then, Quantity::ratio, "after it"),
                field("threshold_now", &T::threshold_now, Quantity::pressure, "width of the threshold before it"),
                field("threshold_then", &T::threshold_then, Quantity::pressure, "after it"));
}

constexpr auto fields_of(Of<FileChange> /*unused*/) {
  using T = FileChange;
  return record("file_change", "a key of the stand file that the fit changes",  //
                field("owner", &T::owner, "brake and grade"), field("key", &T::key, "of the file"),
                field("before", &T::before, "as written; empty when the key was not there"),
                field("after", &T::after, "as written now"));
}

constexpr auto fields_of(Of<BrakeFit> /*unused*/) {
  using T = BrakeFit;
  constexpr auto slope = Quantity::torque_per_pressure;
  constexpr auto share = Quantity::ratio;
  constexpr auto pressure = Quantity::pressure;
  constexpr auto torque = Quantity::torque;
  return record(
      "brake_fit", "the constants of a real brake, fitted to readings, with 95 % intervals",  //
      field("title", &T::title, "of the stand"), field("fit", &T::fit, "the brake, and most pairs that were engaged"),
      field("sufficient", &T::sufficient, "the readings carry a fit"),
      part("torque_per_pressure", &T::torque_per_pressure, &FittedNumber::value, slope, "of one pair; 0 without a fit"),
      part("torque_per_pressure_low", &T::torque_per_pressure, &FittedNumber::low, slope, "low end of the interval"),
      part("torque_per_pressure_high", &T::torque_per_pressure, &FittedNumber::high, slope, "high end"),
      part("torque_per_pressure_in_file", &T::torque_per_pressure, &FittedNumber::in_file, slope, "nominal"),
      field("median_torque_per_pressure", &T::median_torque_per_pressure, slope,
            "by repeated medians; 0: not to be had"),
      part("friction", &T::friction, &FittedNumber::value, Quantity::number,
           "effective; absent for a brake known by its data sheet"),
      part("friction_share", &T::friction_share, &FittedNumber::value, share, "of the grade's nominal"),
      part("friction_share_low", &T::friction_share, &FittedNumber::low, share, "low end of the interval"),
      part("friction_share_high", &T::friction_share, &FittedNumber::high, share, "high end"),
      field("band_low", &T::band_low, share, "of the grade, friction radius included"),
      field("band_high", &T::band_high, share, "of the grade, friction radius included"),
      part("threshold", &T::threshold, &FittedNumber::value, pressure,
           "as the gauge shows it; below zero: the gauge is off"),
      part("threshold_low", &T::threshold, &FittedNumber::low, pressure, "low end of the interval"),
      part("threshold_high", &T::threshold, &FittedNumber::high, pressure, "high end"),
      part("threshold_in_file", &T::threshold, &FittedNumber::in_file, pressure, "of the brake"),
      part("drag", &T::drag, &FittedNumber::value, torque, "of shaft and brakes together"),
      part("drag_low", &T::drag, &FittedNumber::low, torque, "low end of the interval"),
      part("drag_high", &T::drag, &FittedNumber::high, torque, "high end"),
      part("drag_in_file", &T::drag, &FittedNumber::in_file, torque, "of shaft and brakes together"),
      field("drag_read", &T::drag_read, "from the readings; else the file's is taken"),
      part("hysteresis", &T::hysteresis, &FittedNumber::value, pressure,
           "between rising and falling at the same torque"),
      part("hysteresis_low", &T::hysteresis, &FittedNumber::low, pressure, "low end of the interval"),
      part("hysteresis_high", &T::hysteresis, &FittedNumber::high, pressure, "high end"),
      field("hysteresis_share", &T::hysteresis_share, share, "of the torque in the middle of the readings"),
      field("scatter", &T::scatter, torque, "standard deviation of the readings about the fit"),
      field("outliers", &T::outliers, "readings left out"), field("readings", &T::readings, "each, in order"),
      field("verdicts", &T::verdicts, "most likely first"),
      field("not_told", &T::not_told, "what these readings cannot tell apart"),
      field("next", &T::next, "readings to take next, the most telling first"),
      field("changes", &T::changes, "of the stand file, when asked for"),
      field("refusal", &T::refusal, "why the file stays as it is, when a change was asked for"),
      field("stand_file", &T::stand_file, "the changed text, when asked for"),
      field("assumptions", &T::assumptions, "what the models assume"),
      field("cautions", &T::cautions, "what a person must heed"));
}

}  // namespace holdback::report
