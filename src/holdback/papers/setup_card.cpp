// The card at the machine for one job: what to engage, what to set, what to expect, what to do when it is not so.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/cells.hpp"
#include "holdback/draw/pads_sketch.hpp"
#include "holdback/papers/card_parts.hpp"
#include "holdback/papers/papers.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers {

namespace {

using selection::Chapter;
using Q = Quantity;

constexpr double text_size = 12.5;      // [pt] for reading at an arm's length
constexpr std::size_t most_in_one = 6;  // settings; more stand in two halves beside each other
constexpr int large_columns = 2;        // of the facts that are read from an arm's length
constexpr std::size_t loop_checks = 3;  // diameters at which a loop's pressure is checked

/// All that a card speaks of. The plan is there; the rest may be missing.
struct Subject {
  const Dossier& dossier;
  const JobPlan& plan;
  const Job* job{};
  const JobFit* fit{};
  units::System system{};

  std::string shown(double si, Q kind) const { return selection::meant(si, kind, system); }
};

/// Whether hands or the machine may come to harm when this limit is not kept, rather than web and product.
bool harms(LimitId id) {
  using enum LimitId;
  constexpr std::array harmful{emergency_stop_torque, holding_torque, torque_rating,    disc_speed, disc_temperature,
                               pad_temperature,       stop_surface,   stop_temperature, core_grip,  shaft_fatigue,
                               whirl_speed,           roll_balance};
  return std::find(harmful.begin(), harmful.end(), id) != harmful.end();
}

std::vector<const Limit*> in_state(const JobFit* fit, State state) {
  std::vector<const Limit*> out;
  if (fit == nullptr) return out;
  for (const Limit& limit : fit->limits)
    if (limit.state == state) out.push_back(&limit);
  return out;
}

// ---- a job that is not to be run -----------------------------------------------------------------------------------

void remedies(Chapter& card, const Subject& about) {
  std::vector<std::string> items;
  for (const Uncovered& one : about.dossier.size.choice->uncovered) {
    if (one.job != about.plan.job) continue;
    for (const Remedy& remedy : one.remedies) items.push_back(selection::sentence(remedy.what, about.system));
  }
  constexpr std::size_t most = 4;
  if (items.size() > most) items.resize(most);
  card.heading("What would bring it in, for whoever plans the stand");
  card.items(std::move(items));
}

void refuse(Chapter& card, const Subject& about) {
  const auto failing = in_state(about.fit, State::fails);
  const bool danger = std::any_of(failing.begin(), failing.end(), [](const Limit* limit) { return harms(limit->id); });
  card.verdict(State::fails, fmt::format("fails: {}", info(about.plan.binding).name));
  card.warning(danger ? Signal::danger : Signal::warning,
               "Do not run this job from this card: on this stand it does not keep the limits below. Settings are left "
               "out on purpose; the selection report says more.");
  std::vector<std::string> items;
  for (const Limit* limit : failing) items.push_back(report::words_of(*limit, about.system));
  card.items(std::move(items));
  if (about.dossier.size.choice) remedies(card, about);
}

// ---- facts and settings --------------------------------------------------------------------------------------------

void state_line(Chapter& card, const Subject& about) {
  if (about.plan.state == State::holds) return card.verdict(State::holds, "holds: every limit has its reserve");
  std::string names;
  for (const Limit* limit : in_state(about.fit, State::tight))
    names += fmt::format("{}{} {}", names.empty() ? "" : ", ", info(limit->id).name,
                         report::kept_together(report::in_hand(limit->margin)));
  if (names.empty()) names = info(about.plan.binding).name;
  card.verdict(State::tight, fmt::format("tight: {}", names));
}

void facts(Chapter& card, const Subject& about) {
  const auto& tension = about.plan.tension;
  if (about.job != nullptr)
    card.facts({{"web", about.job->web.name},
                {"width", selection::meant(about.job->web.width, Q::short_length, about.system, 4)},
                {"speed", selection::meant(about.job->speed, Q::speed, about.system, 4)}},
               3);
  card.facts({{"tension", about.shown(tension.setpoint, Q::force)},
              {"keep it within", cards::range(tension.low, tension.high, Q::force, about.system)}},
             large_columns);
}

Cell strong(std::string text) { return {std::move(text), Tone::strong, false, State::holds}; }
Cell plain(std::string text) { return {std::move(text), Tone::normal, false, State::holds}; }

/// Texts of a column of settings.
template <typename Entry>
std::vector<std::string> texts(const std::vector<Entry>& entries, double Entry::*member, Q kind, units::System system) {
  std::vector<double> values;
  for (const Entry& entry : entries) values.push_back(entry.*member);
  return selection::column_text(values, kind, system, 3);
}

/// The hand-setting card; a long one in two halves, first the larger diameters.
Table by_hand(const Subject& about) {
  const auto& settings = about.plan.by_hand;
  const auto system = about.system;
  const auto from = texts(settings, &HandSetting::from, Q::short_length, system);
  const auto pressure = texts(settings, &HandSetting::pressure, Q::pressure, system);
  const auto first = texts(settings, &HandSetting::tension_from, Q::force, system);
  const auto last = texts(settings, &HandSetting::tension_to, Q::force, system);
  const std::size_t halves = settings.size() > most_in_one ? 2 : 1;
  const std::size_t rows = (settings.size() + halves - 1) / halves;
  Table table;
  table.caption =
      fmt::format("Set by hand; keeps the tension within ±{}", units::show(about.plan.tolerance, Q::ratio, system, 2));
  table.large = true;
  table.rows.resize(rows);
  for (std::size_t half = 0; half < halves; ++half) {
    table.columns.push_back({"from Ø", units::unit_of(Q::short_length, system), true});
    table.columns.push_back({"set", units::unit_of(Q::pressure, system), true});
    table.columns.push_back({"tension then", units::unit_of(Q::force, system), false});
    for (std::size_t i = half * rows; i < std::min(settings.size(), (half + 1) * rows); ++i) {
      auto& row = table.rows[i - half * rows];
      row.push_back(plain(from[i]));
      row.push_back(strong(pressure[i]));
      row.push_back(plain(report::kept_together(first[i] + " to " + last[i])));
    }
  }
  return table;
}

/// Points spread evenly, the first and the last among them.
std::vector<PlanPoint> some_of(const std::vector<PlanPoint>& points, std::size_t most) {
  if (points.size() <= most) return points;
  std::vector<PlanPoint> out;
  for (std::size_t i = 0; i < most; ++i) out.push_back(points[i * (points.size() - 1) / (most - 1)]);
  return out;
}

std::string control_words(ControlKind kind) {
  if (kind == ControlKind::diameter) return "by the diameter";
  return std::string("by the ") + std::string(key_of(kind));
}

Table by_control(const Subject& about, std::size_t most) {
  const auto points = some_of(about.plan.automatic, most);
  const auto system = about.system;
  const auto diameter = texts(points, &PlanPoint::diameter, Q::short_length, system);
  const auto pressure = texts(points, &PlanPoint::pressure, Q::pressure, system);
  Table table;
  table.large = true;
  table.caption = about.dossier.stand.control.kind == ControlKind::diameter
                      ? "Pressure over the diameter, as the controller is to have it"
                      : "For check: pressure on the gauge in steady run, usual friction";
  table.columns = {{"Ø", units::unit_of(Q::short_length, system), true},
                   {"pressure", units::unit_of(Q::pressure, system), true},
                   {"", "", false}};
  for (std::size_t i = 0; i < points.size(); ++i)
    table.rows.push_back({plain(diameter[i]), strong(pressure[i]),
                          plain(i == 0                   ? "full roll"
                                : i + 1 == points.size() ? "core"
                                                         : "")});
  return table;
}

void gains(std::vector<Fact>& facts, const Subject& about) {
  for (const Answer& answer : about.dossier.tunings) {
    if (!answer.tuning || answer.tuning->job != about.plan.job || answer.tuning->loops.empty()) continue;
    const LoopTuning& loop = answer.tuning->loops.front();
    facts.push_back({loop.schedule == GainSchedule::diameter ? "gain, follows the diameter" : "gain, fixed",
                     selection::meant(loop.gain, Q::number, about.system)});
    facts.push_back({"integral time", selection::meant(loop.integral_time, Q::duration, about.system)});
  }
}

void settings(Chapter& card, const Subject& about) {
  const ControlKind kind = about.dossier.stand.control.kind;
  if (kind == ControlKind::hand) {
    if (about.plan.by_hand.empty()) return card.say("No setting by hand keeps the tolerance.", Tone::strong);
    return card.table(by_hand(about));
  }
  std::vector<Fact> facts{{"control", control_words(kind)},
                          {"setpoint", about.shown(about.plan.tension.setpoint, Q::force)}};
  if (kind != ControlKind::diameter) gains(facts, about);
  card.facts(std::move(facts), 4);
  card.table(by_control(about, kind == ControlKind::diameter ? about.plan.automatic.size() : loop_checks));
}

// ---- checking and mending ------------------------------------------------------------------------------------------

void check_tension(Chapter& card, const Subject& about) {
  const auto& plan = about.plan;
  std::string text;
  if (about.dossier.stand.load_cell)
    text = fmt::format("The load cell shows {}. ",
                       cards::range(plan.tension.low, plan.tension.high, Q::force, about.system));
  const Measurement* push = cards::find_push(about.dossier, plan.job);
  if (push != nullptr && !push->instruction.expected.empty()) {
    text += "Check by a push, standing still, line locked, brake set as in running: ";
    text += report::filled(push->instruction.expected.front(), about.system);
    text += ", in its middle. Less force is less tension.";
  } else {
    text += fmt::format(
        "Check the tension standing still, by one of the ways of \"holdback measure\": expect {}. How hard a push is "
        "is not known here.",
        about.shown(plan.tension.setpoint, Q::force));
  }
  card.say(text);
}

/// "never above 5.5 bar", as far as it is known.
std::string ceiling(const Subject& about) {
  const Limit* limit = about.fit == nullptr ? nullptr : report::find(about.fit->limits, LimitId::highest_pressure);
  return limit == nullptr ? "never above the rating of the brake"
                          : fmt::format("never above {}", about.shown(limit->bound, Q::pressure));
}

std::string too_hot(const Subject& about) {
  const Limit* limit = about.fit == nullptr ? nullptr : report::find(about.fit->limits, LimitId::disc_temperature);
  return limit == nullptr ? "Disc too hot" : fmt::format("Disc near {}", cards::degrees(limit->bound, about.system));
}

std::string against_slack(const Subject& about) {
  if (about.fit == nullptr || about.fit->stop.runs_away)
    return "Stop more slowly, and have the brake looked at before the next roll.";
  const StopFacts& stop = about.fit->stop;
  const double least = std::max(stop.time, stop.shortest_taut_stop);
  return fmt::format("Take {} or more for a stop. Still slack: have the brake measured.", cards::waiting(least));
}

void mend(Chapter& card, const Subject& about) {
  const bool hand = about.dossier.stand.control.kind == ControlKind::hand;
  Table table;
  table.columns = {{"What you see", "", false}, {"What to do", "", false}};
  const auto row = [&](std::string seen, std::string done) {
    table.rows.push_back({strong(std::move(seen)), plain(std::move(done))});
  };
  row("Tension low", fmt::format("Count the pairs that bite. Look for oil, glaze, wear. Pressure {}.", ceiling(about)));
  row("Tension high", "Count the pairs. Compare gauge and card. Released pads must not rub.");
  row("Tension wanders", hand ? "Once a turn: seat the roll anew. Slowly: set for the diameter."
                              : "Once a turn: seat the roll anew. By itself: have the loop tuned.");
  row("Pressure does not follow", "Look at supply, hose, regulator. Come to it from below.");
  row(too_hot(about), "Stop. Free the guard's openings. Find the cause first.");
  row("Slack in a stop", against_slack(about));

  card.table(std::move(table));
}

/// How hot the disc gets and when it may be touched; empty when it stays cool.
std::string hot_words(const Subject& about, const JobFit& fit) {
  const double touch = about.dossier.stand.limits.touch_temperature;
  const double hottest = fit.thermal ? fit.thermal->disc_highest : fit.hottest;
  if (!(hottest > touch)) return {};
  auto text = fmt::format(" The disc gets to {}: open the guard below {}", cards::degrees(hottest, about.system),
                          cards::degrees(touch, about.system));
  if (!fit.thermal) return text + ".";
  if (fit.thermal->never_cool) return text + ", which it does not reach by itself in this air.";
  return text + fmt::format(", after {} of standing.", cards::waiting(fit.thermal->time_to_open));
}

void warn(Chapter& card, const Subject& about) {
  if (about.fit != nullptr && about.fit->web_break.runs_away)
    card.warning(Signal::danger, "After a web break nothing stops the roll: keep everybody away from it.");
  card.warning(Signal::warning,
               "Nips and web pull in, the roll does not stop at once: guards closed, hands off whatever turns." +
                   (about.fit == nullptr ? std::string{} : hot_words(about, *about.fit)));
}

void run_from(Chapter& card, const Subject& about) {
  state_line(card, about);
  facts(card, about);
  auto sketch = draw::pads_sketch({about.plan.fit.brakes, about.plan.fit.pairs, about.plan.pairs});
  const double share = draw::share_of_width(sketch);
  card.figure(std::move(sketch), share);
  settings(card, about);
  check_tension(card, about);
  mend(card, about);
  warn(card, about);
}

/// "card-03-clear-labels": in the order of the mix, so that a folder sorts as the mix does.
std::string file_name(const Dossier& dossier, const std::string& job) {
  const auto& jobs = dossier.stand.jobs;
  const auto found = std::find_if(jobs.begin(), jobs.end(), [&](const Job& one) { return one.name == job; });
  const int width = jobs.size() < 100 ? 2 : 3;
  return fmt::format("card-{:0{}}-{}", found - jobs.begin() + 1, width, cards::file_part(job));
}

}  // namespace

Paper setup_card(const Dossier& dossier, const std::string& job) {
  Paper paper;
  paper.kind = Kind::setup_card;
  paper.file = file_name(dossier, job);
  paper.title = fmt::format("{}: {}", name_of(paper.kind), draw::plain(job));
  paper.date = dossier.date;
  paper.one_page = true;
  paper.size = text_size;
  Chapter card(dossier.system);
  const JobPlan* plan = selection::plan_of(dossier, job);
  paper.subject = draw::plain(dossier.stand.title);
  if (plan == nullptr) {
    card.verdict(State::fails, "fails: no brake was found for this job");
    card.warning(Signal::danger, "Do not run this job from this card: there are no settings for it.");
  } else {
    paper.subject += fmt::format("{}{}", paper.subject.empty() ? "" : " · ", draw::plain(cards::brakes_of(plan->fit)));
    const Subject about{dossier, *plan, cards::find_job(dossier, job), cards::find_fit(dossier, job), dossier.system};
    if (plan->state == State::fails)
      refuse(card, about);
    else
      run_from(card, about);
  }

  paper.blocks = card.take();
  for (Block& block : paper.blocks)
    if (auto* facts = std::get_if<Facts>(&block)) facts->large = facts->columns == large_columns;
  return paper;
}

}  // namespace holdback::papers
