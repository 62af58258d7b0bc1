#include "holdback/sizing/remedies.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "holdback/numerics/roots.hpp"
#include "holdback/sizing/cooling_curve.hpp"

namespace holdback::sizing {

namespace {

constexpr double slowest_stop = 10;      // a stop is stretched to at most ten times
constexpr double least_speed = 0.2;      // a job is slowed to at least a fifth
constexpr double finest_regulator = 20;  // a regulator is made at most twenty times finer
constexpr double most_pressure = 2;      // the air is raised to at most twice
constexpr int most_shown = 3;            // combined changes

// A stand while a change is tried on it. Owns what it changes; points at nothing outside.
struct Trial {
  Site site;
  Job job;
  Brake brake;
  Grade grade;
  int brakes;
  std::shared_ptr<const CoolingCurve> cooling;  // none: to be made for this brake on this site
  Candidate candidate() const { return candidate_of(brake, grade, brakes, site, 0, cooling); }
};

Assessment assess_trial(const Trial& trial) {
  return assess_job(demand_of(trial.job, trial.site), trial.candidate(), trial.site);
}

bool covers(const Trial& trial) { return assess_trial(trial).state != State::fails; }

// A change: `apply` turns a trial into the changed one, by an amount from 0 (nothing) to 1 (the most that is tried).
// A change without degree ignores the amount. `whole_stand`: other jobs feel it too.
struct Change {
  RemedyKind kind;
  bool by_degree;
  bool whole_stand;
  bool last_resort;  // only when no other change of its kind is enough
  std::function<void(Trial&, double)> apply;
  std::function<Note(const Trial& before, const Trial& after)> describe;
};

double times_of(const Job& job, const Line& line, const std::optional<double>& own, double from_top) {
  return own.value_or(from_top * job.speed / line.top_speed);
}

// Times are given to a tenth of a second, away from the limit.
double stretch(double time, double amount, double most) {
  return std::ceil(time * (1 + (most - 1) * amount) * 10 - 1e-9) / 10;
}

void stretch_stop(Trial& t, double amount) {
  t.job.stop_time = stretch(times_of(t.job, t.site.line, t.job.stop_time, t.site.line.stop_time), amount, slowest_stop);
}

void stretch_emergency_stop(Trial& t, double amount) {
  t.job.emergency_stop_time = stretch(
      times_of(t.job, t.site.line, t.job.emergency_stop_time, t.site.line.emergency_stop_time), amount, slowest_stop);
}

void stretch_ramp(Trial& t, double amount) {
  t.job.ramp_time = stretch(times_of(t.job, t.site.line, t.job.ramp_time, t.site.line.ramp_time), amount, slowest_stop);
}

Note time_note(const std::string& text, const Trial& before, const Trial& after,
               const std::function<double(const Job&, const Line&)>& time) {
  return {text,
          {{time(after.job, after.site.line), Quantity::duration},
           {time(before.job, before.site.line), Quantity::duration}}};
}

double emergency_stop_time(const Job& job, const Line& line) {
  return times_of(job, line, job.emergency_stop_time, line.emergency_stop_time);
}
double stop_time(const Job& job, const Line& line) { return times_of(job, line, job.stop_time, line.stop_time); }
double ramp_time(const Job& job, const Line& line) { return times_of(job, line, job.ramp_time, line.ramp_time); }

std::vector<Change> job_changes() {
  return {
      {RemedyKind::slower_stop, true, false, false, stretch_emergency_stop,
       [](const Trial& b, const Trial& a) {
         return time_note("emergency stop in {0} instead of {1}", b, a, emergency_stop_time);
       }},
      {RemedyKind::slower_stop, true, false, false, stretch_stop,
       [](const Trial& b, const Trial& a) { return time_note("normal stop in {0} instead of {1}", b, a, stop_time); }},
      {RemedyKind::slower_stop, true, false, true,
       [](Trial& t, double amount) {
         stretch_stop(t, amount);
         stretch_emergency_stop(t, amount);
       },
       [](const Trial& b, const Trial& a) {
         Note note =
             time_note("normal stop in {0} instead of {1} and emergency stop in {2} instead of {3}", b, a, stop_time);
         const Note emergency = time_note("", b, a, emergency_stop_time);
         note.amounts.insert(note.amounts.end(), emergency.amounts.begin(), emergency.amounts.end());
         return note;
       }},
      {RemedyKind::slower_ramp, true, false, false, stretch_ramp,
       [](const Trial& b, const Trial& a) { return time_note("ramp up in {0} instead of {1}", b, a, ramp_time); }},
      {RemedyKind::slower_speed, true, false, false,
       [](Trial& t, double amount) {
         // Given to a whole metre per minute, away from the limit; slower than that as it is.
         const double slower = t.job.speed * (1 - (1 - least_speed) * amount);
         const double rounded = std::floor(slower * 60 + 1e-9) / 60;
         t.job.speed = rounded > 0 ? rounded : slower;
       },
       [](const Trial& b, const Trial& a) {
         return Note{"run at {0} instead of {1}", {{a.job.speed, Quantity::speed}, {b.job.speed, Quantity::speed}}};
       }},
  };
}

std::vector<Change> stand_changes() {
  return {
      {RemedyKind::regulator, true, true, false,
       [](Trial& t, double amount) {
         const double finer = 1 - (1 - 1 / finest_regulator) * amount;
         t.site.air_floor *= finer;
         t.site.pressure_step *= finer;
         t.site.hysteresis *= finer;
       },
       [](const Trial& b, const Trial& a) {
         return Note{"a regulator that controls down to {0} and keeps its setting within {1}, instead of {2} and {3}",
                     {{a.site.air_floor, Quantity::pressure},
                      {a.site.pressure_step, Quantity::pressure},
                      {b.site.air_floor, Quantity::pressure},
                      {b.site.pressure_step, Quantity::pressure}}};
       }},
      {RemedyKind::regulator, true, true, false,
       [](Trial& t, double amount) { t.site.air_ceiling *= 1 + (most_pressure - 1) * amount; },
       [](const Trial& b, const Trial& a) {
         return Note{"air supply and regulator good for {0} instead of {1}",
                     {{a.site.air_ceiling, Quantity::pressure}, {b.site.air_ceiling, Quantity::pressure}}};
       }},
      {RemedyKind::guard, false, true, false,
       [](Trial& t, double) {
         t.site.guard = Guard::mesh;
         t.site.guard_factor.reset();
         t.site.guard_opening.reset();
         t.cooling = nullptr;
       },
       [](const Trial& b, const Trial&) {
         const double slowest = b.job.speed / b.job.roll.full_radius();
         return Note{
             "a guard that lets free air through (mesh with open base), instead of one that leaves {0} of the cooling",
             {{b.candidate().cooling->guard_share(slowest), Quantity::ratio}}};
       }},
      {RemedyKind::more_pairs, false, true, false, [](Trial& t, double) { ++t.brake.pairs; },
       [](const Trial&, const Trial& a) {
         return Note{"{0} pad pairs on each brake, one more (if the maker offers it)",
                     {{static_cast<double>(a.brake.pairs), Quantity::count}}};
       }},
      {RemedyKind::second_brake, false, true, false, [](Trial& t, double) { ++t.brakes; },
       [](const Trial&, const Trial& a) {
         std::string text = "{0} brakes on the shaft, one more";
         if (a.brakes > a.brake.most_brakes) text += " than the file allows room for";
         return Note{text, {{static_cast<double>(a.brakes), Quantity::count}}};
       }},
  };
}

void add_other_fits(std::vector<Change>& changes, const Coverage& coverage, const Candidate& chosen) {
  for (const Candidate& fit : coverage.fits) {
    const bool same_brake = fit.brake == chosen.brake;
    if (same_brake && (fit.brakes != chosen.brakes || fit.grade == chosen.grade)) continue;
    changes.push_back({same_brake ? RemedyKind::other_grade : RemedyKind::other_brake, false, true, false,
                       [fit](Trial& t, double) {
                         t.brake = *fit.brake;
                         t.grade = *fit.grade;
                         t.brakes = fit.brakes;
                         t.cooling = fit.cooling;
                       },
                       [fit, same_brake](const Trial&, const Trial&) {
                         const std::string grade = "grade " + fit.grade->name;
                         if (same_brake) return Note{grade + " on the whole stand", {}};
                         return Note{std::to_string(fit.brakes) + " × " + fit.brake->name + " with " + grade, {}};
                       }});
  }
}

// Runs the changes of one job on one fit.
class Search {
 public:
  Search(const Stand& stand, const Site& site, const Coverage& coverage, std::size_t chosen, std::size_t job)
      : stand_(stand),
        coverage_(coverage),
        chosen_(chosen),
        job_(job),
        before_{site,
                stand.jobs[job],
                *coverage.fits[chosen].brake,
                *coverage.fits[chosen].grade,
                coverage.fits[chosen].brakes,
                coverage.fits[chosen].cooling} {}

  std::vector<Remedy> run() {
    changes_ = job_changes();
    for (Change& change : stand_changes()) changes_.push_back(std::move(change));
    const std::size_t combinable = changes_.size();
    add_other_fits(changes_, coverage_, coverage_.fits[chosen_]);
    for (const Change& change : changes_)
      if (!change.last_resort || !has_found(change.kind)) try_changes({&change});
    drop_weaker_fits();
    if (found_.empty()) try_pairs(combinable);
    std::stable_sort(found_.begin(), found_.end(), [](const Remedy& a, const Remedy& b) {
      return std::pair(a.jobs_lost.size(), a.kind) < std::pair(b.jobs_lost.size(), b.kind);
    });
    return found_;
  }

 private:
  bool has_found(RemedyKind kind) const {
    return std::any_of(found_.begin(), found_.end(), [kind](const Remedy& r) { return r.kind == kind; });
  }

  void try_changes(const std::vector<const Change*>& changes) {
    const auto changed = [&](double amount) {
      Trial trial = before_;
      for (const Change* change : changes) change->apply(trial, amount);
      return trial;
    };
    if (!covers(changed(1))) return;
    double amount = 1;
    if (std::any_of(changes.begin(), changes.end(), [](const Change* c) { return c->by_degree; }))
      amount = numerics::find_boundary([&](double a) { return covers(changed(a)); }, 1, 0, 1e-4);
    record(changes, changed(amount));
  }

  // Whole-stand changes can be combined with changes of the job; other fits are candidates of their own already.
  void try_pairs(std::size_t combinable) {
    for (std::size_t a = 0; a < combinable; ++a)
      for (std::size_t b = a + 1; b < combinable && found_.size() < most_shown; ++b)
        if (changes_[a].kind != changes_[b].kind) try_changes({&changes_[a], &changes_[b]});
  }

  void record(const std::vector<const Change*>& changes, const Trial& after) {
    Remedy remedy;
    remedy.kind = changes.size() == 1 ? changes.front()->kind : RemedyKind::combined;
    for (const Change* change : changes) append(remedy.what, change->describe(before_, after));
    const Assessment assessment = assess_trial(after);
    remedy.state = assessment.state;
    remedy.binding = assessment.binding;
    remedy.margin = assessment.margin;
    if (std::any_of(changes.begin(), changes.end(), [](const Change* c) { return c->whole_stand; }))
      count_other_jobs(remedy, after);
    found_.push_back(remedy);
  }

  // Joins "a {0}" and "b {0}" to "a {0}, and b {1}".
  static void append(Note& to, const Note& more) {
    std::string text = more.text;
    for (std::size_t i = more.amounts.size(); i-- > 0;) {
      const std::string from = fmt::format("{{{}}}", i);
      const std::string with = fmt::format("{{{}}}", i + to.amounts.size());
      for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + with.size()))
        text.replace(at, from.size(), with);
    }
    to.text += (to.text.empty() ? "" : ", and ") + text;
    to.amounts.insert(to.amounts.end(), more.amounts.begin(), more.amounts.end());
  }

  void count_other_jobs(Remedy& remedy, const Trial& after) const {
    const Candidate changed = after.candidate();
    for (std::size_t j = 0; j < stand_.jobs.size(); ++j) {
      if (j == job_) continue;
      const bool covered = coverage_.verdicts[chosen_][j].state != State::fails;
      const Demand demand = demand_of(stand_.jobs[j], after.site);
      const bool covered_after = assess_job(demand, changed, after.site).state != State::fails;
      if (covered && !covered_after) remedy.jobs_lost.push_back(demand.job);
      if (!covered && covered_after) remedy.jobs_won.push_back(demand.job);
    }
  }

  // Of the other brakes only the one that loses fewest jobs is worth telling, and only the best grade.
  void drop_weaker_fits() {
    for (const RemedyKind kind : {RemedyKind::other_grade, RemedyKind::other_brake}) {
      const auto of_kind = [kind](const Remedy& r) { return r.kind == kind; };
      const auto best = std::min_element(found_.begin(), found_.end(), [&](const Remedy& a, const Remedy& b) {
        if (of_kind(a) != of_kind(b)) return of_kind(a);
        return a.jobs_lost.size() < b.jobs_lost.size();
      });
      if (best == found_.end() || !of_kind(*best)) continue;
      const Remedy kept = *best;
      found_.erase(std::remove_if(found_.begin(), found_.end(), of_kind), found_.end());
      found_.push_back(kept);
    }
  }

  const Stand& stand_;
  const Coverage& coverage_;
  std::size_t chosen_;
  std::size_t job_;
  Trial before_;
  std::vector<Change> changes_{};
  std::vector<Remedy> found_{};
};

}  // namespace

std::vector<Remedy> remedies(const Stand& stand, const Site& site, const Coverage& coverage, std::size_t chosen,
                             std::size_t job) {
  return Search(stand, site, coverage, chosen, job).run();
}

}  // namespace holdback::sizing
