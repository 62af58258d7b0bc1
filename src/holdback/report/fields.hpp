// The fields of everything in an answer. From these lists come the JSON, its schema and the schema's help: a new member
// of a result struct becomes part of an answer by one line here.
#pragma once

#include "holdback/report/fields_brake_fit.hpp"
#include "holdback/report/fields_depth.hpp"
#include "holdback/report/fields_diagnosis.hpp"
#include "holdback/report/fields_history.hpp"
#include "holdback/report/fields_measurement.hpp"
#include "holdback/report/fields_motion.hpp"
#include "holdback/report/report.hpp"
#include "holdback/report/words.hpp"
#include "holdback/units/units.hpp"

namespace holdback::report {

/// Version of the answer's form; grows when a field goes away or changes its meaning.
inline constexpr int answer_version = 1;
using Version = std::integral_constant<int, answer_version>;

/// Most problems that an answer lists.
inline constexpr std::size_t most_problems = 1000;

/// The fields of each struct, found by its type.
constexpr auto fields_of(Of<Amount> /*unused*/) {
  return record(
      "amount", "a value with its unit",                                      //
      field("value", &Amount::value, Quantity::number, "in the named unit"),  //
      derived(
          "unit", [](const Amount& it) { return units::si_unit_of(it.kind); }, "SI unit, \"1\" for none"),
      derived(
          "kind", [](const Amount& it) { return units::key_of(it.kind); }, "of quantity: stress or pressure"));
}

constexpr auto fields_of(Of<Note> /*unused*/) {
  return record(
      "note", "a sentence with its amounts",
      derived(
          "text", [](const Note& it) { return units::fill(it, units::System::si); }, "as read, amounts filled in"),
      field("pattern", &Note::text, "the same with a place {0}, {1}, … for each amount"),
      field("amounts", &Note::amounts, "what the text says, to full precision, in the order of its places"));
}

constexpr auto fields_of(Of<Problem> /*unused*/) {
  return record("problem", "what is wrong with the input, and where",  //
                field("severity", &Problem::severity, "an error stops the computation, a warning does not"),
                field("what", &Problem::what, "what is wrong"),
                field("field", &Problem::field, "path of the field; empty when the file as a whole is meant"),
                field("value", &Problem::value, "as written"),
                field("accepted", &Problem::accepted, "what would be accepted; its text may be empty"),
                field("file", &Problem::file, "name of the file"),
                derived(
                    "line", [](const Problem& it) { return it.where.line; }, "counted from 1; 0 when unknown"),
                derived(
                    "column", [](const Problem& it) { return it.where.column; }, "counted from 1; 0 when unknown"),
                derived(
                    "cell", [](const Problem& it) { return cell_name(it.where); },
                    "as a sheet names it, \"B7\"; empty for a place in a text"),
                field("source_line", &Problem::source_line, "the line as written"));
}

constexpr auto fields_of(Of<DefaultUsed> /*unused*/) {
  return record("default", "a value that the stand file does not give",  //
                field("field", &DefaultUsed::field, "path of the field"),
                field("owner", &DefaultUsed::owner, "whose field it is, in words; empty for the single tables"),
                field("text", &DefaultUsed::text, "the value that was used"));
}

constexpr auto fields_of(Of<ColumnRead> /*unused*/) {
  return record("column_read", "a column of the table of jobs",  //
                field("file", &ColumnRead::file, "name of the table"),
                field("column", &ColumnRead::column, "letters of a sheet's column, else its number"),
                field("header", &ColumnRead::header, "as written"),
                field("field", &ColumnRead::field, "what it was read as; empty when it is not read"),
                field("unit", &ColumnRead::unit, "that the header gives; empty when each cell carries its own"),
                field("key", &ColumnRead::key, "whether the header is the field's own key"));
}

constexpr auto fields_of(Of<Limit> /*unused*/) {
  return record(
      "limit", "a bound that a fit must keep",  //
      derived(
          "key", [](const Limit& it) { return it.id; }, "which limit"),
      derived(
          "name", [](const Limit& it) { return info(it.id).name; }, "which limit, as a person reads it"),
      field("value", &Limit::value, Quantity::number, "in the named unit"),
      field("bound", &Limit::bound, Quantity::number, "in the named unit"),
      derived(
          "unit", [](const Limit& it) { return units::si_unit_of(info(it.id).kind); }, "of value and bound"),
      derived(
          "kind", [](const Limit& it) { return units::key_of(info(it.id).kind); }, "of quantity, of value and bound"),
      field("margin", &Limit::margin, Quantity::ratio, "1 is just kept, 1.25 has a quarter in hand; 100 at most"),
      field("reserve", &Limit::reserve, Quantity::ratio, "in hand below which the limit is tight"),
      field("diameter", &Limit::diameter, Quantity::short_length,
            "of the roll where it binds; 0 when the roll is no matter"),
      field("case", &Limit::load_case, "situation in which it binds"),
      field("known", &Limit::known, "whether the bound is derived, a maker's rating or the user's own setting"),
      field("state", &Limit::state, "holds, tight (inside the reserve) or fails"));
}

constexpr auto fields_of(Of<Fit> /*unused*/) {
  return record("fit", "one way to equip the stand",  //
                field("brake", &Fit::brake, "name of the brake model"),
                field("grade", &Fit::grade, "name of the friction grade"),
                field("brakes", &Fit::brakes, "brakes on the shaft"),
                field("pairs", &Fit::pairs, "pad pairs fitted to each brake"));
}

constexpr auto fields_of(Of<TensionTarget> /*unused*/) {
  return record(
      "tension", "the tension of a job and its window, over the whole width",  //
      field("setpoint", &TensionTarget::setpoint, Quantity::force, "tension to be kept"),
      field("low", &TensionTarget::low, Quantity::force, "low end of the window"),
      field("high", &TensionTarget::high, Quantity::force, "high end of the window"),
      field("asked", &TensionTarget::asked, "the job states its tension; otherwise it is the recommended one"),
      field("recommended", &TensionTarget::recommended, Quantity::force, "0 when nothing is known"),
      field("recommended_low", &TensionTarget::recommended_low, Quantity::force, "low end of the recommendation"),
      field("recommended_high", &TensionTarget::recommended_high, Quantity::force, "high end of it"),
      field("governed_by", &TensionTarget::governed_by, "what the recommendation rests on"),
      field("web_strength", &TensionTarget::web_strength, Quantity::force, "tension at yield; 0 when unknown"));
}

constexpr auto fields_of(Of<RollFacts> /*unused*/) {
  return record("roll", "the roll as computed",  //
                field("length", &RollFacts::length, Quantity::web_length, "web on the full roll"),
                field("mass", &RollFacts::mass, Quantity::mass, "web and core, full"),
                field("inertia_full", &RollFacts::inertia_full, Quantity::inertia, "all that turns, full roll"),
                field("inertia_core", &RollFacts::inertia_core, Quantity::inertia, "all that turns, at the core"),
                field("running_time", &RollFacts::running_time, Quantity::running_time, "one roll at the job's speed"));
}

constexpr auto fields_of(Of<StopFacts> /*unused*/) {
  using S = StopFacts;
  return record(
      "stop", "a stop at the diameter where it is hardest",  //
      field("time", &S::time, Quantity::duration, "asked for, from the job's speed"),
      field("torque_needed", &S::torque_needed, Quantity::torque, "of the whole stand"),
      field("torque_available", &S::torque_available, Quantity::torque, "at lowest friction, highest pressure"),
      field("diameter", &S::diameter, Quantity::short_length, "of the roll where the two come closest"),
      field("energy", &S::energy, Quantity::energy, "into all discs, highest over the roll"),
      field("bulk_temperature", &S::bulk_temperature, Quantity::temperature, "of the disc after the stop"),
      field("surface_temperature", &S::surface_temperature, Quantity::temperature,
            "of the disc's face, highest in the stop"),
      field("slack", &S::slack, Quantity::short_length,
            "web thrown; 0 when the brake holds the roll back, and with `runs_away`"),
      field("slack_diameter", &S::slack_diameter, Quantity::short_length, "of the roll where it is thrown; 0 without"),
      field("shortest_taut_stop", &S::shortest_taut_stop, Quantity::duration,
            "with the web just taut; 0 with `runs_away`"),
      field("shortest_stop", &S::shortest_stop, Quantity::duration, "with the asked tension kept; 0 with `never`"),
      field("never", &S::never, "the brake cannot keep the asked tension even without a stop"),
      field("runs_away", &S::runs_away, "nothing stops the roll at some diameter"));
}

constexpr auto fields_of(Of<WebBreakFacts> /*unused*/) {
  return record("web_break", "a web break at running speed",  //
                field("turns", &WebBreakFacts::turns, Quantity::turns, "until the roll stands"),
                field("time", &WebBreakFacts::time, Quantity::duration, "until the roll stands"),
                field("diameter", &WebBreakFacts::diameter, Quantity::short_length, "of the roll that coasts longest"),
                field("runs_away", &WebBreakFacts::runs_away, "nothing stops the roll; the others are then 0"));
}

constexpr auto fields_of(Of<WearFacts> /*unused*/) {
  return record("wear", "wear of the pads by one job run alone",  //
                field("life", &WearFacts::life, Quantity::running_time, "running time until the pads are worn"),
                field("web_length", &WearFacts::web_length, Quantity::web_length, "web until then"),
                field("rolls", &WearFacts::rolls, Quantity::number, "rolls until then"),
                field("weeks", &WearFacts::weeks, Quantity::calendar_time, "calendar time at the line's shifts"),
                field("pads_per_year", &WearFacts::pads_per_year, Quantity::number, "all pads that wear"),
                field("cost_per_year", &WearFacts::cost_per_year, Quantity::price, "in the stand's currency"));
}

constexpr auto fields_of(Of<JobFit> /*unused*/) {
  return record(
      "job_fit", "one job on one fit, with the pairs to engage",  //
      field("job", &JobFit::job, "name of the job"),
      field("pairs", &JobFit::pairs, "pad pairs to engage on each brake"),
      field("state", &JobFit::state, "worst of the limits"),
      field("limits", &JobFit::limits, "every limit that was checked"),
      field("binding", &JobFit::binding, "limit with the least in hand beyond its reserve"),
      field("margin", &JobFit::margin, Quantity::ratio, "of the binding limit"),
      field("pressure_full", &JobFit::pressure_full, Quantity::pressure, "nominal friction, full roll"),
      field("pressure_core", &JobFit::pressure_core, Quantity::pressure, "nominal friction, at the core"),
      field("lowest_tension", &JobFit::lowest_tension, Quantity::force, "that can be reached at the core"),
      field("slip_power", &JobFit::slip_power, Quantity::power, "all brakes, steady run, highest over the roll"),
      field("hottest", &JobFit::hottest, Quantity::temperature, "steady disc temperature"),
      field("hottest_diameter", &JobFit::hottest_diameter, Quantity::short_length, "of the roll there"),
      field("tension", &JobFit::tension, "where the tension comes from, and its window"),
      field("roll", &JobFit::roll, "the roll as computed"), field("stop", &JobFit::stop, "a normal stop"),
      field("emergency_stop", &JobFit::emergency_stop, "an emergency stop"),
      field("web_break", &JobFit::web_break, "a web break at running speed"),
      field("wear", &JobFit::wear, "wear of the pads by this job run alone"),
      field("window", &JobFit::window, "what bounds the tension"),
      field("thermal", &JobFit::thermal, "heat over rolls and change-overs; on the recommended fit"),
      field("shaft", &JobFit::shaft, "the shaft; absent when the stand does not describe it"),
      field("likelihood", &JobFit::likelihood, "how likely the limits hold; on the recommended fit"),
      field("notes", &JobFit::notes, "assumptions met and cautions, of this job"));
}

constexpr auto fields_of(Of<Standing> /*unused*/) {
  return record("standing", "where one job stands on one fit, in a line",  //
                field("state", &Standing::state, "worst of the limits"),
                field("binding", &Standing::binding, "limit with the least in hand"),
                field("pairs", &Standing::pairs, "to engage on each brake"),
                field("margin", &Standing::margin, Quantity::ratio, "of the binding limit"));
}

constexpr auto fields_of(Of<FitResult> /*unused*/) {
  return record(
      "fit_result", "a fit with what it does for the mix",  //
      field("fit", &FitResult::fit, "the fit"), field("covered", &FitResult::covered, "jobs without a failing limit"),
      field("tight", &FitResult::tight, "covered jobs with a tight limit"),
      field("worst_margin", &FitResult::worst_margin, Quantity::ratio, "over the covered jobs"),
      field("worst_limit", &FitResult::worst_limit, "the limit of that margin"),
      field("worst_job", &FitResult::worst_job, "the job of that margin"),
      field("failing_margin", &FitResult::failing_margin, Quantity::ratio,
            "mean over the jobs that fail; 0 when none does"),
      field("pads_per_year", &FitResult::pads_per_year, Quantity::number, "the mix by its shares"),
      field("price", &FitResult::price, Quantity::price, "of the brakes, in the stand's currency"),
      field("pad_cost_per_year", &FitResult::pad_cost_per_year, Quantity::price, "in the stand's currency"),
      field("jobs", &FitResult::jobs, "in the order of the mix; empty when not asked for"),
      field("standings", &FitResult::standings, "of the jobs, in the order of the mix; of a choice in brief"));
}

constexpr auto fields_of(Of<Remedy> /*unused*/) {
  return record("remedy", "a change that was computed for a failing job",  //
                field("kind", &Remedy::kind, "what is changed"),           //
                field("what", &Remedy::what, "the change in words"),
                field("state", &Remedy::state, "of the job after the change"),
                field("binding", &Remedy::binding, "limit with the least in hand after the change"),
                field("margin", &Remedy::margin, Quantity::ratio, "of that limit after the change"),
                field("jobs_lost", &Remedy::jobs_lost, "jobs of the mix that would fall out by it"),
                field("jobs_won", &Remedy::jobs_won, "other jobs that would come in by it"));
}

constexpr auto fields_of(Of<Uncovered> /*unused*/) {
  return record("uncovered", "a job that the recommended fit does not cover",  //
                field("job", &Uncovered::job, "name of the job"),              //
                field("why", &Uncovered::why, "the binding limit in words"),
                field("failing", &Uncovered::failing, "the limits that fail"),
                field("remedies", &Uncovered::remedies, "least change first; empty: none of those tried is enough"));
}

constexpr auto fields_of(Of<Envelope> /*unused*/) {
  using E = Envelope;
  constexpr auto torque = Quantity::torque;
  return record("envelope", "torque over the roll, one entry a diameter from core to full",  //
                field("job", &E::job, "whose torque this is"),
                field("diameter", &E::diameter, Quantity::short_length, "of the roll"),
                field("run", &E::run, torque, "brake torque in steady run"),
                field("ramp", &E::ramp, torque, "in a ramp up; never below zero"),
                field("stop", &E::stop, torque, "in a normal stop"),
                field("emergency_stop", &E::emergency_stop, torque, "in an emergency stop"),
                field("hold", &E::hold, torque, "at standstill"),
                field("capacity_low", &E::capacity_low, torque, "highest pressure, lowest friction"),
                field("capacity_nominal", &E::capacity_nominal, torque, "highest pressure, nominal friction"),
                field("floor", &E::floor, torque, "lowest pressure, highest friction"),
                field("pressure", &E::pressure, Quantity::pressure, "nominal friction"),
                field("temperature", &E::temperature, Quantity::temperature, "steady disc temperature"),
                field("rotational_speed", &E::rotational_speed, Quantity::rotational_speed, "of the roll"));
}

constexpr auto fields_of(Of<Choice> /*unused*/) {
  return record("choice", "the fit that covers the mix, each job on it, what falls out and what would bring it in",  //
                field("title", &Choice::title, "of the stand"),
                field("currency", &Choice::currency, "of every price and cost; empty when the stand names none"),
                field("fits_tried", &Choice::fits_tried, "number of fits that were compared"),
                field("brief", &Choice::brief, "made in brief: standings, depths of one job, no remedies, no odds"),
                field("recommended", &Choice::recommended, "absent when the stand has no candidate"),
                field("next", &Choice::next, "the fit it was preferred to"),
                field("why", &Choice::why, "why the first and not the second"),
                field("uncovered", &Choice::uncovered, "jobs that the recommended fit does not cover"),
                field("all", &Choice::all, "every fit tried, best first; jobs only when asked for"),
                field("job", &Choice::job, "the job asked for in depth"),
                field("envelope", &Choice::envelope, "torque over the roll"),
                field("likelihood", &Choice::likelihood, "of the mix on the recommended fit"),
                field("assumptions", &Choice::assumptions, "what the models assume"),
                field("cautions", &Choice::cautions, "what a person must heed"));
}

constexpr auto fields_of(Of<PlanPoint> /*unused*/) {
  return record("plan_point", "a setting for a controller that knows the diameter",  //
                field("diameter", &PlanPoint::diameter, Quantity::short_length, "of the roll"),
                field("pressure", &PlanPoint::pressure, Quantity::pressure, "to set"),
                field("torque", &PlanPoint::torque, Quantity::torque, "of the whole stand"),
                field("tension", &PlanPoint::tension, Quantity::force, "expected"));
}

constexpr auto fields_of(Of<HandSetting> /*unused*/) {
  using H = HandSetting;
  return record("hand_setting", "one line of the card for a hand on a regulator",  //
                field("from", &H::from, Quantity::short_length, "diameter at which to set"),
                field("to", &H::to, Quantity::short_length, "diameter at which the next setting is due"),
                field("pressure", &H::pressure, Quantity::pressure, "rounded to the regulator's resolution"),
                field("tension_from", &H::tension_from, Quantity::force, "expected where it is set"),
                field("tension_to", &H::tension_to, Quantity::force, "expected where the next one is due"));
}

constexpr auto fields_of(Of<JobPlan> /*unused*/) {
  return record("job_plan", "the pressures of one job",  //
                field("job", &JobPlan::job, "name of the job"),
                field("fit", &JobPlan::fit, "how the stand is equipped"),
                field("pairs", &JobPlan::pairs, "pad pairs to engage on each brake"),
                field("state", &JobPlan::state, "of the job on this fit"),
                field("binding", &JobPlan::binding, "limit with the least in hand beyond its reserve"),
                field("tension", &JobPlan::tension, "where the tension comes from, and its window"),
                field("automatic", &JobPlan::automatic, "pressure over diameter, from full to core"),
                field("tolerance", &JobPlan::tolerance, Quantity::ratio, "± of the hand card"),
                field("by_hand", &JobPlan::by_hand, "the hand card, from full to core"),
                field("notes", &JobPlan::notes, "assumptions met and cautions, of this job"));
}

constexpr auto fields_of(Of<Plan> /*unused*/) {
  return record("plan", "pressures over the roll for each job",  //
                field("title", &Plan::title, "of the stand"),    //
                field("fit", &Plan::fit, "how the stand is equipped"),
                field("jobs", &Plan::jobs, "in the order of the mix"),
                field("assumptions", &Plan::assumptions, "what the models assume"),
                field("cautions", &Plan::cautions, "what a person must heed"));
}

constexpr auto fields_of(Of<JobFacts> /*unused*/) {
  using J = JobFacts;
  return record("job_facts", "a job as understood",  //
                field("job", &J::job, "name of the job"), field("web", &J::web, "name of its web"),
                field("roll", &J::roll, "name of its roll"),
                field("width", &J::width, Quantity::short_length, "of the web"),
                field("speed", &J::speed, Quantity::speed, "running speed"),
                field("tension", &J::tension, "where the tension comes from, and its window"),
                field("roll_facts", &J::roll_facts, "inertia without brake discs"),
                field("run_torque_full", &J::run_torque_full, Quantity::torque, "at the full roll, drag taken off"),
                field("run_torque_core", &J::run_torque_core, Quantity::torque, "at the core, drag taken off"),
                field("slip_power", &J::slip_power, Quantity::power, "tension times speed"),
                field("window", &J::window, "what bounds the tension"));
}

constexpr auto fields_of(Of<Check> /*unused*/) {
  return record("check", "the stand as understood",  //
                field("title", &Check::title, "of the stand"), field("webs", &Check::webs, "number of webs"),
                field("rolls", &Check::rolls, "number of rolls"),
                field("brakes", &Check::brakes, "number of brake models"),
                field("fits", &Check::fits, "number of fits that `size` would compare"),
                field("jobs", &Check::jobs, "the mix"), field("cautions", &Check::cautions, "what a person must heed"));
}

constexpr auto fields_of(Of<Answer> /*unused*/) {
  return record(
      "answer", "the answer to one command",  //
      derived(
          "version", [](const Answer&) { return Version{}; }, "of the answer's form"),
      field("command", &Answer::command, "that was asked"),
      field("outcome", &Answer::outcome, "worst that was found; the exit code of the command line"),
      derived(
          "problems", [](const Answer& it) { return first_problems(it.problems, most_problems); },
          "errors and warnings of the input, in file order; the first 1000, errors first when there are more"),
      derived(
          "problems_found", [](const Answer& it) { return static_cast<int>(it.problems.size()); },
          "how many there are in all"),
      field("defaults", &Answer::defaults, "values that the stand file does not give"),
      field("columns", &Answer::columns, "how the columns of the table of jobs were understood"),
      field("check", &Answer::check, "answer to `check`"), field("choice", &Answer::choice, "answer to `size`"),
      field("plan", &Answer::plan, "answer to `plan`"),
      field("simulation", &Answer::simulation, "answer to `simulate`"),
      field("tuning", &Answer::tuning, "answer to `tune`"),
      field("measurement", &Answer::measurement, "answer to `measure`"), field("fit", &Answer::fit, "answer to `fit`"),
      field("diagnosis", &Answer::diagnosis, "answer to `diagnose`"),
      field("history", &Answer::history, "answer to `history`"));
}

}  // namespace holdback::report
