// The jobs of an answer as CSV (RFC 4180), in the reader's units, numbers to ten digits.
#include <fmt/format.h>

#include "holdback/report/csv_rows.hpp"
#include "holdback/report/words.hpp"

namespace holdback::report {

namespace {

using units::System;

void add_margins(Row& row, const std::vector<Limit>& limits) {
  for (int i = 0; i < limit_count; ++i) {
    const auto id = static_cast<LimitId>(i);
    const std::string head = "margin_" + std::string(key_of(id));
    const Limit* found = nullptr;
    for (const auto& limit : limits) found = limit.id == id ? &limit : found;
    if (found != nullptr) {
      row.number(head, found->margin, Quantity::number);
    } else {
      row.none(head, Quantity::number);
    }
  }
}

void add_stop(Row& row, const std::string& name, const StopFacts& stop) {
  row.number(name + "_time", stop.time, Quantity::duration);
  row.number(name + "_torque_needed", stop.torque_needed, Quantity::torque);
  row.number(name + "_torque_available", stop.torque_available, Quantity::torque);
  if (stop.runs_away)  // no number tells it; an empty cell does not read as "no slack"
    row.none(name + "_slack", Quantity::short_length);
  else
    row.number(name + "_slack", stop.slack, Quantity::short_length);
}

Row row_of(const Fit& fit, const JobFit& job, System system) {
  Row row(system);
  row.text("job", job.job);
  add_fit(row, fit);
  row.count("pairs_engaged", job.pairs);
  row.text("state", key_of(job.state));
  row.text("binding_limit", key_of(job.binding));
  row.number("margin", job.margin, Quantity::number);
  row.number("pressure_full", job.pressure_full, Quantity::pressure);
  row.number("pressure_core", job.pressure_core, Quantity::pressure);
  row.number("hottest", job.hottest, Quantity::temperature);
  row.number("hottest_diameter", job.hottest_diameter, Quantity::short_length);
  row.number("pad_life", job.wear.life, Quantity::running_time);
  add_tension(row, job.tension);
  row.number("lowest_tension", job.lowest_tension, Quantity::force);
  row.number("slip_power", job.slip_power, Quantity::power);
  add_stop(row, "stop", job.stop);
  add_stop(row, "emergency_stop", job.emergency_stop);
  add_margins(row, job.limits);
  return row;
}

JobsTable choice_table(const Choice& choice, System system) {
  Rows rows;
  if (choice.job && choice.recommended) {
    rows.add(row_of(choice.recommended->fit, *choice.job, system));
    return rows.table();
  }
  for (const auto& result : choice.all) {
    for (const auto& job : result.jobs) rows.add(row_of(result.fit, job, system));
  }
  if (rows.empty() && choice.recommended) {
    for (const auto& job : choice.recommended->jobs) rows.add(row_of(choice.recommended->fit, job, system));
  }
  return rows.table();
}

Row row_of(const JobPlan& plan, const PlanPoint& point, System system) {
  Row row(system);
  row.text("job", plan.job);
  row.text("state", key_of(plan.state));
  row.text("part", "automatic");
  row.number("diameter", point.diameter, Quantity::short_length);
  row.none("until_diameter", Quantity::short_length);
  row.number("pressure", point.pressure, Quantity::pressure);
  row.number("tension", point.tension, Quantity::force);
  row.none("tension_at_end", Quantity::force);
  return row;
}

Row row_of(const JobPlan& plan, const HandSetting& setting, System system) {
  Row row(system);
  row.text("job", plan.job);
  row.text("state", key_of(plan.state));
  row.text("part", "hand");
  row.number("diameter", setting.from, Quantity::short_length);
  row.number("until_diameter", setting.to, Quantity::short_length);
  row.number("pressure", setting.pressure, Quantity::pressure);
  row.number("tension", setting.tension_from, Quantity::force);
  row.number("tension_at_end", setting.tension_to, Quantity::force);
  return row;
}

JobsTable plan_table(const Plan& plan, System system) {
  Rows rows;
  for (const auto& job : plan.jobs) {
    for (const auto& point : job.automatic) rows.add(row_of(job, point, system));
    for (const auto& setting : job.by_hand) rows.add(row_of(job, setting, system));
  }
  return rows.table();
}

Row row_of(const JobFacts& job, System system) {
  Row row(system);
  row.text("job", job.job);
  row.text("web", job.web);
  row.text("roll", job.roll);
  row.number("width", job.width, Quantity::short_length);
  row.number("speed", job.speed, Quantity::speed);
  add_tension(row, job.tension);
  row.number("web_length", job.roll_facts.length, Quantity::web_length);
  row.number("roll_mass", job.roll_facts.mass, Quantity::mass);
  row.number("inertia_full", job.roll_facts.inertia_full, Quantity::inertia);
  row.number("inertia_core", job.roll_facts.inertia_core, Quantity::inertia);
  row.number("running_time", job.roll_facts.running_time, Quantity::running_time);
  row.number("run_torque_full", job.run_torque_full, Quantity::torque);
  row.number("run_torque_core", job.run_torque_core, Quantity::torque);
  row.number("slip_power", job.slip_power, Quantity::power);
  return row;
}

JobsTable check_table(const Check& check, System system) {
  Rows rows;
  for (const auto& job : check.jobs) rows.add(row_of(job, system));
  return rows.table();
}

}  // namespace

JobsTable jobs_table(const Answer& answer, System system) {
  if (answer.choice) return choice_table(*answer.choice, system);
  if (answer.plan) return plan_table(*answer.plan, system);
  if (answer.simulation) return simulation_table(*answer.simulation, system);
  if (answer.tuning) return tuning_table(*answer.tuning, system);
  if (answer.check) return check_table(*answer.check, system);
  if (answer.history) return history_table(*answer.history, system);
  if (answer.diagnosis) return diagnosis_table(*answer.diagnosis, system);
  return {};
}

std::string csv(const Answer& answer, System system) {
  const JobsTable table = jobs_table(answer, system);
  std::string text;
  const auto line = [&](const auto& cells, auto text_of) {
    for (std::size_t i = 0; i < cells.size(); ++i) text += (i == 0 ? "" : ",") + text_of(cells[i]);
    text += "\r\n";
  };
  if (!table.rows.empty()) line(table.heads, [](const std::string& head) { return csv_cell(head); });
  for (const auto& row : table.rows)
    line(row, [](const JobsTable::Cell& cell) {
      return cell.number ? fmt::format("{:.10g}", *cell.number) : csv_cell(cell.text);
    });
  return text;
}

}  // namespace holdback::report
