#include "holdback/api/motion.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "holdback/api/live.hpp"
#include "support/files.hpp"

namespace holdback::api {
namespace {

using Json = nlohmann::json;

const std::string example = test::read_source("examples/04-film-in-motion.toml");

Request request(const std::string& command, const std::string& text = example) {
  Request r;
  r.command = command;
  r.stand = {"stand.toml", text};
  r.job = "clear film";
  return r;
}

/// The example with a scenario of a few seconds.
std::string short_stand() {
  return example +
         "\n[[scenario]]\nname = \"short\"\nstart_speed = \"60 m/min\"\n\n[[scenario.event]]\ndo = \"hold\"\nduration "
         "= "
         "\"3 s\"\n\n[[scenario.event]]\ndo = \"stop\"\nduration = \"2 s\"\n";
}

std::string without(std::string text, const std::string& table) {
  const std::size_t begin = text.find("\n" + table + "\n");
  const std::size_t end = text.find("\n\n", begin + 1);
  return text.erase(begin, end - begin);
}

Problem first_error(const Answer& answer) {
  for (const Problem& problem : answer.problems)
    if (problem.severity == Severity::error) return problem;
  throw std::logic_error("no error");
}

TEST(simulate, runs_a_scenario_of_the_file) {
  Request r = request("simulate", short_stand());
  r.scenario = "short";
  const Answer a = answer(r);
  ASSERT_TRUE(a.simulation);
  ASSERT_EQ(a.simulation->runs.size(), 1U);
  const MotionRun& run = a.simulation->runs.front();
  EXPECT_EQ(run.control, "load cell");
  EXPECT_EQ(run.end, RunEnd::done);
  EXPECT_EQ(run.phases.front().what, "hold");
  EXPECT_NEAR(run.phases.front().end, 3, 0.011);
  // By hand: 3 s at 1 m/s and half of 2 s more.
  EXPECT_NEAR(run.web_run, 4, 0.02);
  // By hand: tension times length (published check P-2), and what the roll of 245 kg had in it: m v² (1 + (r/R)²)/4.
  const double turning = 245 * (1 + 0.168 * 0.168 / (0.64 * 0.64)) / 4;
  EXPECT_NEAR(run.energy.slipped, 88 * 4 + turning, 0.04 * (88 * 4 + turning));
  EXPECT_LT(std::abs(run.energy.residual), 1e-4 * run.energy.slipped);
}

TEST(simulate, puts_controls_side_by_side_best_first) {
  Request r = request("simulate", short_stand());
  r.scenario = "short";
  r.compare = {ControlKind::hand, ControlKind::diameter, ControlKind::load_cell, ControlKind::dancer};
  const Answer a = answer(r);
  ASSERT_TRUE(a.simulation);
  ASSERT_EQ(a.simulation->runs.size(), 4U);
  for (std::size_t i = 1; i < 4; ++i) EXPECT_LE(a.simulation->runs[i - 1].state, a.simulation->runs[i].state);
  EXPECT_FALSE(a.simulation->best.text.empty());
}

TEST(simulate, is_the_same_every_time) {
  Request r = request("simulate", short_stand());
  r.scenario = "short";
  EXPECT_EQ(answer(r).simulation->runs.front().trace.tension, answer(r).simulation->runs.front().trace.tension);
}

TEST(simulate, follows_each_idler_when_asked_and_agrees_with_idlers_that_follow) {
  Request r = request("simulate", short_stand());
  r.scenario = "short";
  r.idlers = Idlers::following;
  const MotionRun following = answer(r).simulation->runs.front();
  r.idlers = Idlers::each;
  const MotionRun each = answer(r).simulation->runs.front();
  EXPECT_NEAR(each.phases.front().mean_tension, following.phases.front().mean_tension, 1);
}

TEST(simulate, asks_for_a_job) {
  Request r = request("simulate");
  r.job = "";
  EXPECT_EQ(first_error(answer(r)).field, "--job");
}

TEST(simulate, refuses_a_job_that_is_not_there) {
  Request r = request("simulate");
  r.job = "no such job";
  EXPECT_NE(first_error(answer(r)).accepted.text.find("clear film"), std::string::npos);
}

TEST(simulate, refuses_a_scenario_that_is_not_there_and_names_those_that_are) {
  Request r = request("simulate");
  r.scenario = "no such";
  const Problem problem = first_error(answer(r));
  EXPECT_EQ(problem.field, "--scenario");
  EXPECT_NE(problem.accepted.text.find("web break"), std::string::npos);
}

TEST(simulate, refuses_a_control_without_its_sensor) {
  Request r = request("simulate", without(example, "[dancer]"));
  r.compare = {ControlKind::dancer};
  const Problem problem = first_error(answer(r));
  EXPECT_EQ(problem.field, "--compare");
  EXPECT_NE(problem.accepted.text.find("[dancer]"), std::string::npos);
}

TEST(simulate, refuses_a_web_without_stiffness) {
  std::string text = example;
  const std::size_t at = text.find("modulus = \"1.9 GPa\"\n");
  text.erase(at, std::string("modulus = \"1.9 GPa\"\n").size());
  const Problem problem = first_error(answer(request("simulate", text)));
  EXPECT_EQ(problem.field, "web");
  EXPECT_NE(problem.accepted.text.find("modulus"), std::string::npos);
}

TEST(simulate, refuses_a_diameter_that_the_roll_never_has) {
  Request r = request("simulate", example +
                                      "\n[[scenario]]\nname = \"too small\"\n\n[[scenario.event]]\ndo = "
                                      "\"stop\"\nat_diameter = \"100 mm\"\n");
  r.scenario = "too small";
  EXPECT_EQ(first_error(answer(r)).field, "scenario[3].event[0].at_diameter");
}

TEST(simulate, refuses_a_run_of_more_samples_than_anybody_waits_for) {
  std::string text = example;
  const std::string sample = "sample_time = \"10 ms\"";
  text.replace(text.find(sample), sample.size(), "sample_time = \"0.1 ms\"");
  Request r = request("simulate", text +
                                      "\n[[scenario]]\nname = \"week\"\n\n[[scenario.event]]\ndo = "
                                      "\"hold\"\nduration = \"5 h\"\n");
  r.scenario = "week";
  EXPECT_EQ(first_error(answer(r)).field, "control.sample_time");
}

TEST(tune, keeps_the_asked_margins_from_full_to_core) {
  const Answer a = answer(request("tune"));
  ASSERT_TRUE(a.tuning);
  const LoopTuning& best = a.tuning->loops.front();
  EXPECT_EQ(best.state, State::holds);
  EXPECT_GE(best.least_gain_margin, a.tuning->asked_gain_margin * (1 - 1e-6));
  EXPECT_GE(best.least_phase_margin, a.tuning->asked_phase_margin * (1 - 1e-6));
  for (const TunePoint& point : best.points) EXPECT_TRUE(point.stable);
  EXPECT_DOUBLE_EQ(best.points.front().diameter, 0.640);
  EXPECT_DOUBLE_EQ(best.points.back().diameter, 0.168);
}

// A gain that the tuning says bears more than twice as much must be unstable with ten times as much: the margin of the
// answer and the simulation say the same.
TEST(tune, shows_that_far_too_much_gain_does_not_hold) {
  const LoopTuning best = answer(request("tune")).tuning->loops.front();
  std::string text = short_stand();
  const auto with_gain = [&](double factor) {
    std::string changed = text;
    const std::string kind = "kind = \"load cell\"\n";
    changed.insert(changed.find(kind) + kind.size(), "gain = " + std::to_string(best.gain * factor) +
                                                         "\nintegral_time = \"" + std::to_string(best.integral_time) +
                                                         " s\"\nauthority = \"1000 %\"\n");
    Request r = request("simulate", changed);
    r.scenario = "short";
    return answer(r).simulation->runs.front();
  };
  const MotionRun calm = with_gain(1);
  const MotionRun wild = with_gain(30);
  EXPECT_GT(wild.phases.front().highest_tension - wild.phases.front().lowest_tension,
            3 * (calm.phases.front().highest_tension - calm.phases.front().lowest_tension));
}

TEST(tune, tries_other_controls_where_the_present_one_does_not_hold) {
  std::string text = example;
  const std::string kind = "kind = \"load cell\"";
  text.replace(text.find(kind), kind.size(), "kind = \"hand\"");
  const Answer a = answer(request("tune", text));
  ASSERT_TRUE(a.tuning);
  ASSERT_FALSE(a.tuning->holds);
  EXPECT_EQ(a.tuning->others.size(), 3U);
  EXPECT_EQ(a.outcome, Outcome::fails);
}

// --- the stepping interface ---------------------------------------------------------------------------------------

std::unique_ptr<LiveRun> live(const std::string& text = example) {
  auto opened = LiveRun::open(request("simulate", text));
  return std::get<std::unique_ptr<LiveRun>>(std::move(opened));
}

TEST(live_run, starts_at_rest_with_the_web_at_its_setpoint) {
  const auto run = live();
  EXPECT_EQ(run->state().time, 0);
  EXPECT_EQ(run->state().line_speed, 0);
  EXPECT_TRUE(run->state().held);
  EXPECT_NEAR(run->state().tension, 88, 1);
}

TEST(live_run, goes_on_in_whole_samples_and_keeps_what_is_left) {
  const auto run = live();
  for (int k = 0; k < 60; ++k) run->advance(1.0 / 60, {});
  EXPECT_NEAR(run->state().time, 1, 0.0101);
}

TEST(live_run, ramps_and_stops) {
  const auto run = live();
  LiveInputs go;
  go.line_speed = 2;
  go.within = 10;
  run->advance(15, go);
  EXPECT_NEAR(run->state().line_speed, 2, 1e-9);
  EXPECT_NEAR(run->state().rim_speed, 2, 0.05);
  EXPECT_FALSE(run->state().held);
  LiveInputs stop;
  stop.emergency_stop = true;
  run->advance(20, stop);
  EXPECT_EQ(run->state().line_speed, 0);
  EXPECT_TRUE(run->state().held);
}

TEST(live_run, lets_a_hand_take_the_regulator_and_give_it_back) {
  const auto run = live();
  LiveInputs hand;
  hand.pressure = 1e5;
  run->advance(2, hand);
  EXPECT_NEAR(run->state().pressure, 1e5, 1e3);
  LiveInputs back;
  back.automatic = true;
  run->advance(3, back);
  EXPECT_GT(std::abs(run->state().pressure - 1e5), 1e3);
}

TEST(live_run, tells_of_a_web_break) {
  const auto run = live();
  LiveInputs go;
  go.line_speed = 2;
  go.within = 5;
  run->advance(10, go);
  LiveInputs snap;
  snap.break_web = true;
  run->advance(5, snap);
  EXPECT_TRUE(run->state().broken);
  EXPECT_EQ(run->state().tension, 0);
  EXPECT_GT(run->state().slack, 0);  // on the floor, before the brake had stopped the roll
}

TEST(live_run, refuses_what_cannot_be) {
  const auto run = live();
  LiveInputs wrong;
  wrong.setpoint = -1;
  EXPECT_THROW(run->advance(1, wrong), std::invalid_argument);
  EXPECT_THROW(run->advance(1e9, {}), std::invalid_argument);
}

TEST(live_run, answers_a_bad_stand_as_answer_does) {
  const auto opened = LiveRun::open(request("simulate", "holdback = 1\n"));
  ASSERT_TRUE(std::holds_alternative<Answer>(opened));
  EXPECT_EQ(std::get<Answer>(opened).outcome, Outcome::bad_input);
}

TEST(live_runs, speak_json) {
  LiveRuns runs;
  const Json stand{{"name", "stand.toml"}, {"text", example}};
  const Json opened = Json::parse(runs.open(Json{{"version", 1}, {"stand", stand}, {"job", "clear film"}}.dump()));
  ASSERT_TRUE(opened.contains("run")) << opened.dump();
  const int run = opened["run"];
  const Json on = Json::parse(runs.advance(
      Json{{"run", run}, {"for", 12}, {"inputs", {{"line_speed", 1}, {"within", 5}, {"pairs", 2}}}}.dump()));
  EXPECT_NEAR(on["state"]["line_speed"].get<double>(), 1, 1e-9);
  EXPECT_EQ(on["state"]["pairs"], 2);
  EXPECT_TRUE(Json::parse(runs.advance(R"({"run": 99, "for": 1})")).contains("problem"));
  EXPECT_TRUE(Json::parse(runs.advance(R"({"run": 1, "inputs": {"colour": 1}})")).contains("problem"));
  EXPECT_TRUE(Json::parse(runs.advance("no JSON")).contains("problem"));
  runs.close(run);
  EXPECT_TRUE(Json::parse(runs.advance(Json{{"run", run}, {"for", 1}}.dump())).contains("problem"));
}

TEST(live_runs, answer_a_request_that_is_none) {
  LiveRuns runs;
  EXPECT_EQ(Json::parse(runs.open("no JSON"))["outcome"], "bad_input");
  EXPECT_EQ(Json::parse(runs.open("{}"))["outcome"], "bad_input");
}

}  // namespace
}  // namespace holdback::api
