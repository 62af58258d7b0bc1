// The card for who changes the pads: which pads, how long they last, how to change them, and room for a log.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/cells.hpp"
#include "holdback/papers/card_parts.hpp"
#include "holdback/papers/papers.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers {

namespace {

using selection::Chapter;
using Q = Quantity;

constexpr double text_size = 10;     // [pt]
constexpr double room_to_write = 9;  // [mm] height of a row that is filled by hand
constexpr int log_rows = 8;
constexpr double first_check = 1.0 / 3;  // of the shortest life: common practice, no source
constexpr std::size_t most_jobs = 8;     // with a row of their own; of more, those whose pads wear fastest

/// What the card speaks of. Brake and grade are in the stand.
struct Subject {
  const Dossier& dossier;
  const FitResult& result;
  const Brake& brake;
  const Grade& grade;
  units::System system{};

  std::string length(double si) const { return selection::given(si, Q::short_length, system); }
  std::string temperature(double kelvin) const { return cards::degrees(kelvin, system); }
};

std::string pad_words(const Subject& about) {
  if (const auto* sector = std::get_if<SectorPad>(&about.brake.pad))
    return fmt::format("sector, Ø {} to Ø {}, {}", about.length(sector->inner_diameter),
                       about.length(sector->outer_diameter), selection::given(sector->angle, Q::angle, about.system));
  if (const auto* round = std::get_if<RoundPad>(&about.brake.pad))
    return fmt::format("round, Ø {}, on a circle of Ø {}", about.length(round->pad_diameter),
                       about.length(round->centre_diameter));
  return "as the maker's data sheet has it";
}

/// Jobs that the fit covers and that wear pads, the one with the shortest life first.
std::vector<const JobFit*> wearing(const Subject& about) {
  std::vector<const JobFit*> jobs;
  for (const JobFit& job : about.result.jobs)
    if (job.state != State::fails && std::isfinite(job.wear.life) && job.wear.life > 0) jobs.push_back(&job);
  std::sort(jobs.begin(), jobs.end(), [](const JobFit* a, const JobFit* b) { return a->wear.life < b->wear.life; });
  return jobs;
}

void pads(Chapter& card, const Subject& about) {
  const Fit& fit = about.result.fit;
  const int number = 2 * fit.brakes * fit.pairs;
  card.facts({{"brakes", fmt::format("{} × {}, {} pairs", fit.brakes, draw::plain(fit.brake), fit.pairs)},
              {"pads", fmt::format("{}, grade {}", number, fit.grade)},
              {"shape", pad_words(about)},
              {"wear allowed", about.length(about.brake.usable_pad_depth)},
              {"thickness, new", "________ (maker)"},
              {"thickness, limit", "________ (maker)"},
              {"disc, limit", "________ (maker)"},
              {"grade bears up to", about.temperature(about.grade.temperature_limit)}},
             2);
}

// ---- how long they last --------------------------------------------------------------------------------------------

/// How likely the pads last as long as was asked, over what is not known for sure; empty when that was not looked into.
std::string how_likely(const JobFit& job) {
  if (!job.likelihood) return "–";
  for (const Chance& chance : job.likelihood->limits)
    if (chance.id == LimitId::pad_life) return selection::chance(chance.probability);
  return selection::chance(1);
}

void interval_table(Chapter& card, const Subject& about, const std::vector<const JobFit*>& jobs) {
  Table table;
  table.caption = "Pad life by job, each run alone";
  table.columns = {
      {"job", "", false},
      {"pairs", "", true},
      {"running", units::unit_of(Q::running_time, about.system), true},
      {"calendar", units::unit_of(Q::calendar_time, about.system), true},
      {"rolls", "", true},
      {fmt::format("chance of {}", selection::life(about.dossier.stand.limits.least_pad_life, about.system)), "",
       true}};
  const std::size_t shown = std::min(jobs.size(), most_jobs);
  std::vector<double> running;
  std::vector<double> calendar;
  std::vector<double> rolls;
  for (std::size_t i = 0; i < shown; ++i) {
    running.push_back(jobs[i]->wear.life);
    calendar.push_back(jobs[i]->wear.weeks);
    rolls.push_back(jobs[i]->wear.rolls);
  }
  const auto hours = selection::column_text(running, Q::running_time, about.system, 2);
  const auto weeks = selection::column_text(calendar, Q::calendar_time, about.system, 2);
  const auto number = selection::column_text(rolls, Q::number, about.system, 2);
  for (std::size_t i = 0; i < shown; ++i) {
    std::vector<Cell> row;
    for (auto text :
         {jobs[i]->job, std::to_string(jobs[i]->pairs), hours[i], weeks[i], number[i], how_likely(*jobs[i])})
      row.push_back({std::move(text), Tone::normal, false, State::holds});
    table.rows.push_back(std::move(row));
  }
  card.table(std::move(table));
  if (shown < jobs.size())
    card.say(fmt::format("Left out: {} whose pads last longer.",
                         report::counted(static_cast<int>(jobs.size() - shown), "job")),
             Tone::muted);
}

void intervals(Chapter& card, const Subject& about) {
  card.heading("How long the pads last");
  const auto jobs = wearing(about);
  if (jobs.empty()) {
    card.say("No job of the mix that this fit covers tells how long: read the pads at every roll at first.");
    return;
  }
  const auto life = [&](double seconds) { return selection::life(seconds, about.system); };
  const double shortest = jobs.front()->wear.life;
  const double longest = jobs.back()->wear.life;
  std::vector<Fact> facts{
      {"first check, running", life(first_check * shortest)},
      {"life, by job", jobs.size() > 1 ? fmt::format("{} to {}", life(shortest), life(longest)) : life(shortest)}};
  if (about.result.pads_per_year > 0)
    facts.push_back({"pads a year, the mix", selection::meant(about.result.pads_per_year, Q::number, about.system, 2)});
  card.facts(std::move(facts), 3);
  interval_table(card, about, jobs);
  card.say(
      "The wear rate of a grade is known to a factor, not to per cent, and the first pairs wear first, since they "
      "are always engaged. After two readings go by what was read: \"holdback history\" reckons the next change "
      "from this log.");
}

// ---- changing them -------------------------------------------------------------------------------------------------

struct Cooling {
  double longest{};  // [s]
  double hottest{};  // [K]
  bool known{};
  bool never{};
};

Cooling cooling(const Subject& about) {
  Cooling out;
  for (const JobFit& job : about.result.jobs) {
    out.hottest = std::max(out.hottest, job.hottest);
    if (!job.thermal) continue;
    out.known = true;
    out.never = out.never || job.thermal->never_cool;
    out.longest = std::max(out.longest, job.thermal->time_to_open);
    out.hottest = std::max(out.hottest, job.thermal->disc_highest);
  }
  return out;
}

std::string cooling_words(const Subject& about, const Cooling& cool) {
  const auto touch = about.temperature(about.dossier.stand.limits.touch_temperature);
  if (cool.never) return fmt::format("The air here is too warm for the disc to get below {} by itself: cool it", touch);
  if (!cool.known) return fmt::format("Let the disc cool below {}; how long that takes is not known", touch);
  if (!(cool.longest > 0)) return fmt::format("The disc stays below {}; measure it all the same", touch);
  return fmt::format("Let the disc cool below {}: up to {} of standing", touch, cards::waiting(cool.longest));
}

void warn(Chapter& card, const Subject& about, const Cooling& cool) {
  card.warning(Signal::danger,
               "A loaded roll turns by itself once the brake is released, and crushes. Empty the stand, or secure the "
               "roll against turning by other means than this brake.");
  card.warning(Signal::warning,
               "Stored air closes the pads on fingers. Lock out the energy, let the air off and see the gauge at zero "
               "before the guard comes off.");
  if (cool.hottest > about.dossier.stand.limits.touch_temperature)
    card.warning(Signal::warning,
                 fmt::format("The disc gets to {}. Measure it before it is touched.", about.temperature(cool.hottest)));
  card.warning(Signal::caution, "Do not blow pad dust about: take it up with a vacuum cleaner made for it, or wet.");
}

void steps(Chapter& card, const Subject& about, const Cooling& cool) {
  const double least = std::max(about.dossier.stand.air.lowest_pressure, about.brake.threshold_pressure);
  const auto floor = selection::given(least, Q::pressure, about.system);
  card.heading("Change the pads, in this order");
  card.items(
      {"Stop the line. Empty the stand, or secure the roll against turning.",
       "Isolate every source of energy and lock it out; each person sets a lock of their own.",
       "Let the air off the brake line and prove zero pressure at the brake's own gauge.",
       cooling_words(about, cool) + ". Prove it with a contact thermometer.",
       "Take the guard off. Look into its openings: dust in them makes the disc hotter than this card says.",
       "Measure every pad and the disc in four places; write them into the log below before anything is changed.",
       "Change all pads of one disc as a set, of one grade. Never mix grades on the stand. Torques and values of the "
       "fasteners: as the maker states.",
       "Look at springs, pins and hoses. Oil on pads: new pads. Oil or scoring on the disc: clean it, or as the maker "
       "states.",
       "Refit the guard. Take off the locks, each person their own. Give air.",
       fmt::format("Run in: slow slip at low pressure, a little above {}, short and with pauses, until the pads bear "
                   "over most of "
                   "their face; keep the disc well below {}.",
                   floor, about.temperature(about.grade.temperature_limit)),
       "Check again: take the readings of the commissioning sheet; they must lie inside its bounds.",
       "Write it into the history of the stand: date, pads, depth, reason."},
      true);
}

void check_guard(Chapter& card, const Subject& about, const Cooling& cool) {
  card.heading("Guard and cooling, at every check");
  std::string hot = "Disc at the end of a roll: ________.";
  if (cool.hottest > 0)
    hot = fmt::format("Disc at the end of a roll: ________, expected at most {}; rated for {}.",
                      about.temperature(cool.hottest), about.temperature(about.brake.rated_temperature));
  card.items({"Guard closed, whole, its openings free.", "Nothing blocks the air around the disc.", std::move(hot)});
}

void log(Chapter& card, const Subject& about) {
  Table table;
  table.caption =
      "Pad readings: what is left of the wear allowed, always at the same place, the hottest pad among them";
  table.row_height = room_to_write;
  const std::string unit = units::unit_of(Q::short_length, about.system);
  table.columns = {{"date", "year-month-day", false}, {"run", "hours", false},       {"brake, pair", "", false},
                   {"pad, inside", unit, false},      {"pad, outside", unit, false}, {"disc", unit, false},
                   {"changed", "yes or no", false},   {"by", "initials", false}};
  table.rows.resize(log_rows, std::vector<Cell>(table.columns.size()));
  card.table(std::move(table));
}

}  // namespace

Paper maintenance_card(const Dossier& dossier) {
  Paper paper;
  paper.kind = Kind::maintenance_card;
  paper.file = "maintenance-card";
  paper.title = std::string(name_of(paper.kind));
  paper.subject = draw::plain(dossier.stand.title);
  paper.date = dossier.date;
  paper.size = text_size;
  Chapter card(dossier.system);
  const FitResult* result = selection::recommended(dossier);
  const Brake* brake = result == nullptr ? nullptr : cards::find_brake(dossier.stand, result->fit);
  const Grade* grade = result == nullptr ? nullptr : cards::find_grade(dossier.stand, result->fit);
  if (grade == nullptr) {
    card.verdict(State::fails, "fails: the stand has no brake to maintain");
  } else {
    const Subject about{dossier, *result, *brake, *grade, dossier.system};
    const Cooling cool = cooling(about);
    pads(card, about);
    warn(card, about, cool);
    steps(card, about, cool);
    intervals(card, about);
    check_guard(card, about, cool);
    log(card, about);
  }

  paper.blocks = card.take();
  return paper;
}

}  // namespace holdback::papers
