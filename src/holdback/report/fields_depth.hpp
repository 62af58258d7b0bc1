// The fields of what is said of a job in depth: its tension window, heat over rolls, shaft, and likelihoods.
#pragma once

#include "holdback/report/words.hpp"

namespace holdback::report {

constexpr auto fields_of(Of<WindowBound> /*unused*/) {
  using W = WindowBound;
  return record("window_bound", "what bounds the tension, at the job's speed, where it binds hardest over the roll",  //
                field("key", &W::id, "which bound"),
                derived(
                    "side", [](const W& it) { return std::string_view(is_lower(it.id) ? "lower" : "upper"); },
                    "lower or upper end of the window"),
                field("tension", &W::tension, Quantity::force, "over the whole width"),
                field("diameter", &W::diameter, Quantity::short_length, "of the roll; 0 when the roll is no matter"),
                field("case", &W::load_case, "situation in which it binds"),
                field("part", &W::part, "the idler that needs most; empty for other bounds"),
                field("known", &W::known, "derived, the user's own setting, or common practice without a source"));
}

constexpr auto fields_of(Of<WindowAt> /*unused*/) {
  using W = WindowAt;
  return record("window_at", "the window at one speed or diameter; an end that nothing bounds is absent",  //
                field("speed", &W::speed, Quantity::speed, "of the web"),
                field("diameter", &W::diameter, Quantity::short_length, "of the roll; 0: the hardest of the roll"),
                field("low", &W::low, Quantity::force, "highest of the lower bounds"),
                field("low_by", &W::low_by, "the bound that sets it"),
                field("high", &W::high, Quantity::force, "lowest of the upper bounds"),
                field("high_by", &W::high_by, "the bound that sets it"));
}

constexpr auto fields_of(Of<TensionWindow> /*unused*/) {
  using W = TensionWindow;
  return record("window", "the tension window, bound by bound",  //
                field("bounds", &W::bounds, "every bound that is known of this job"),
                field("over_speed", &W::over_speed, "from slow to the job's speed"),
                field("over_roll", &W::over_roll, "from core to full, at the job's speed"));
}

constexpr auto fields_of(Of<ThermalFacts> /*unused*/) {
  using T = ThermalFacts;
  constexpr auto kelvin = Quantity::temperature;
  return record(
      "thermal", "heat of one brake when rolls and change-overs follow one another until they repeat",  //
      field("disc_highest", &T::disc_highest, kelvin, "in the repeating state"),
      field("disc_lowest", &T::disc_lowest, kelvin, "in the repeating state"),
      field("highest_diameter", &T::highest_diameter, Quantity::short_length, "of the roll when the disc is hottest"),
      field("pads_highest", &T::pads_highest, kelvin, "mean of a pad"),
      field("calipers_highest", &T::calipers_highest, kelvin, "in the repeating state"),
      field("hub_highest", &T::hub_highest, kelvin, "in the repeating state"),
      field("surface_highest", &T::surface_highest, kelvin, "face of the disc in an emergency stop from the hottest"),
      field("friction_left", &T::friction_left, Quantity::ratio, "at the hottest"),
      field("pad_life", &T::pad_life, Quantity::running_time, "wear followed through the repeating state"),
      field("time_constant", &T::time_constant, Quantity::duration, "slowest way in which the brake warms"),
      field("time_to_hot", &T::time_to_hot, Quantity::duration, "from cold to 95 % of the highest rise"),
      field("hot_at_once", &T::hot_at_once, "the first roll already gets there"),
      field("time_to_open", &T::time_to_open, Quantity::duration,
            "standing, from the hottest to the touch temperature; 0 with `never_cool`"),
      field("never_cool", &T::never_cool, "the air is too warm for that"),
      field("changeover", &T::changeover, Quantity::duration, "standstill between rolls that was reckoned with"),
      field("time", &T::time, Quantity::duration, "from the start of a roll"),
      field("diameter", &T::diameter, Quantity::short_length, "of the roll; the core's while standing"),
      field("disc", &T::disc, kelvin, "in the repeating state"),
      field("pads", &T::pads, kelvin, "in the repeating state"),
      field("calipers", &T::calipers, kelvin, "in the repeating state"),
      field("hub", &T::hub, kelvin, "in the repeating state"),
      field("steady", &T::steady, kelvin, "where the disc would come to rest at that power and speed"));
}

constexpr auto fields_of(Of<ShaftFacts> /*unused*/) {
  using S = ShaftFacts;
  return record(
      "shaft", "the unwind shaft under the full roll",  //
      field("deflection", &S::deflection, Quantity::short_length, "largest, full roll"),
      field("slope_first", &S::slope_first, Quantity::angle, "at the first bearing"),
      field("slope_second", &S::slope_second, Quantity::angle, "at the second bearing"),
      field("bending_stress", &S::bending_stress, Quantity::stress, "at the worst place"),
      field("torsion_stress", &S::torsion_stress, Quantity::stress, "there"),
      field("safety", &S::safety, Quantity::number, "against fatigue, in an emergency stop"),
      field("whirl_speed", &S::whirl_speed, Quantity::rotational_speed, "first, with the roll at the core"),
      field("whirl_speed_full", &S::whirl_speed_full, Quantity::rotational_speed, "first, with the full roll"),
      field("top_speed", &S::top_speed, Quantity::rotational_speed, "of the job, at the core"),
      field("bearing_load", &S::bearing_load, Quantity::force, "of the harder loaded bearing, full roll"),
      field("bearing_life", &S::bearing_life, Quantity::running_time, "absent without a load rating"),
      field("grip_torque", &S::grip_torque, Quantity::torque, "through the grip on the core in an emergency stop"),
      field("grip_diameter", &S::grip_diameter, Quantity::short_length, "of the roll there"));
}

constexpr auto fields_of(Of<Driver> /*unused*/) {
  return record("driver", "how much of the spread of the least margin an input makes",  //
                field("input", &Driver::input, "which input"),
                field("alone", &Driver::alone, Quantity::ratio, "share that it makes by itself"),
                field("total", &Driver::total, Quantity::ratio, "share that would go if it were known"));
}

constexpr auto fields_of(Of<Chance> /*unused*/) {
  return record("chance", "how likely a limit holds",  //
                field("key", &Chance::id, "which limit"),
                field("probability", &Chance::probability, Quantity::ratio, "that it holds"));
}

constexpr auto fields_of(Of<Likelihood> /*unused*/) {
  using L = Likelihood;
  return record("likelihood", "one job when its inputs lie anywhere in their bands",  //
                field("samples", &L::samples, "whole checks that were made"),
                field("probability", &L::probability, Quantity::ratio, "that every limit holds"),
                field("middle_margin", &L::middle_margin, Quantity::ratio, "median of the least margin"),
                field("low_margin", &L::low_margin, Quantity::ratio, "least margin that 95 % of the samples exceed"),
                field("limits", &L::limits, "those that do not hold in every sample, least likely first"),
                field("drivers", &L::drivers, "strongest first; none when the least margin does not vary"));
}

constexpr auto fields_of(Of<InputBand> /*unused*/) {
  return record("input_band", "how far an input was varied",  //
                field("input", &InputBand::input, "which input"),
                field("half_width", &InputBand::half_width, Quantity::number,
                      "± share of the nominal value; of the ambient ± kelvin"));
}

constexpr auto fields_of(Of<MixLikelihood> /*unused*/) {
  using M = MixLikelihood;
  return record("mix_likelihood", "every covered job at once, with the same brake and air",  //
                field("samples", &M::samples, "of the mix"),
                field("probability", &M::probability, Quantity::ratio, "that every covered job holds every limit"),
                field("bands", &M::bands, "how far each input was varied"));
}

}  // namespace holdback::report
