// Rows of the scenarios and their events.
#include "holdback/files/field_table.hpp"
#include "holdback/model/event_words.hpp"

namespace holdback::files {

using Q = Quantity;

const std::vector<Field<Scenario>>& scenario_fields() {
  using F = Field<Scenario>;
  static const std::vector<F> rows{
      F::text("name", &Scenario::name).required().such_as("a day").means("answers call the scenario by it"),
      F::quantity("start_diameter", Q::short_length, &Scenario::start_diameter)
          .from("10 mm")
          .to("5 m")
          .such_as("600 mm")
          .means("of the roll; without it, the full roll"),
      F::quantity("start_speed", Q::speed, &Scenario::start_speed)
          .from("0 m/min")
          .to("3000 m/min")
          .such_as("240 m/min")
          .means("of the line; without it, standstill"),
      F::quantity("end", Q::duration, &Scenario::end)
          .above("0 s")
          .to("7 d")
          .such_as("120 s")
          .means("from the start; without it, when the events are over"),
  };
  return rows;
}

namespace {

std::vector<std::pair<std::string, EventKind>> words_of_events() {
  std::vector<std::pair<std::string, EventKind>> words;
  for (const EventKind kind : event_kinds) words.emplace_back(word_of(kind), kind);
  return words;
}

}  // namespace

const std::vector<Field<Event>>& event_fields() {
  using F = Field<Event>;
  static const std::vector<F> rows{
      F::word<EventKind>("do", words_of_events(), &Event::kind).required().such_as("ramp").means("what happens"),
      F::quantity("at", Q::duration, &Event::at)
          .from("0 s")
          .to("7 d")
          .such_as("60 s")
          .means("from the start; without it, as soon as the event before is over"),
      F::quantity("at_diameter", Q::short_length, &Event::at_diameter)
          .from("10 mm")
          .to("5 m")
          .such_as("300 mm")
          .means("not before the roll is down to it; the line runs on until then"),
      F::quantity("speed", Q::speed, &Event::speed)
          .from("0 m/min")
          .to("3000 m/min")
          .such_as("240 m/min")
          .means("ramp: at its end; without it, the job's speed"),
      F::quantity("duration", Q::duration, &Event::duration)
          .from("0 s")
          .to("7 d")
          .such_as("30 s")
          .means("ramp, hold and stops; a ramp or stop without it goes as job and line say"),
      F::quantity("tension", Q::force, &Event::tension)
          .above("0 N")
          .to("1000000 N")
          .such_as("150 N")
          .means("setpoint: from here on; needed there"),
      F::count("pairs", &Event::pairs)
          .from("0")
          .to("24")
          .such_as("2")
          .means("pairs: engaged on each brake from here on; needed there"),
      F::quantity("mismatch", Q::ratio, &Event::mismatch)
          .from("-50 %")
          .to("50 %")
          .or_else("0 %")
          .means("splice: speed of the new roll's surface above that of the line"),
  };
  return rows;
}

}  // namespace holdback::files
