#include <algorithm>
#include <limits>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include "holdback/api/on_site.hpp"
#include "holdback/field/fit_brake.hpp"
#include "holdback/files/patch_stand.hpp"
#include "holdback/files/read_readings.hpp"
#include "holdback/physics/tension.hpp"
#include "holdback/sizing/choose.hpp"
#include "holdback/sizing/site.hpp"
#include "holdback/sizing/target.hpp"
#include "holdback/units/units.hpp"

namespace holdback::api {

namespace {

/// Which brake was read: the one candidate that the options leave, else the one that `size` recommends.
struct Chosen {
  sizing::Candidate candidate{};
  std::optional<Note> noted{};
};

std::optional<Chosen> chosen(const Stand& stand, const Request& request, const sizing::Site& site) {
  sizing::ChooseOptions options;
  options.brake = request.brake;
  options.grade = request.grade;
  options.brakes = request.brakes;
  options.brief = true;
  options.threads = request.threads;
  const auto all = sizing::candidates(stand, site, options);
  if (all.empty()) return std::nullopt;
  if (all.size() == 1) return Chosen{all.front(), std::nullopt};
  const Choice choice = sizing::choose(stand, options);
  const auto is = [&](const sizing::Candidate& each) {
    const Fit fit = sizing::fit_of(each);
    return choice.recommended && fit.brake == choice.recommended->fit.brake &&
           fit.grade == choice.recommended->fit.grade && fit.brakes == choice.recommended->fit.brakes;
  };
  const auto found = std::find_if(all.begin(), all.end(), is);
  const auto& pick = found == all.end() ? all.front() : *found;
  return Chosen{pick, Note{std::string("the brake that was read is taken to be the one that ") +
                           (found == all.end() ? "stands first in the file: " : "is recommended for the mix: ") +
                           std::to_string(pick.brakes) + " × \"" + pick.brake->name + "\", grade \"" +
                           pick.grade->name + "\"; where it is another, name brake, grade and number of brakes"}};
}

field::FitSetup setup_of(const Stand& stand, const Chosen& chosen, const sizing::Site& site) {
  field::FitSetup setup;
  setup.brake = *chosen.candidate.brake;
  setup.grade = *chosen.candidate.grade;
  setup.brakes = chosen.candidate.brakes;
  setup.shaft_drag = stand.drag;
  setup.drag_band = stand.uncertainty.drag;
  setup.pressure_step = site.pressure_step;
  setup.highest_pressure = sizing::pressure_ceiling(site, *chosen.candidate.brake);
  setup.noted = chosen.noted;
  return setup;
}

/// Highest tension [N] that a job's web takes: its shares of yield and of strain, and what the roll was wound with;
/// where none of them is known the top of the job's window.
double web_limit(const Job& job, const Limits& limits) {
  constexpr double none = std::numeric_limits<double>::infinity();
  const double width = job.web.width;
  double limit = none;
  if (const auto yield = physics::web_yield(job.web)) limit = std::min(limit, limits.yield_share * *yield * width);
  if (const auto stiffness = physics::web_stiffness(job.web))
    limit = std::min(limit, limits.strain_limit * *stiffness * width);
  if (job.web.wound_tension) limit = std::min(limit, *job.web.wound_tension * width);
  return limit < none ? limit : sizing::tension_target(job, limits).high;
}

/// What the web on the machine takes. Without a named job it is the weakest one that the tensions read do not exceed,
/// else the strongest of all.
struct WebLimit {
  double tension{};  // [N]
  std::string job{};
};

std::optional<WebLimit> web_limit(const Stand& stand, const std::string& job_name, double read) {
  std::optional<WebLimit> weakest;
  std::optional<WebLimit> strongest;
  for (const Job& job : stand.jobs) {
    if (!job_name.empty() && job.name != job_name) continue;
    const double limit = web_limit(job, stand.limits);
    if (!(limit > 0)) continue;
    if (!strongest || limit > strongest->tension) strongest = WebLimit{limit, job.name};
    if (limit >= read && (!weakest || limit < weakest->tension)) weakest = WebLimit{limit, job.name};
  }
  return weakest ? weakest : strongest;
}

/// The next readings may not ask more of the web than it takes on the smallest roll that was read. A torque without a
/// diameter was read at the shaft, where no web need be.
void give_highest_torque(field::FitSetup& setup, const Stand& stand, const std::string& job_name,
                         const files::ReadingTable& table) {
  std::optional<double> diameter;
  double read = 0;
  for (const auto& row : table.rows) {
    if (row.diameter) diameter = std::min(diameter.value_or(*row.diameter), *row.diameter);
    if (row.tension) read = std::max(read, *row.tension);
    if (row.torque && row.diameter) read = std::max(read, *row.torque * 2 / *row.diameter);
  }
  if (!diameter) return;
  const auto limit = web_limit(stand, job_name, read);
  if (!limit) return;
  setup.highest_torque = limit->tension * *diameter / 2;
  setup.web_noted =
      Note{"the readings to take next keep the web below {0}, what that of job \"" + limit->job +
               "\" takes, on a roll of {1}" +
               (job_name.empty() && stand.jobs.size() > 1 ? "; where another web runs, name its job" : ""),
           {{limit->tension, Quantity::force}, {*diameter, Quantity::short_length}}};
}

/// The diameters that a roll on this stand can have: the job's, else those of all rolls.
struct Diameters {
  double core{};
  double full{};
};

std::optional<Diameters> diameters_of(const Stand& stand, const std::string& job_name) {
  std::optional<Diameters> out;
  const auto add = [&](const Roll& roll) {
    if (!out) out = Diameters{roll.core_diameter, roll.full_diameter};
    out->core = std::min(out->core, roll.core_diameter);
    out->full = std::max(out->full, roll.full_diameter);
  };
  for (const Job& job : stand.jobs)
    if (job_name.empty() || job.name == job_name) add(job.roll);
  return out;
}

class Checker {
 public:
  Checker(const Stand& stand, const Request& request, const field::FitSetup& setup, const files::ReadingTable& table,
          Problems& problems)
      : file_(request.fit->readings.name),
        setup_(setup),
        table_(table),
        problems_(problems),
        diameters_(diameters_of(stand, request.job)) {}

  void check() {
    for (const auto& row : table_.rows) check(row);
    if (has_errors(problems_) || table_.rows.empty()) return;
    std::set<double> pressures;
    for (const auto& row : table_.rows) pressures.insert(row.pressure);
    if (pressures.size() > 1) return;
    const auto& row = table_.rows.front();
    const bool one = table_.rows.size() == 1;
    add(row, "pressure",
        {one ? "there is only one reading, and a line needs two"
             : "all readings are at one pressure, and a line needs two"},
        {"readings at several pressures from {0} up to {1}, and one with the brake released",
         {{setup_.brake.threshold_pressure, Quantity::pressure}, {setup_.highest_pressure, Quantity::pressure}}});
  }

 private:
  void check(const files::ReadingRow& row) {
    if (row.pairs && *row.pairs > setup_.brake.pairs)
      add(row, "pairs",
          {"the brake \"" + setup_.brake.name + "\" has no more than " + std::to_string(setup_.brake.pairs) + " pairs"},
          {"1 to " + std::to_string(setup_.brake.pairs)});
    if (row.pressure > setup_.brake.rated_pressure)
      add(row, "pressure", {"the brake is rated for {0}", {{setup_.brake.rated_pressure, Quantity::pressure}}},
          {"no reading above the rating"}, Severity::warning);
    const bool outside = row.diameter && diameters_ &&
                         (*row.diameter < 0.98 * diameters_->core || *row.diameter > 1.02 * diameters_->full);
    if (outside)
      add(row, "diameter", {"no roll of this stand has this diameter"},
          {"{0} to {1}", {{diameters_->core, Quantity::short_length}, {diameters_->full, Quantity::short_length}}},
          Severity::warning);
  }

  void add(const files::ReadingRow& row, const std::string& column, Note what, Note accepted,
           Severity severity = Severity::error) {
    problems_.push_back(
        files::problem_of_reading(file_, table_, row, column, std::move(what), std::move(accepted), severity));
  }

  std::string file_;
  const field::FitSetup& setup_;
  const files::ReadingTable& table_;
  Problems& problems_;
  std::optional<Diameters> diameters_;
};

/// In SI torque at the shaft: T·D/2 where tension was read.
std::vector<field::BrakeReading> readings_of(const files::ReadingTable& table, const field::FitSetup& setup) {
  std::vector<field::BrakeReading> readings;
  for (const auto& row : table.rows) {
    const double torque = row.torque ? *row.torque : *row.tension * *row.diameter / 2;
    readings.push_back(
        {row.row, row.pressure, torque, row.pairs.value_or(setup.brake.pairs), row.course, row.temperature});
  }
  return readings;
}

bool lacks_pairs(const files::ReadingTable& table) {
  return std::any_of(table.rows.begin(), table.rows.end(), [](const auto& row) { return !row.pairs; });
}

/// The keys of the file that the fit changes.
std::vector<files::BrakeValue> values_of(const BrakeFit& fit, const field::FittedBrake& fitted) {
  const std::string& brake = fitted.brake.name;
  std::vector<files::BrakeValue> values;
  if (std::holds_alternative<DataSheetPad>(fitted.brake.pad))
    values.push_back({brake, fitted.grade.name, "torque_per_pair", fitted.grade.torque_per_pair.value_or(0)});
  else
    values.push_back({brake, fitted.grade.name, "friction", fitted.grade.friction.value_or(0)});
  values.push_back({brake, "", "threshold_pressure", fitted.brake.threshold_pressure});
  if (fit.drag_read) values.push_back({brake, "", "drag", fitted.brake.drag});
  return values;
}

void change_file(const Request& request, const field::FitSetup& setup, Answer& answer) {
  BrakeFit& fit = *answer.fit;
  const auto fitted = field::fitted_brake(fit, setup);
  if (fitted.refusal) {
    fit.refusal = fitted.refusal;
    answer.outcome = Outcome::fails;
    return;
  }
  auto patched = files::patch_stand(request.stand.text, request.stand.name, values_of(fit, fitted));
  if (auto* problem = std::get_if<Problem>(&patched)) {
    fit.refusal = problem->what;
    answer.outcome = Outcome::fails;
    return;
  }
  auto& done = std::get<files::PatchedStand>(patched);
  fit.changes = std::move(done.changes);
  fit.stand_file = std::move(done.text);
}

}  // namespace

void fit(const Stand& stand, const Request& request, Answer& answer) {
  const sizing::Site site = sizing::site_of(stand);
  const auto pick = chosen(stand, request, site);
  files::ReadingTable table = files::read_readings(request.fit->readings.text, request.fit->readings.name);
  answer.columns = table.columns;
  Problems problems = std::move(table.problems);
  if (pick) {
    field::FitSetup setup = setup_of(stand, *pick, site);
    Checker(stand, request, setup, table, problems).check();
    if (!has_errors(problems)) {
      give_highest_torque(setup, stand, request.job, table);
      answer.fit = field::fit_brake(readings_of(table, setup), setup);
      answer.fit->title = stand.title;
      if (lacks_pairs(table))
        answer.fit->assumptions.push_back({"where no pairs are given, all " + std::to_string(setup.brake.pairs) +
                                           " of each brake are taken to be engaged"});
      if (request.fit->write) change_file(request, setup, answer);
    }
  }
  std::stable_sort(problems.begin(), problems.end(), [](const Problem& a, const Problem& b) {
    return std::pair(a.where.line, a.where.column) < std::pair(b.where.line, b.where.column);
  });
  if (has_errors(problems)) answer.outcome = Outcome::bad_input;
  answer.problems.insert(answer.problems.end(), problems.begin(), problems.end());
}

}  // namespace holdback::api
