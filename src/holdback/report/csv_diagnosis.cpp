// A log as CSV: a row for each kind of phase, then one for each stop and ramp.
#include "holdback/report/csv_rows.hpp"
#include "holdback/report/words.hpp"

namespace holdback::report {

namespace {

constexpr Quantity force = Quantity::force;
constexpr Quantity time = Quantity::duration;

Row row_of(const PhaseTension& phase, units::System system) {
  Row row(system);
  row.text("part", "all of a kind");
  row.text("phase", key_of(phase.phase));
  row.none("begin", time);
  row.none("end", time);
  row.number("time", phase.time, time);
  row.number("inside", phase.inside, Quantity::ratio);
  row.number("below", phase.below, Quantity::ratio);
  row.number("above", phase.above, Quantity::ratio);
  row.number("mean_tension", phase.mean, force);
  row.number("deviation", phase.deviation, force);
  row.number("lowest_tension", phase.lowest, force);
  row.number("highest_tension", phase.highest, force);
  row.none("from_speed", Quantity::speed);
  row.none("to_speed", Quantity::speed);
  row.none("slack_time", time);
  row.none("settling", time);
  row.text("state", "");
  return row;
}

Row row_of(const LogChange& change, units::System system) {
  Row row(system);
  row.text("part", "one");
  row.text("phase", key_of(change.phase));
  row.number("begin", change.begin, time);
  row.number("end", change.end, time);
  row.number("time", change.end - change.begin, time);
  for (const char* share : {"inside", "below", "above"}) row.none(share, Quantity::ratio);
  row.none("mean_tension", force);
  row.none("deviation", force);
  row.number("lowest_tension", change.lowest_tension, force);
  row.number("highest_tension", change.highest_tension, force);
  row.number("from_speed", change.from_speed, Quantity::speed);
  row.number("to_speed", change.to_speed, Quantity::speed);
  row.number("slack_time", change.slack, time);
  if (change.settles)
    row.number("settling", change.settling, time);
  else
    row.none("settling", time);
  row.text("state", key_of(change.state));
  return row;
}

}  // namespace

JobsTable diagnosis_table(const Diagnosis& diagnosis, units::System system) {
  Rows rows;
  for (const auto& phase : diagnosis.phases) rows.add(row_of(phase, system));
  for (const auto& change : diagnosis.changes) rows.add(row_of(change, system));
  return rows.table();
}

}  // namespace holdback::report
