// The mix: what each job asks for.
#include <algorithm>

#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

/// A job with what is known of it.
struct Row {
  const Job* job{};
  const JobFit* fit{};      // null: no fit
  const JobFacts* facts{};  // null: not checked
  const JobPlan* plan{};    // null: not planned
};

template <typename Entry>
const Entry* called(const std::vector<Entry>& entries, const std::string& job) {
  const auto found = std::find_if(entries.begin(), entries.end(), [&](const Entry& each) { return each.job == job; });
  return found == entries.end() ? nullptr : &*found;
}

std::vector<Row> rows_of(const Dossier& dossier) {
  static const std::vector<JobFacts> none;
  const auto& facts = dossier.size.check ? dossier.size.check->jobs : none;
  std::vector<Row> rows;
  for (const Job& job : dossier.stand.jobs)
    rows.push_back({&job, called(jobs_on_fit(dossier), job.name), called(facts, job.name), plan_of(dossier, job.name)});
  return rows;
}

using Number = std::optional<double>;

const TensionTarget* tension_of(const Row& row) {
  return row.fit != nullptr ? &row.fit->tension : row.facts != nullptr ? &row.facts->tension : nullptr;
}

const RollFacts* roll_of(const Row& row) {
  return row.fit != nullptr ? &row.fit->roll : row.facts != nullptr ? &row.facts->roll_facts : nullptr;
}

Number setpoint(const Row& row) {
  const auto* tension = tension_of(row);
  return tension != nullptr ? Number(tension->setpoint) : row.job->tension;
}

auto of_tension(double TensionTarget::*member) {
  return [member](const Row& row) {
    const auto* tension = tension_of(row);
    return tension == nullptr ? Number{} : Number(tension->*member);
  };
}

auto of_roll(double RollFacts::*member) {
  return [member](const Row& row) {
    const auto* roll = roll_of(row);
    return roll == nullptr ? Number{} : Number(roll->*member);
  };
}

std::string source_of_tension(const Row& row) {
  if (row.job->tension) return "the job";
  const auto* tension = tension_of(row);
  if (tension == nullptr) return "–";
  return tension->governed_by.empty() ? "recommended" : "recommended, by " + tension->governed_by;
}

Number torque_full(const Row& row) {
  if (row.facts != nullptr) return row.facts->run_torque_full;
  return row.plan == nullptr || row.plan->automatic.empty() ? Number{} : Number(row.plan->automatic.front().torque);
}

Number torque_core(const Row& row) {
  if (row.facts != nullptr) return row.facts->run_torque_core;
  return row.plan == nullptr || row.plan->automatic.empty() ? Number{} : Number(row.plan->automatic.back().torque);
}

Table asked(const std::vector<Row>& rows, units::System system) {
  Rows<Row> table(rows, system);
  table.text("job", [](const Row& row) { return row.job->name; })
      .text("web", [](const Row& row) { return row.job->web.name; })
      .input("width", Quantity::short_length, [](const Row& row) { return row.job->web.width; })
      .input("caliper", Quantity::caliper, [](const Row& row) { return row.job->web.caliper; })
      .input("basis weight", Quantity::basis_weight, [](const Row& row) { return row.job->web.basis_weight; })
      .input("core Ø", Quantity::short_length, [](const Row& row) { return row.job->roll.core_diameter; })
      .input("full Ø", Quantity::short_length, [](const Row& row) { return row.job->roll.full_diameter; })
      .input("speed", Quantity::speed, [](const Row& row) { return row.job->speed; })
      .input("share", Quantity::number, [](const Row& row) { return row.job->share; });
  return table.under("Webs, rolls and speeds as given; share: weight in the mix by running time");
}

Table loads(const std::vector<Row>& rows, units::System system) {
  Rows<Row> table(rows, system);
  table.text("job", [](const Row& row) { return row.job->name; })
      .result("tension", Quantity::force, setpoint)
      .result("from", Quantity::force, of_tension(&TensionTarget::low))
      .result("to", Quantity::force, of_tension(&TensionTarget::high))
      .text("tension set by", source_of_tension)
      .result("run torque, full", Quantity::torque, torque_full)
      .result("run torque, core", Quantity::torque, torque_core)
      .result("roll, with core", Quantity::mass, of_roll(&RollFacts::mass))
      .result("web on it", Quantity::web_length, of_roll(&RollFacts::length))
      .cells({"one roll runs", "", true}, [system](const Row& row) {
        const auto* roll = roll_of(row);
        return Cell{roll == nullptr ? "–" : spell(roll->running_time, system), Tone::normal, false, State::holds};
      });
  return table.under("Tension over the whole width with its window, brake torque in steady run, rolls");
}

/// What a job asks of the line beside the line's own times.
bool times_of_its_own(const Row& row) {
  return row.job->ramp_time || row.job->stop_time || row.job->emergency_stop_time;
}

Table times(const std::vector<Row>& rows, units::System system) {
  Rows<Row> table(rows, system);
  table.text("job", [](const Row& row) { return row.job->name; })
      .input("ramp to its speed", Quantity::duration, [](const Row& row) { return row.job->ramp_time; })
      .input("normal stop", Quantity::duration, [](const Row& row) { return row.job->stop_time; })
      .input("emergency stop", Quantity::duration, [](const Row& row) { return row.job->emergency_stop_time; });
  return table.under("Times that jobs state for themselves; the line's own hold for all others");
}

}  // namespace

void mix(Chapter& chapter, const Dossier& dossier) {
  auto rows = rows_of(dossier);
  if (rows.empty()) return;
  chapter.table(asked(rows, chapter.system()));
  chapter.table(loads(rows, chapter.system()));
  rows.erase(std::remove_if(rows.begin(), rows.end(), [](const Row& row) { return !times_of_its_own(row); }),
             rows.end());
  if (!rows.empty()) chapter.table(times(rows, chapter.system()));
}

}  // namespace holdback::papers::selection
