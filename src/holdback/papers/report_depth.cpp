// Jobs in depth: torque against capacity, every limit, the tension and its window.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/figures.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

Cell number(const Limit& limit, double value, units::System system) {
  const auto kind = info(limit.id).kind;
  return {column_text({value}, kind, system, 3).front(), Tone::normal, false, State::holds};
}

Table limits_table(const std::vector<Limit>& limits, units::System system) {
  Rows<Limit> rows(limits, system);
  rows.text("limit", [](const Limit& limit) { return info(limit.id).name; })
      .cells({"value", "", true}, [=](const Limit& limit) { return number(limit, limit.value, system); })
      .cells({"bound", "", true},
             [=](const Limit& limit) {
               auto cell = number(limit, limit.bound, system);
               cell.text.insert(0, sign_of(info(limit.id).sense));
               return cell;
             })
      .text("unit", [=](const Limit& limit) { return units::unit_of(info(limit.id).kind, system); })
      .cells({"in hand", "", true},
             [](const Limit& limit) {
               return Cell{report::kept_together(report::in_hand(limit.margin)),
                           limit.state == State::fails ? Tone::strong : Tone::normal, false, State::holds};
             })
      .text("where it binds", [=](const Limit& limit) { return where(limit, system); })
      .text("bound known by", [](const Limit& limit) { return known_by(limit.known); })
      .state("state", &Limit::state);
  return rows.under("All limits");
}

std::string source_of(const TensionTarget& tension) {
  return tension.governed_by.empty() ? std::string{} : ", by " + tension.governed_by;
}

void tension_facts(Chapter& chapter, const JobFit& job) {
  const auto system = chapter.system();
  const auto& tension = job.tension;
  const auto force = [system](double si) { return meant(si, Quantity::force, system); };
  std::vector<Fact> facts{
      {"tension, whole width", force(tension.setpoint) + (tension.asked ? ", as the job asks" : ", as recommended")},
      {"window", force(tension.low) + " to " + force(tension.high)},
      {"lowest that can be reached", force(job.lowest_tension) + " at the core"}};
  if (tension.recommended > 0)
    facts.push_back(
        {"recommended", fmt::format("{} ({} to {}){}", force(tension.recommended), force(tension.recommended_low),
                                    force(tension.recommended_high), source_of(tension))});
  if (tension.web_strength > 0) facts.push_back({"web yields at", force(tension.web_strength)});
  chapter.facts(std::move(facts));
}

void roll_facts(Chapter& chapter, const JobFit& job) {
  const auto system = chapter.system();
  const auto show = [system](double si, Quantity kind) { return meant(si, kind, system); };
  chapter.facts({{"pairs engaged", std::to_string(job.pairs) + " on each brake"},
                 {"pressure, full roll", show(job.pressure_full, Quantity::pressure)},
                 {"pressure, core", show(job.pressure_core, Quantity::pressure)},
                 {"slip power, highest", show(job.slip_power, Quantity::power)},
                 {"web on the full roll", show(job.roll.length, Quantity::web_length)},
                 {"full roll, with core", show(job.roll.mass, Quantity::mass)},
                 {"inertia, full roll", show(job.roll.inertia_full, Quantity::inertia)},
                 {"inertia, core", show(job.roll.inertia_core, Quantity::inertia)},
                 {"one roll runs", spell(job.roll.running_time, system)}});
}

std::string place_of(const WindowBound& bound, units::System system) {
  auto out = bound.part.empty() ? std::string{} : report::named(bound.part);
  if (bound.load_case != LoadCase::run) out += (out.empty() ? "" : ", ") + std::string(name_of(bound.load_case));
  const auto at = report::at_diameter(bound.diameter, system);
  return out + (out.empty() || at.empty() ? "" : " ") + at;
}

void window(Chapter& chapter, const JobFit& job, const std::string& under) {
  const auto system = chapter.system();
  Rows<WindowBound> rows(job.window.bounds, system);
  rows.text("bound",
            [](const WindowBound& bound) {
              return (is_lower(bound.id) ? "at least, " : "at most, ") + std::string(name_of(bound.id));
            })
      .result("tension", Quantity::force, &WindowBound::tension)
      .text("where", [=](const WindowBound& bound) { return place_of(bound, system); })
      .text("known by", [](const WindowBound& bound) { return known_by(bound.known); });
  chapter.table(rows.under("What bounds the tension of this web, at the job's speed"));
  if (!job.window.over_speed.empty() || !job.window.over_roll.empty())
    chapter.figure(draw::window_figure(job.window, job.tension, under, system));
}

std::string verdict_of(const JobFit& job, units::System system) {
  const auto* limit = report::find(job.limits, job.binding);
  return fmt::format("{}: {} in hand, {}", key_of(job.state), report::kept_together(report::in_hand(job.margin)),
                     limit == nullptr ? std::string(info(job.binding).name) : report::words_of(*limit, system));
}

void one(Chapter& chapter, const Choice& choice) {
  const auto system = chapter.system();
  const auto& job = *choice.job;
  const auto fit = choice.recommended ? under(choice.recommended->fit, job.pairs) : std::string{};
  const auto under_figure = job.job + (fit.empty() ? "" : " · " + fit);
  chapter.heading("Job " + report::named(job.job));
  if (!fit.empty()) chapter.say(fit + ".");
  chapter.verdict(job.state, verdict_of(job, system));
  if (choice.envelope && !choice.envelope->diameter.empty())
    chapter.figure(draw::torque_figure(*choice.envelope, &job, under_figure, system));
  chapter.table(limits_table(job.limits, system));
  roll_facts(chapter, job);
  tension_facts(chapter, job);
  window(chapter, job, under_figure);
}

}  // namespace

void depth(Chapter& chapter, const Dossier& dossier) {
  const auto jobs = in_depth(dossier);
  if (jobs.size() < dossier.stand.jobs.size() && !jobs.empty())
    chapter.say(fmt::format("{} of {} in depth; every job stands in the tables of the other chapters.", jobs.size(),
                            mix_in_words(dossier.stand.jobs.size())),
                Tone::muted);
  for (const auto* choice : jobs) one(chapter, *choice);
}

}  // namespace holdback::papers::selection
