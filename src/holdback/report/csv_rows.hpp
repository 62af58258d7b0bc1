// What the tables of jobs and runs share: rows whose heads carry the units, and cells of a CSV.
#pragma once

#include "holdback/report/report.hpp"

namespace holdback::report {

/// A cell as RFC 4180 writes it: in quotes when it holds a comma, a quote or a line end.
inline std::string csv_cell(std::string_view cell) {
  if (cell.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(cell);
  std::string out = "\"";
  for (const char c : cell) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + "\"";
}

/// One row with its heads, filled side by side, so that a head and its cell cannot part.
class Row {
 public:
  /// A row without cells.
  explicit Row(units::System system) : system_(system) {}

  void text(std::string_view head, std::string_view cell) { add(std::string(head), {std::string(cell), {}}); }
  void count(std::string_view head, int cell) { add(std::string(head), {"", cell}); }
  void number(std::string_view head, double si, Quantity kind) {
    add(headed(head, kind), {"", units::in_display_unit(si, kind, system_)});
  }
  void none(std::string_view head, Quantity kind) { add(headed(head, kind), {}); }

  const std::vector<std::string>& heads() const { return heads_; }
  const std::vector<JobsTable::Cell>& cells() const { return cells_; }

 private:
  std::string headed(std::string_view head, Quantity kind) const {
    const auto unit = units::unit_of(kind, system_);
    return std::string(head) + (unit.empty() ? "" : " [" + unit + "]");
  }
  void add(std::string head, JobsTable::Cell cell) {
    heads_.push_back(std::move(head));
    cells_.push_back(std::move(cell));
  }
  units::System system_;
  std::vector<std::string> heads_;
  std::vector<JobsTable::Cell> cells_;
};

/// Rows under the heads of the first one.
class Rows {
 public:
  void add(const Row& row) {
    if (table_.rows.empty()) table_.heads = row.heads();
    table_.rows.push_back(row.cells());
  }
  bool empty() const { return table_.rows.empty(); }
  const JobsTable& table() const { return table_; }

 private:
  JobsTable table_;
};

/// The cells that most rows have.
inline void add_fit(Row& row, const Fit& fit) {
  row.text("brake", fit.brake);
  row.count("brakes", fit.brakes);
  row.count("pairs_fitted", fit.pairs);
  row.text("grade", fit.grade);
}

inline void add_tension(Row& row, const TensionTarget& tension) {
  row.number("tension", tension.setpoint, Quantity::force);
  row.number("tension_low", tension.low, Quantity::force);
  row.number("tension_high", tension.high, Quantity::force);
}

/// Runs of `simulate`, one row a run; loops of `tune`, one row a diameter and loop.
JobsTable simulation_table(const Simulation& simulation, units::System system);
JobsTable tuning_table(const Tuning& tuning, units::System system);

/// Phases of a log, then its stops and ramps, one row each.
JobsTable diagnosis_table(const Diagnosis& diagnosis, units::System system);

/// Entries of `history`, one row an entry, as files/history_file.hpp reads them.
JobsTable history_table(const History& history, units::System system);

}  // namespace holdback::report
