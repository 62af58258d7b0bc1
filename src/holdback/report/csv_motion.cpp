// Runs and their traces as tables, and what a loop holds over the roll.
#include <fmt/format.h>

#include <array>

#include "holdback/report/csv_rows.hpp"
#include "holdback/report/words.hpp"

namespace holdback::report {

namespace {

using units::System;

void add_energy(Row& row, const EnergyBooks& energy) {
  row.number("energy_pulled", energy.pulled, Quantity::energy);
  row.number("energy_slipped", energy.slipped, Quantity::energy);
  row.number("energy_stored", energy.stored, Quantity::energy);
  row.number("energy_residual", energy.residual, Quantity::energy);
}

Row row_of(const Simulation& simulation, const MotionRun& run, System system) {
  Row row(system);
  row.text("job", simulation.job);
  add_fit(row, simulation.fit);
  row.count("pairs_engaged", simulation.pairs);
  row.text("scenario", simulation.scenario);
  row.text("control", run.control);
  row.text("state", key_of(run.state));
  add_tension(row, simulation.tension);
  row.number("run_lowest", run.run_lowest, Quantity::force);
  row.number("run_highest", run.run_highest, Quantity::force);
  row.number("peak", run.peak, Quantity::force);
  row.number("peak_time", run.peak_time, Quantity::duration);
  row.number("outside", run.outside, Quantity::duration);
  row.number("moving", run.moving, Quantity::duration);
  row.number("steady_outside", run.steady_outside, Quantity::ratio);
  row.text("accident", run.accident ? "yes" : "no");
  row.number("slack", run.slack, Quantity::short_length);
  row.number("slack_time", run.slack_time, Quantity::duration);
  row.number("settling", run.settling, Quantity::duration);
  row.number("disc_highest", run.disc_highest, Quantity::temperature);
  row.number("pads_highest", run.pads_highest, Quantity::temperature);
  row.number("highest_pressure", run.highest_pressure, Quantity::pressure);
  row.number("highest_torque", run.highest_torque, Quantity::torque);
  row.number("pad_wear", run.pad_wear, Quantity::ratio);
  row.number("dancer_stops", run.dancer_stops, Quantity::number);
  row.number("sticks", run.sticks, Quantity::number);
  row.number("line_time", run.line_time, Quantity::duration);
  row.number("web_run", run.web_run, Quantity::web_length);
  add_energy(row, run.energy);
  row.text("end", key_of(run.end));
  row.text("fault", run.fault);
  if (run.fault.empty()) {
    row.none("fault_time", Quantity::duration);
  } else {
    row.number("fault_time", run.fault_time, Quantity::duration);
  }
  row.text("method", key_of(run.method));
  row.number("steps", run.steps, Quantity::number);
  return row;
}

/// A margin, or an empty cell where it has no number.
void add_if(Row& row, bool known, std::string_view head, double si, Quantity kind) {
  if (known) {
    row.number(head, si, kind);
  } else {
    row.none(head, kind);
  }
}

Row row_of(const Tuning& tuning, const LoopTuning& loop, bool from_file, const TunePoint& point, System system) {
  Row row(system);
  row.text("job", tuning.job);
  row.text("control", tuning.control);
  row.text("settings", from_file ? "stand file" : "tuned");
  row.text("schedule", key_of(loop.schedule));
  row.number("gain", loop.gain, Quantity::number);
  row.number("integral_time", loop.integral_time, Quantity::duration);
  row.number("derivative_time", loop.derivative_time, Quantity::duration);
  row.text("state", key_of(loop.state));
  row.number("diameter", point.diameter, Quantity::short_length);
  row.number("mode_frequency", point.mode_frequency, Quantity::frequency);
  row.number("mode_damping", point.mode_damping, Quantity::number);
  row.number("stick_slip_onset", point.stick_slip_onset, Quantity::speed);
  row.number("runout_tension", point.runout_tension, Quantity::force);
  row.number("runout_frequency", point.runout_frequency, Quantity::frequency);
  row.text("stable", point.stable ? "yes" : "no");
  add_if(row, point.stable && point.gain_margin > 0, "gain_margin", point.gain_margin, Quantity::number);
  add_if(row, point.stable && point.phase_margin > 0, "phase_margin", point.phase_margin, Quantity::angle);
  add_if(row, point.stable && point.delay_margin > 0, "delay_margin", point.delay_margin, Quantity::duration);
  add_if(row, point.stable, "sensitivity", point.sensitivity, Quantity::number);
  add_if(row, point.crossover > 0, "crossover", point.crossover, Quantity::frequency);
  return row;
}

/// A list of a trace with its head.
struct TraceColumn {
  std::string_view head;
  std::vector<double> RunTrace::*values;
  Quantity kind;
};

constexpr std::array<TraceColumn, 18> trace_columns{{{"time", &RunTrace::time, Quantity::duration},
                                                     {"line_speed", &RunTrace::line_speed, Quantity::speed},
                                                     {"rim_speed", &RunTrace::rim_speed, Quantity::speed},
                                                     {"tension", &RunTrace::tension, Quantity::force},
                                                     {"lowest_tension", &RunTrace::lowest_tension, Quantity::force},
                                                     {"highest_tension", &RunTrace::highest_tension, Quantity::force},
                                                     {"measured_tension", &RunTrace::measured_tension, Quantity::force},
                                                     {"setpoint", &RunTrace::setpoint, Quantity::force},
                                                     {"slack", &RunTrace::slack, Quantity::short_length},
                                                     {"pressure", &RunTrace::pressure, Quantity::pressure},
                                                     {"set_pressure", &RunTrace::set_pressure, Quantity::pressure},
                                                     {"pairs", &RunTrace::pairs, Quantity::number},
                                                     {"diameter", &RunTrace::diameter, Quantity::short_length},
                                                     {"torque", &RunTrace::torque, Quantity::torque},
                                                     {"slip_power", &RunTrace::slip_power, Quantity::power},
                                                     {"disc", &RunTrace::disc, Quantity::temperature},
                                                     {"pads", &RunTrace::pads, Quantity::temperature},
                                                     {"dancer", &RunTrace::dancer, Quantity::number}}};

}  // namespace

JobsTable simulation_table(const Simulation& simulation, System system) {
  Rows rows;
  for (const auto& run : simulation.runs) rows.add(row_of(simulation, run, system));
  return rows.table();
}

JobsTable tuning_table(const Tuning& tuning, System system) {
  Rows rows;
  for (std::size_t i = 0; i < tuning.loops.size(); ++i) {
    const auto& loop = tuning.loops[i];
    const bool from_file = tuning.from_file && i + 1 == tuning.loops.size();
    for (const auto& point : loop.points) rows.add(row_of(tuning, loop, from_file, point, system));
  }
  return rows.table();
}

std::string trace_csv(const MotionRun& run, System system) {
  const RunTrace& trace = run.trace;
  if (trace.time.empty()) return {};
  std::string text;
  for (const auto& column : trace_columns) {
    const auto unit = units::unit_of(column.kind, system);
    text += (text.empty() ? "" : ",") + std::string(column.head) + (unit.empty() ? "" : " [" + unit + "]");
  }
  text += "\r\n";
  auto out = std::back_inserter(text);
  for (std::size_t i = 0; i < trace.time.size(); ++i) {
    for (const auto& column : trace_columns) {
      const auto& values = trace.*column.values;
      if (column.values != &RunTrace::time) text += ',';
      if (i < values.size()) fmt::format_to(out, "{:.10g}", units::in_display_unit(values[i], column.kind, system));
    }
    text += "\r\n";
  }
  return text;
}

}  // namespace holdback::report
