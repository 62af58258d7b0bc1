// The sheet for the first readings at a fitted brake: what to set in which order, what it should show, room to write.
#include <fmt/format.h>

#include "holdback/draw/cells.hpp"
#include "holdback/papers/card_parts.hpp"
#include "holdback/papers/commissioning_parts.hpp"
#include "holdback/papers/papers.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers {

namespace {

using selection::Chapter;
using Q = Quantity;

constexpr const char* file_name = "commissioning-sheet";  // of sheet and CSV
constexpr double room_to_write = 7;                       // [mm] height of a row that is filled by hand

struct Subject {
  const Dossier& dossier;
  const Commissioning& readings;
  units::System system{};

  std::string shown(double si, Q kind) const { return selection::meant(si, kind, system); }
  std::string diameter(double si) const { return selection::given(si, Q::short_length, system); }
};

/// A share of the nominal as per cent: "82 %".
std::string share(double value, units::System system) {
  return report::kept_together(units::show(value, Q::ratio, system, 2));
}

void subject(Chapter& sheet, const Subject& about) {
  const auto& all = about.readings;
  sheet.facts({{"brakes", cards::brakes_of(all.fit)},
               {"roll to read on", fmt::format("{}, Ø {} to {}", report::named(all.job),
                                               about.diameter(all.least_diameter), about.diameter(all.diameter))},
               {"torque per pressure, one pair", about.shown(all.torque_per_pressure, Q::torque_per_pressure)},
               {"pads bite from", selection::given(all.threshold, Q::pressure, about.system)},
               {"drag, brakes released", about.shown(all.drag, Q::torque)},
               {"friction counts as this grade", fmt::format("{} to {} of nominal", share(all.band_low, about.system),
                                                             share(all.band_high, about.system))},
               {"never more pressure than", selection::given(all.highest_pressure, Q::pressure, about.system)},
               {"never more torque than", selection::given(all.rated_torque, Q::torque, about.system)},
               {"never more pull on the web than", about.shown(all.highest_pull, Q::force)}},
              2);
}

void warn(Chapter& sheet, const Subject& about) {
  sheet.warning(Signal::danger,
                "A heavy roll turns back by itself when the brake lets go. Nobody stands in its way; one person pulls, "
                "another is at the controls, the line is locked off.");
  sheet.warning(
      Signal::warning,
      fmt::format("On a roll smaller than Ø {} the same torque pulls harder than the web bears. Never go on to "
                  "a row before the one above lies within its bounds.",
                  about.diameter(about.readings.least_diameter)));
}

void steps(Chapter& sheet, const Subject& about) {
  sheet.heading("How to read");
  std::vector<std::string> items{
      "New pads are run in, the disc is cold and dry, the guard is on. The gauge shows zero with the air off.",
      "Pull the web, or a strap laid round the roll, with a scale along the line on which it leaves the roll, slowly "
      "and "
      "evenly through a full turn. The mean over the turn counts, not the peak at its start. A known torque wrench on "
      "the shaft does as well: then write the torque.",
      "Measure the diameter where the pull leaves the roll, once before each number of pairs, and write it down.",
      "Take the rows as they come: least torque first. Rising: come to the pressure from below; falling: from above, "
      "without passing it.",
      "Write what was read, also when it lies outside of its bounds. Leave rows empty that were not read."};
  if (about.readings.highest_temperature > 0)
    items.push_back(fmt::format("Let the disc cool when it comes near {}: from there on friction falls.",
                                cards::degrees(about.readings.highest_temperature, about.system)));
  if (about.dossier.stand.load_cell)
    items.push_back(
        "In a steady slow run the load cell may be read instead, except for the rows marked with a star: there the web "
        "would hang slack.");
  sheet.items(std::move(items), true);
}

/// Which way the pressure is moved; with a star where running web would hang slack.
std::string way(const cards::CommissioningRow& row, bool starred) {
  return (row.course.empty() ? "released" : row.course) + (row.slack && starred ? " *" : "");
}

void table(Chapter& sheet, const Subject& about) {
  const auto unit = [&](Q kind) { return units::unit_of(kind, about.system); };
  const bool stars = about.dossier.stand.load_cell.has_value();
  Table table;
  table.caption = fmt::format("Pulls to expect are those at Ø {}; at another diameter: twice the torque over it",
                              about.diameter(about.readings.diameter));
  table.row_height = room_to_write;
  table.columns = {{"row", "", true},
                   {"pairs", "", true},
                   {"way", "", false},
                   {"set", unit(Q::pressure), true},
                   {"torque", unit(Q::torque), true},

                   {"pull", unit(Q::force), true},
                   {"from", unit(Q::force), true},
                   {"to", unit(Q::force), true},
                   {"read: pull", unit(Q::force), false},
                   {"read: Ø", unit(Q::short_length), false},
                   {"or torque", unit(Q::torque), false}};
  int number = 0;
  for (const auto& row : cards::commissioning_rows(about.readings, about.system)) {
    std::vector<Cell> line;
    for (auto text : {std::to_string(++number), row.pairs, way(row, stars), row.pressure, row.torque, row.pull,
                      row.pull_low, row.pull_high})
      line.push_back({report::kept_together(std::move(text)), Tone::normal, false, State::holds});
    line[3].tone = Tone::strong;
    table.rows.push_back(std::move(line));
  }
  sheet.heading("Readings");
  sheet.table(std::move(table));
  if (about.readings.left_out.empty()) return;
  std::string counts;
  for (const int pairs : about.readings.left_out) counts += (counts.empty() ? "" : ", ") + std::to_string(pairs);
  sheet.say(
      fmt::format("Not to be read with {} engaged: there is no room between the least pressure that can be set and "
                  "what web and brake bear.",
                  counts + (counts == "1" ? " pair" : " pairs")));
}

void acceptance(Chapter& sheet, const Subject& about) {
  const auto& all = about.readings;
  sheet.heading("It is as expected when");
  sheet.items(
      {"every reading lies within its bounds;",
       "at one pressure the torque grows with the pairs alike: no pair adds less than its neighbours;",
       "falling and rising at one pressure lie within each other's bounds;",
       fmt::format("\"holdback fit\" says so: torque per pressure between {} and {} of nominal, with no pair that "
                   "does not bite.",
                   share(all.band_low, about.system), share(all.band_high, about.system))});
  sheet.say(
      "Read it back: fill in the CSV of this sheet, leave empty what was not read, and run the line below. Its "
      "last word takes the real brake over into the stand file, so that every paper made afterwards goes by it: leave "
      "it off until the brake is accepted.");
  sheet.say(fmt::format("holdback fit {}.csv --stand {} --brake \"{}\" --grade \"{}\" --brakes {} --write", file_name,
                        about.dossier.file, all.fit.brake, all.fit.grade, all.fit.brakes));
  sheet.say("Not as expected: do not run production by the set-up cards before the cause is found.", Tone::strong);
  sheet.facts({{"read by", "______________________"}, {"date", "______________________"}}, 2);
}

}  // namespace

Paper commissioning_sheet(const Dossier& dossier) {
  Paper paper;
  paper.kind = Kind::commissioning_sheet;
  paper.file = file_name;
  paper.title = std::string(name_of(paper.kind));
  paper.subject = draw::plain(dossier.stand.title);
  paper.date = dossier.date;
  Chapter sheet(dossier.system);
  if (!dossier.commissioning || dossier.commissioning->points.empty()) {
    sheet.verdict(State::fails, "fails: there is no brake and no job of which readings could be foretold");
  } else {
    const Subject about{dossier, *dossier.commissioning, dossier.system};
    subject(sheet, about);
    warn(sheet, about);
    steps(sheet, about);
    table(sheet, about);
    acceptance(sheet, about);
  }

  paper.blocks = sheet.take();
  return paper;
}

}  // namespace holdback::papers
