#include "holdback/model/scenario.hpp"

#include <limits>

#include "unit/model/faults_of.hpp"

namespace holdback {
namespace {

using testing::one_error;
using testing::one_warning;
using testing::sound_stand;

Event event(EventKind kind) {
  Event made;
  made.kind = kind;
  return made;
}

Event event_at(EventKind kind, double at) {
  Event made = event(kind);
  made.at = at;
  return made;
}

Event event_at_diameter(EventKind kind, double diameter) {
  Event made = event(kind);
  made.at_diameter = diameter;
  return made;
}

Event hold(double duration) {
  Event made = event(EventKind::hold);
  made.duration = duration;
  return made;
}

Problems of(std::vector<Event> events) {
  Scenario scenario;
  scenario.name = "day";
  scenario.events = std::move(events);
  return problems_of(scenario, "scenario[1]");
}

/// One event of a kind after a change to it.
Problems of_one(EventKind kind, void (*change)(Event&)) {
  Event made = event(kind);
  if (kind == EventKind::hold) made.duration = 1;
  if (kind == EventKind::setpoint) made.tension = 100;
  if (kind == EventKind::pairs) made.pairs = 2;
  change(made);
  return of({made});
}

constexpr EventKind every_kind[] = {EventKind::ramp,           EventKind::hold,        EventKind::stop,
                                    EventKind::emergency_stop, EventKind::splice,      EventKind::setpoint,
                                    EventKind::pairs,          EventKind::air_failure, EventKind::web_break};

TEST(problems_of_scenario, finds_nothing_in_a_sound_day) {
  EXPECT_TRUE(of({event_at(EventKind::ramp, 2), hold(10), event_at_diameter(EventKind::splice, 0.3),
                  event_at_diameter(EventKind::stop, 0.9)})
                  .empty());
  for (const EventKind kind : every_kind) EXPECT_TRUE(of_one(kind, [](Event&) {}).empty());
}

TEST(problems_of_scenario, wants_an_event) { EXPECT_TRUE(one_error(of({}), "scenario[1].event")); }

TEST(problems_of_scenario, wants_times_in_their_order) {
  EXPECT_TRUE(of({event_at(EventKind::ramp, 5), event_at(EventKind::stop, 5)}).empty());
  const Problems found = of({event_at(EventKind::ramp, 9), event(EventKind::ramp), event_at(EventKind::stop, 5)});
  EXPECT_TRUE(one_error(found, "scenario[1].event[2].at"));
  EXPECT_EQ(found.at(0).what.amounts, (std::vector<Amount>{{5, Quantity::duration}, {9, Quantity::duration}}));
}

TEST(problems_of_scenario, compares_a_time_with_the_latest_before_it) {
  const Problems found = of({event_at(EventKind::ramp, 9), event_at(EventKind::ramp, 3), event_at(EventKind::stop, 5)});
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[1].field, "scenario[1].event[2].at");
  EXPECT_EQ(found[1].what.amounts[1].value, 9);
}

TEST(problems_of_scenario, wants_an_end_behind_the_last_time) {
  Scenario scenario;
  scenario.events = {event_at(EventKind::ramp, 5), event_at(EventKind::stop, 20)};
  scenario.end = 20;
  EXPECT_TRUE(problems_of(scenario, "scenario[0]").empty());
  scenario.end = 19;
  EXPECT_TRUE(one_error(problems_of(scenario, "scenario[0]"), "scenario[0].end"));
  scenario.events = {event(EventKind::ramp)};
  EXPECT_TRUE(problems_of(scenario, "scenario[0]").empty());
}

TEST(problems_of_scenario, wants_diameters_that_fall_until_a_splice) {
  EXPECT_TRUE(of({event_at_diameter(EventKind::ramp, 0.5), event_at_diameter(EventKind::stop, 0.5)}).empty());
  EXPECT_TRUE(one_error(of({event_at_diameter(EventKind::ramp, 0.4), event_at_diameter(EventKind::stop, 0.5)}),
                        "scenario[1].event[1].at_diameter"));
  EXPECT_TRUE(one_error(of({event_at_diameter(EventKind::ramp, 0.4), event_at_diameter(EventKind::splice, 0.5)}),
                        "scenario[1].event[1].at_diameter"))
      << "the splice itself still waits for the old roll";
  EXPECT_TRUE(
      of({event_at_diameter(EventKind::ramp, 0.4), event(EventKind::splice), event_at_diameter(EventKind::stop, 0.5)})
          .empty());
}

TEST(problems_of_scenario, refuses_a_time_and_a_diameter_together) {
  EXPECT_TRUE(one_error(of_one(EventKind::ramp,
                               [](Event& e) {
                                 e.at = 3;
                                 e.at_diameter = 0.5;
                               }),
                        "scenario[1].event[0].at_diameter"));
}

TEST(problems_of_scenario, doubts_fields_without_meaning) {
  for (const EventKind kind : every_kind) {
    const Problems speed = of_one(kind, [](Event& e) { e.speed = 1; });
    EXPECT_TRUE(kind == EventKind::ramp ? speed.empty() : bool(one_warning(speed, "scenario[1].event[0].speed")));
    const Problems tension = of_one(kind, [](Event& e) { e.tension = 1; });
    EXPECT_TRUE(kind == EventKind::setpoint ? tension.empty()
                                            : bool(one_warning(tension, "scenario[1].event[0].tension")));
    const Problems pairs = of_one(kind, [](Event& e) { e.pairs = 1; });
    EXPECT_TRUE(kind == EventKind::pairs ? pairs.empty() : bool(one_warning(pairs, "scenario[1].event[0].pairs")));
    const Problems mismatch = of_one(kind, [](Event& e) { e.mismatch = 0.1; });
    EXPECT_TRUE(kind == EventKind::splice ? mismatch.empty()
                                          : bool(one_warning(mismatch, "scenario[1].event[0].mismatch")));
    const bool takes_time = kind == EventKind::ramp || kind == EventKind::hold || kind == EventKind::stop ||
                            kind == EventKind::emergency_stop;
    const Problems duration = of_one(kind, [](Event& e) { e.duration = 1; });
    EXPECT_TRUE(takes_time ? duration.empty() : bool(one_warning(duration, "scenario[1].event[0].duration")));
  }
}

TEST(problems_of_scenario, wants_what_an_event_needs) {
  EXPECT_TRUE(one_error(of({event(EventKind::setpoint)}), "scenario[1].event[0].tension"));
  EXPECT_TRUE(one_error(of({event(EventKind::pairs)}), "scenario[1].event[0].pairs"));
}

TEST(problems_of_scenario, wants_to_know_when_a_hold_is_over) {
  EXPECT_TRUE(one_error(of({event(EventKind::hold)}), "scenario[1].event[0].duration"));
  EXPECT_TRUE(one_error(of({event(EventKind::hold), event(EventKind::stop)}), "scenario[1].event[0].duration"));
  EXPECT_TRUE(of({event(EventKind::hold), event_at_diameter(EventKind::stop, 0.3)}).empty());
  EXPECT_TRUE(one_error(of({event(EventKind::hold), event(EventKind::ramp), event_at_diameter(EventKind::stop, 0.3)}),
                        "scenario[1].event[0].duration"));
}

TEST(problems_of_scenario, lets_only_a_last_hold_follow_a_web_break) {
  EXPECT_TRUE(of({event(EventKind::web_break), hold(5)}).empty());
  EXPECT_TRUE(one_error(of({event(EventKind::web_break), event(EventKind::ramp)}), "scenario[1].event[1].do"));
  EXPECT_TRUE(one_error(of({event(EventKind::web_break), hold(5), hold(5)}), "scenario[1].event[2].do"));
  EXPECT_TRUE(
      one_error(of({event(EventKind::web_break), hold(5), event(EventKind::splice)}), "scenario[1].event[2].do"));
}

TEST(problems_of_scenario, says_nothing_of_values_that_are_not_known) {
  const double unknown = std::numeric_limits<double>::quiet_NaN();
  EXPECT_TRUE(of({event_at(EventKind::ramp, unknown), event_at(EventKind::stop, 5)}).empty());
  EXPECT_TRUE(of({event_at(EventKind::ramp, 5), event_at(EventKind::stop, unknown)}).empty());
  EXPECT_TRUE(of({event_at_diameter(EventKind::ramp, unknown), event_at_diameter(EventKind::stop, 0.5)}).empty());
}

Stand with_scenario(const Scenario& scenario) {
  Stand stand = sound_stand();
  stand.scenarios = {scenario};
  return stand;
}

TEST(problems_of_stand, compares_scenario_speeds_with_the_line) {
  Scenario scenario;
  scenario.name = "day";
  scenario.events = {event(EventKind::ramp)};
  scenario.events[0].speed = 6;
  scenario.start_speed = 6;
  EXPECT_TRUE(problems_of(with_scenario(scenario)).empty());
  scenario.start_speed = 6.1;
  EXPECT_TRUE(one_error(problems_of(with_scenario(scenario)), "scenario[0].start_speed"));
  scenario.start_speed.reset();
  scenario.events[0].speed = 6.1;
  EXPECT_TRUE(one_error(problems_of(with_scenario(scenario)), "scenario[0].event[0].speed"));
}

TEST(problems_of_stand, wants_scenarios_with_names_of_their_own_and_events) {
  Scenario scenario;
  scenario.name = "day";
  scenario.events = {event(EventKind::ramp)};
  Stand stand = with_scenario(scenario);
  stand.scenarios.push_back(scenario);
  EXPECT_TRUE(one_error(problems_of(stand), "scenario[1].name"));
  stand.scenarios[1].name = "night";
  EXPECT_TRUE(problems_of(stand).empty());
  stand.scenarios[1].events.clear();
  EXPECT_TRUE(one_error(problems_of(stand), "scenario[1].event"));
}

}  // namespace
}  // namespace holdback
