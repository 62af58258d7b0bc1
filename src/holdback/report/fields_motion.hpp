// The fields of a stand in motion: runs of `simulate` and what `tune` found.
#pragma once

#include "holdback/report/words.hpp"

namespace holdback::report {

constexpr auto fields_of(Of<RunTrace> /*unused*/) {
  using T = RunTrace;
  return record("trace", "what was kept of a run: every list has one entry a kept time",  //
                field("time", &T::time, Quantity::duration, "from the start of the run"),
                field("line_speed", &T::line_speed, Quantity::speed, "of the web in the nip"),
                field("rim_speed", &T::rim_speed, Quantity::speed, "of the roll's surface"),
                field("tension", &T::tension, Quantity::force, "in the span behind the roll"),
                field("lowest_tension", &T::lowest_tension, Quantity::force, "since the entry before"),
                field("highest_tension", &T::highest_tension, Quantity::force, "since the entry before"),
                field("measured_tension", &T::measured_tension, Quantity::force,
                      "as the load cell gives it; as `tension` without one"),
                field("setpoint", &T::setpoint, Quantity::force, "that is asked for"),
                field("slack", &T::slack, Quantity::short_length, "web that hangs loose, or lies on the floor"),
                field("pressure", &T::pressure, Quantity::pressure, "at the brake"),
                field("set_pressure", &T::set_pressure, Quantity::pressure, "asked for"),
                field("pairs", &T::pairs, Quantity::number, "engaged on each brake"),
                field("diameter", &T::diameter, Quantity::short_length, "of the roll"),
                field("torque", &T::torque, Quantity::torque, "of brake and drag"),
                field("slip_power", &T::slip_power, Quantity::power, "of all brakes"),
                field("disc", &T::disc, Quantity::temperature, "of the discs"),
                field("pads", &T::pads, Quantity::temperature, "of the pads"),
                field("dancer", &T::dancer, Quantity::number, "place between the stops, -1 to 1; 0 without one"));
}

constexpr auto fields_of(Of<PhaseFacts> /*unused*/) {
  using P = PhaseFacts;
  return record("phase", "a stretch of a run between two events; tensions are those in the span behind the roll",  //
                field("what", &P::what, "ramp, hold, run, stop, standstill and the like"),
                field("begin", &P::begin, Quantity::duration, "from the start of the run"),
                field("end", &P::end, Quantity::duration, "from the start of the run"),
                field("diameter", &P::diameter, Quantity::short_length, "of the roll at its beginning"),
                field("lowest_tension", &P::lowest_tension, Quantity::force, "in the phase"),
                field("highest_tension", &P::highest_tension, Quantity::force, "in the phase"),
                field("mean_tension", &P::mean_tension, Quantity::force, "over time"),
                field("outside", &P::outside, Quantity::duration, "with the tension outside of the window"),
                field("slack", &P::slack, Quantity::short_length, "most of it"),
                field("settling", &P::settling, Quantity::duration,
                      "until the tension stays in the window; the whole phase if it never does"),
                field("settles", &P::settles, "whether it does before the end"));
}

constexpr auto fields_of(Of<EnergyBooks> /*unused*/) {
  using E = EnergyBooks;
  return record("energy", "where the energy of a run went; the store is the roll, the web and what moves with it",  //
                field("pulled", &E::pulled, Quantity::energy, "in by the line, less what leaves with the web"),
                field("slipped", &E::slipped, Quantity::energy, "into brake and drag"),
                field("stored", &E::stored, Quantity::energy, "gained by the store"),
                field("residual", &E::residual, Quantity::energy,
                      "pulled less slipped less stored: what the steps lost or made"));
}

constexpr auto fields_of(Of<MotionRun> /*unused*/) {
  using M = MotionRun;
  return record(
      "motion_run", "one control through one scenario",  //
      field("control", &M::control, "hand, diameter, load cell or dancer"),
      field("state", &M::state, "tight: outside of the window for a while; fails: slack, break or worse"),
      field("verdict", &M::verdict, "why, in words"), field("phases", &M::phases, "from event to event"),
      field("run_lowest", &M::run_lowest, Quantity::force, "lowest tension at a steady speed, once settled"),
      field("run_highest", &M::run_highest, Quantity::force, "highest tension there"),
      field("peak", &M::peak, Quantity::force, "highest tension of all"),
      field("peak_time", &M::peak_time, Quantity::duration, "when"),
      field("outside", &M::outside, Quantity::duration, "outside of the window while the line moves"),
      field("moving", &M::moving, Quantity::duration, "with the line moving"),
      field("steady_outside", &M::steady_outside, Quantity::ratio, "share of steady running outside of the window"),
      field("accident", &M::accident, "the scenario holds a web break or an air failure"),
      field("slack", &M::slack, Quantity::short_length, "most of it"),
      field("slack_time", &M::slack_time, Quantity::duration, "when it was most"),
      field("settling", &M::settling, Quantity::duration, "longest of any phase that does settle"),
      field("disc_highest", &M::disc_highest, Quantity::temperature, "of the discs"),
      field("pads_highest", &M::pads_highest, Quantity::temperature, "of the pads"),
      field("highest_pressure", &M::highest_pressure, Quantity::pressure, "at the brake"),
      field("highest_torque", &M::highest_torque, Quantity::torque, "of the brakes"),
      field("pad_wear", &M::pad_wear, Quantity::ratio, "share of a pad's usable depth"),
      field("dancer_stops", &M::dancer_stops, Quantity::number, "how often the dancer hit a stop"),
      field("sticks", &M::sticks, Quantity::number, "how often the brake caught the roll or let go of it"),
      field("line_time", &M::line_time, Quantity::duration, "of the run"),
      field("web_run", &M::web_run, Quantity::web_length, "off the roll"),
      field("energy", &M::energy, "where the energy went"), field("end", &M::end, "where the run came to its end"),
      field("fault", &M::fault, "which variable stopped being a number; empty when none did"),
      field("fault_time", &M::fault_time, Quantity::duration, "when; 0 when none did"),
      field("method", &M::method, "how the equations were stepped"),
      field("steps", &M::steps, Quantity::number, "accepted"),
      field("trace", &M::trace, "what was kept of the run; empty lists when nothing was"));
}

constexpr auto fields_of(Of<Simulation> /*unused*/) {
  using S = Simulation;
  return record("simulation", "a job run through a scenario under one control, or under several side by side",  //
                field("title", &S::title, "of the stand"), field("job", &S::job, "name of the job"),
                field("scenario", &S::scenario, "its name"), field("fit", &S::fit, "how the stand is equipped"),
                field("pairs", &S::pairs, "pad pairs engaged on each brake at the start"),
                field("tension", &S::tension, "where the tension comes from, and its window"),
                field("full_diameter", &S::full_diameter, Quantity::short_length, "of the full roll"),
                field("core_diameter", &S::core_diameter, Quantity::short_length, "of the core"),
                field("speed", &S::speed, Quantity::speed, "of the job"),
                field("runs", &S::runs, "one a control, best first when several were compared"),
                field("best", &S::best, "which control and why, when several were compared"),
                field("assumptions", &S::assumptions, "what the models assume"),
                field("cautions", &S::cautions, "what a person must heed"));
}

constexpr auto fields_of(Of<TunePoint> /*unused*/) {
  using P = TunePoint;
  constexpr auto frequency = Quantity::frequency;
  return record(
      "tune_point", "the stand at one diameter, linear, at the job's speed and tension",  //
      field("diameter", &P::diameter, Quantity::short_length, "of the roll"),
      field("mode_frequency", &P::mode_frequency, frequency, "of roll against web, undamped"),
      field("mode_damping", &P::mode_damping, Quantity::number, "share of critical; below zero it grows"),
      field("stick_slip_onset", &P::stick_slip_onset, Quantity::speed, "web speed below which friction makes it grow"),
      field("runout_tension", &P::runout_tension, Quantity::force,
            "amplitude that the roll's runout shakes, loop closed; 0 without runout"),
      field("runout_frequency", &P::runout_frequency, frequency, "of the runout at the job's speed"),
      field("stable", &P::stable, "whether the closed loop is"),
      field("gain_margin", &P::gain_margin, Quantity::number,
            "as a factor; 0 when nothing in reach makes it unstable; no meaning when not stable"),
      field("phase_margin", &P::phase_margin, Quantity::angle, "0 without a crossover"),
      field("delay_margin", &P::delay_margin, Quantity::duration, "more dead time that it bears; 0: any in reach"),
      field("sensitivity", &P::sensitivity, Quantity::number, "highest of the sensitivity over frequency, Ms"),
      field("crossover", &P::crossover, frequency, "0 without one"));
}

constexpr auto fields_of(Of<LoopTuning> /*unused*/) {
  using L = LoopTuning;
  return record("loop_tuning", "settings of the control, and what they hold over the roll",  //
                field("schedule", &L::schedule, "fixed: one gain; diameter: it falls with the roll"),
                field("gain", &L::gain, Quantity::number, "as `control.gain` of the stand file"),
                field("integral_time", &L::integral_time, Quantity::duration, "as in the stand file"),
                field("derivative_time", &L::derivative_time, Quantity::duration, "as in the stand file"),
                field("real_gain", &L::real_gain, Quantity::number,
                      "at the full roll, pressure over the sensor's own unit: Pa/N with a load cell, Pa/m of the "
                      "dancer's place with a dancer"),
                field("state", &L::state, "whether the asked margins hold over the whole roll"),
                field("least_gain_margin", &L::least_gain_margin, Quantity::number,
                      "as a factor; 0 when nothing in reach makes it unstable"),
                field("least_phase_margin", &L::least_phase_margin, Quantity::angle, "0 without a crossover"),
                field("worst_diameter", &L::worst_diameter, Quantity::short_length, "where the margins are least"),
                field("slowest_crossover", &L::slowest_crossover, Quantity::frequency, "over the roll"),
                field("points", &L::points, "from the full roll to the core"));
}

constexpr auto fields_of(Of<ControlAdvice> /*unused*/) {
  using C = ControlAdvice;
  return record("control_advice", "a control that was tried because the present one cannot hold the window",  //
                field("control", &C::control, "hand, diameter, load cell or dancer"),
                field("holds", &C::holds, "the window, in the usual scenario"),
                field("evidence", &C::evidence, "what it did"));
}

constexpr auto fields_of(Of<RunoutMap> /*unused*/) {
  using R = RunoutMap;
  return record("runout", "how the tension shakes with a roll that is out of round; empty without runout",  //
                field("speed", &R::speed, Quantity::speed, "of the web"),
                field("diameter", &R::diameter, Quantity::short_length, "of the roll"),
                field("share", &R::share, Quantity::ratio,
                      "amplitude over the setpoint: all diameters at the first speed, then at the next"),
                field("meets", &R::meets, Quantity::speed,
                      "speed at which the runout meets the mode, one entry a diameter; 0: beyond the line"),
                field("worst_share", &R::worst_share, Quantity::ratio, "highest of all"),
                field("worst_speed", &R::worst_speed, Quantity::speed, "where"),
                field("worst_diameter", &R::worst_diameter, Quantity::short_length, "where"));
}

constexpr auto fields_of(Of<Tuning> /*unused*/) {
  using T = Tuning;
  return record("tuning", "settings of a control and what they hold from the full roll to the core",  //
                field("title", &T::title, "of the stand"), field("job", &T::job, "name of the job"),
                field("control", &T::control, "that the stand has"), field("fit", &T::fit, "how the stand is equipped"),
                field("pairs", &T::pairs, "pad pairs engaged on each brake"),
                field("tension", &T::tension, "where the tension comes from, and its window"),
                field("asked_gain_margin", &T::asked_gain_margin, Quantity::number, "as a factor"),
                field("asked_phase_margin", &T::asked_phase_margin, Quantity::angle, "least that is asked for"),
                field("dead_time", &T::dead_time, Quantity::duration, "of air, hold of the sample and computing"),
                field("lag", &T::lag, Quantity::duration, "of air and measurement together"),
                field("loops", &T::loops, "fixed and scheduled, the better first; then that of the stand file"),
                field("from_file", &T::from_file, "whether the last loop is the stand file's own"),
                field("advice", &T::advice, "which to take"),
                field("runout", &T::runout, "how the tension shakes with the roll"),
                field("stick_slip_onset", &T::stick_slip_onset, Quantity::speed, "highest over the roll; 0: none"),
                field("run", &T::run, "the usual scenario with the settings advised; no trace"),
                field("holds", &T::holds, "the window in steady run, without slack in ramp and stops"),
                field("others", &T::others, "controls that were tried when it does not"),
                field("assumptions", &T::assumptions, "what the models assume"),
                field("cautions", &T::cautions, "what a person must heed"));
}

}  // namespace holdback::report
