// The unwind shaft under each job's roll, and the grip on the core.
#include <algorithm>
#include <iterator>

#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

std::vector<JobFit> with_shaft(const std::vector<JobFit>& jobs) {
  std::vector<JobFit> out;
  std::copy_if(jobs.begin(), jobs.end(), std::back_inserter(out),
               [](const JobFit& job) { return job.shaft.has_value(); });
  return out;
}

auto of(double ShaftFacts::*member) {
  return [member](const JobFit& job) { return (*job.shaft).*member; };
}

Table strength(const std::vector<JobFit>& jobs, units::System system) {
  Rows<JobFit> rows(jobs, system);
  rows.text("job", &JobFit::job)
      .result("deflection", Quantity::short_length, of(&ShaftFacts::deflection))
      .result("slope, first bearing", Quantity::angle, of(&ShaftFacts::slope_first))
      .result("slope, second", Quantity::angle, of(&ShaftFacts::slope_second))
      .result("bending", Quantity::stress, of(&ShaftFacts::bending_stress))
      .result("torsion", Quantity::stress, of(&ShaftFacts::torsion_stress))
      .result("safety against fatigue", Quantity::number, of(&ShaftFacts::safety))
      .cells({"in hand", "", true}, [](const JobFit& job) { return in_hand_of(job.limits, LimitId::shaft_fatigue); });
  return rows.under("Shaft under the full roll");
}

Table running(const std::vector<JobFit>& jobs, units::System system) {
  Rows<JobFit> rows(jobs, system);
  rows.text("job", &JobFit::job)
      .result("runs up to", Quantity::rotational_speed, of(&ShaftFacts::top_speed))
      .result("first whirl, core", Quantity::rotational_speed, of(&ShaftFacts::whirl_speed))
      .result("first whirl, full", Quantity::rotational_speed, of(&ShaftFacts::whirl_speed_full))
      .cells({"in hand", "", true}, [](const JobFit& job) { return in_hand_of(job.limits, LimitId::whirl_speed); })
      .result("bearing load", Quantity::force, of(&ShaftFacts::bearing_load))
      .result(
          "bearings last", Quantity::running_time, [](const JobFit& job) { return job.shaft->bearing_life; }, 2)
      .cells({"in hand", "", true}, [](const JobFit& job) { return in_hand_of(job.limits, LimitId::bearing_life); })
      .result("grip torque", Quantity::torque, of(&ShaftFacts::grip_torque))
      .result("at Ø", Quantity::short_length, of(&ShaftFacts::grip_diameter))
      .cells({"in hand", "", true}, [](const JobFit& job) { return in_hand_of(job.limits, LimitId::core_grip); });
  return rows.under("Whirl, bearings (life that 90 % of them reach), torque through the grip on the core");
}

std::string sections(const Shaft& shaft, units::System system) {
  std::string out;
  for (const auto& section : shaft.sections) {
    out += (out.empty() ? "" : "; ") + given(section.length, Quantity::short_length, system) + " of Ø " +
           given(section.diameter, Quantity::short_length, system);
    if (section.bore > 0) out += ", bore " + given(section.bore, Quantity::short_length, system);
  }
  return out;
}

void shaft_facts(Chapter& chapter, const Shaft& shaft) {
  const auto system = chapter.system();
  const auto show = [system](double si, Quantity kind) { return given(si, kind, system); };
  const auto maybe = [&](const std::optional<double>& value, Quantity kind) {
    return value ? show(*value, kind) : std::string("not given");
  };
  chapter.facts({{"support", shaft.support == Support::cantilever ? "both bearings on one side" : "between bearings"},
                 {"span of the bearings", show(shaft.bearing_span, Quantity::short_length)},
                 {"middle of the roll from the first bearing", show(shaft.roll_centre, Quantity::short_length)},
                 {"sections from the first bearing", sections(shaft, system)},
                 {"modulus", show(shaft.modulus, Quantity::modulus)},
                 {"tensile strength", show(shaft.tensile_strength, Quantity::stress)},
                 {"notch factor", show(shaft.notch_factor, Quantity::number)},
                 {"web leaves at, from horizontal", show(shaft.pull_angle, Quantity::angle)},
                 {"bearings", shaft.bearing_kind == BearingKind::ball ? "ball" : "roller"},
                 {"dynamic rating of one bearing", maybe(shaft.bearing_rating, Quantity::force)},
                 {"torque that the grip on the core passes", maybe(shaft.core_grip, Quantity::torque)}});
}

}  // namespace

void shaft(Chapter& chapter, const Dossier& dossier) {
  const auto jobs = with_shaft(jobs_on_fit(dossier));
  if (jobs.empty()) return;
  if (dossier.stand.shaft) shaft_facts(chapter, *dossier.stand.shaft);
  chapter.table(strength(jobs, chapter.system()));
  chapter.table(running(jobs, chapter.system()));
}

}  // namespace holdback::papers::selection
