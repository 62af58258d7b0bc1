// The commands for readings that were taken on site.
#include <cctype>

#include "actions.hpp"
#include "history.hpp"
#include "holdback/model/measure_method.hpp"
#include "options.hpp"

namespace holdback::cli {

namespace {

using S = Settings;
using namespace options;  // NOLINT(google-build-using-namespace): the words of the table

const Option stand{"--stand", "FILE", "the stand file (TOML)", &S::stand, Completes::file, {}};
const Option job_on_stand{
    "--job", "NAME", "the job that runs: its web, width and tension window", &S::job, Completes::nothing, {}};

/// What a method reads, from its table: "span=1.2m", "needed: free length between the two rollers".
HelpGroup readings_of(const MeasureMethod& method) {
  HelpGroup group{"Readings of " + std::string(method.key) + ", to " + std::string(method.title), {}};
  group.title[group.title.rfind(method.title)] =
      static_cast<char>(std::tolower(static_cast<unsigned char>(method.title.front())));
  for (const ReadingKey& key : method.keys) {
    const std::string due = key.due == Due::always ? "needed: " : key.due == Due::web ? "needed without a job: " : "";
    group.entries.push_back({std::string(key.key) + "=" + std::string(key.sample), due + std::string(key.help)});
  }
  return group;
}

std::vector<HelpGroup> readings_of_methods() {
  std::vector<HelpGroup> groups;
  for (const MeasureMethod& method : measure_methods()) groups.push_back(readings_of(method));
  return groups;
}

std::vector<std::string> method_names() {
  std::vector<std::string> names;
  for (const MeasureMethod& method : measure_methods()) names.emplace_back(method.key);
  return names;
}

Command measure() {
  const Option instruction{
      "--instruction",    "", "how to take the readings, to be printed; with --svg a drawing", &S::instruction,
      Completes::nothing, {}};
  const Option recording{"--recording", "FILE.wav",      "with pluck: the sound of the plucked span",
                         &S::recording, Completes::file, {}};
  return {
      "measure",
      "the tension of a web, from readings taken on site",
      "Finds the tension from what was read by one method, with its standard uncertainty and what makes it, says "
      "whether it lies in the window of the job, which method is best for this web and span, and which reading "
      "would help most. A reading that was taken several times stands several times. Its resolution is read off "
      "the digits written; KEY.resolution=0.1N states it, and a value may carry limits, as in force=6.4N±0.2N.",
      {{"METHOD", measure_method_words(), &S::topic, true, Completes::words, method_names()},
       {"READING", "what was read, as KEY=VALUE with its unit", nullptr, false, Completes::nothing, {}, &S::readings}},
      {stand, job_on_stand, recording, instruction, units, json, svg, out, colour, help},
      {{"holdback measure push span=1.2m push=10.0mm force=6.4N --stand stand.toml --job "
        "\"Label 60\"",
        "the tension before the push; a key that was read again stands again"},
       {"holdback measure sag span=2.5m sag=3.5mm basis_weight=80g/m2 width=600mm", "without a stand"},
       {"holdback measure pluck span=1.2m --recording span.wav --stand stand.toml --job \"Label 60\"",
        "the frequency out of a recording"},
       {"holdback measure pull --instruction --svg sheets", "how to pull, with a drawing"}},
      plain,
      answer_stand,
      readings_of_methods()};
}

Command fit() {
  const Option write{
      "--write",          "", "put the fitted brake into the stand file, if the readings carry it", &S::write,
      Completes::nothing, {}};
  const Option mounted{
      "--brake",          "NAME", "the brake that was read; else the one that size recommends", &S::brake,
      Completes::nothing, {}};
  const Option fitted_grade{"--grade",          "NAME", "the friction grade that should be on it", &S::grade,
                            Completes::nothing, {}};
  const Option on_shaft{"--brakes", "N", "how many of it are on the shaft", &S::brakes, Completes::nothing, {}};
  return {
      "fit",
      "what the real brake does, from readings",
      "Fits torque per pressure, threshold, drag and hysteresis to readings, names the readings that do not fit, "
      "says what they show of the brake and where to read next. Columns: pressure, tension with diameter or torque, "
      "pairs, direction (rising, falling), temperature, note; units in the head or in each cell.",
      {{"READINGS", "CSV with a head; - reads standard input", &S::file, true, Completes::file, {}}},
      {stand, job_on_stand, mounted, fitted_grade, on_shaft, write, units, json, svg, out, colour, help},
      {{"holdback fit readings.csv --stand stand.toml --brake \"disc 330\" --grade M",
        "the fitted brake and the verdict"},
       {"holdback fit readings.csv --stand stand.toml --write", "the same, and into the stand file"}},
      {{0, "done"},
       {1, "with --write: the readings do not carry it, and nothing was written"},
       {2, "bad input: the file or the call"},
       {3, "a fault of the program itself"}},
      answer_stand};
}

Command diagnose() {
  const Option columns{"--columns",
                       "LIST",
                       "which column is what, where the head does not tell: \"time=t,tension=F1 [N]\"",
                       &S::columns,
                       Completes::nothing,
                       {}};
  const Option rate{
      "--rate",           "RATE", "rows a second, as in 1000Hz, of a log without times or with coarse ones", &S::rate,
      Completes::nothing, {}};
  const Option csv{"--csv", "", "phases, stops and ramps as CSV", &S::csv, Completes::nothing, {}};
  const Option from{"--from",           "TIME", "only what comes later in the log, as in 10min", &S::from,
                    Completes::nothing, {}};
  const Option to{"--to", "TIME", "only up to this time of the log", &S::to, Completes::nothing, {}};
  return {
      "diagnose",
      "what a log says of the tension, and the likely causes",
      "Reads a long log of time, tension, speed, pressure and diameter or turns, finds how the tension kept the window "
      "of "
      "the job, what shakes it, and what is likely wrong, with its evidence and what to try. Heads are found by the "
      "trade's words and units; --columns tells the rest.",
      {{"LOG", "CSV with a head; - reads standard input", &S::file, true, Completes::file, {}}},
      {stand, job_on_stand, columns, rate, from, to, brake, grade, brakes, units, json, csv, svg, out, threads, colour,
       help},
      {{"holdback diagnose log.csv --stand stand.toml --job \"Label 60\"", "the likely causes with their evidence"},
       {"holdback diagnose trend.csv --stand stand.toml --columns \"tension=F1 [N],speed=3 [m/min]\"",
        "a log whose head says less"}},
      plain,
      answer_stand};
}

Command history() {
  const Option name{"--stand-name", "NAME", "the stand whose history it is", &S::stand_name, Completes::nothing, {}};
  const Option stand_file{
      "--stand",
      "FILE",
      "add: its title names the stand; show: what it expects of the pads helps while little is measured",
      &S::stand,
      Completes::file,
      {}};
  const Option job_alone{
      "--job", "NAME", "show with --stand: this job alone runs, else the mix", &S::job, Completes::nothing, {}};
  const Option date{"--date", "DATE", "add: year-month-day; else today", &S::date, Completes::nothing, {}};
  const Option corrects{"--corrects",       "N", "add: the entry takes the place of entry N", &S::corrects,
                        Completes::nothing, {}};
  const Option answer{"--fit",        "FILE",          "add fit: constants out of the JSON answer of holdback fit",
                      &S::fit_answer, Completes::file, {}};
  const Option table{"--csv", "", "show: the entries as CSV, which the page opens too", &S::csv, Completes::nothing,
                     {}};
  const Option every{"--all", "", "show: every entry, not the last ones alone", &S::all, Completes::nothing, {}};
  return {
      "history",
      "what was read, measured and changed over the years, and when the pads are due",
      "Keeps dated entries of stands in a file (SQLite) and shows them with the next change of pads and its 90 % "
      "interval. Kinds of entry: reading, pads (new pads were fitted), wear (thickness or depth of a pad), energy "
      "(work done since the last such entry: energy, running_time, rolls), fit (constants of the brake), note. "
      "Entries are never changed; a correction is a new entry.",
      {{"ACTION", "add or show", &S::topic, true, Completes::words, {"add", "show"}},
       {"DB", "the file; add makes it when it is not there", &S::file, true, Completes::file, {}},
       {"WHAT",
        "add: KIND, then KEY=VALUE with unit; show: the name of the stand",
        nullptr,
        false,
        Completes::nothing,
        {},
        &S::readings}},
      {name, stand_file, job_alone, date, corrects, answer, units, json, table, every, svg, out, colour, help},
      {{"holdback history add stands.db --stand-name \"Slitter 2\" --date 2026-05-03 pads depth=12mm", "new pads"},
       {"holdback history add stands.db --stand-name \"Slitter 2\" wear brake=front pair=2 depth=9.4mm",
        "what is left today"},
       {"holdback history add stands.db --stand-name \"Slitter 2\" energy energy=410MJ running_time=260h",
        "the work since the last such entry"},
       {"holdback history show stands.db \"Slitter 2\" --svg figures", "the next change of pads, with its picture"}},
      {{0, "done; no pad was found worn"},
       {1, "show: a pad was at the maker's limit when last measured"},
       {2, "bad input: the file or the call; nothing was kept"},
       {3, "a fault of the program itself"}},
      keep_history};
}

}  // namespace

std::vector<Command> on_site_commands() { return {measure(), fit(), diagnose(), history()}; }

}  // namespace holdback::cli
