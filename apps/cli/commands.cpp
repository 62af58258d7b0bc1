#include "commands.hpp"

#include <algorithm>

#include "actions.hpp"
#include "examples.hpp"
#include "options.hpp"

namespace holdback::cli {

namespace {

using S = Settings;
using namespace options;  // NOLINT(google-build-using-namespace): the words of the table

const Option csv{"--csv", "", "the jobs as CSV, one row a job", &S::csv, Completes::nothing, {}};
const Option jobs{
    "--jobs", "FILE",          "more jobs: a table as CSV or workbook (.xlsx) whose head names fields and units",
    &S::jobs, Completes::file, {}};
const Option sheet{
    "--sheet",          "NAME", "with a workbook: its sheet with the jobs; else the first one that is shown", &S::sheet,
    Completes::nothing, {}};
const Option xlsx{"--xlsx", "FILE.xlsx",     "write the answer also as a workbook: jobs, limits, reasons",
                  &S::xlsx, Completes::file, {}};
const Option table_xlsx{"--xlsx", "FILE.xlsx",     "write an example that is a table as a workbook, for --jobs",
                        &S::xlsx, Completes::file, {}};
const Option all{"--all", "", "every fit that was tried, every limit of every job", &S::all, Completes::nothing, {}};
const Option one_job{"--job",
                     "NAME",
                     "this job in depth: limits, tension, stops, wear, torque over the roll",
                     &S::job,
                     Completes::nothing,
                     {}};
const Option moved_job{"--job", "NAME", "the job whose roll is run", &S::job, Completes::nothing, {}};
const Option scenario{"--scenario",
                      "NAME",
                      "a [[scenario]] of the file; else the usual one: start, run to the core, a normal and an "
                      "emergency stop where each is hardest",
                      &S::scenario,
                      Completes::nothing,
                      {}};
const Option compare{"--compare",
                     "LIST",
                     "several controls side by side, best first: hand, diameter, dancer, loadcell, with commas "
                     "between them",
                     &S::compare,
                     Completes::nothing,
                     {}};
const Option idlers{
    "--idlers", "WHICH",          "each idler and span by itself, or following the line; else as the swings demand",
    &S::idlers, Completes::words, {"each", "following"}};
const Option traces{"--traces", "DIR",           "the traces as CSV into this folder, one file a control",
                    &S::traces, Completes::file, {}};
const Option runs_csv{"--csv", "", "the summary as CSV, one row a control", &S::csv, Completes::nothing, {}};
const Option loops_csv{"--csv", "", "the margins as CSV, one row a diameter and loop", &S::csv, Completes::nothing, {}};
const Option tuned_job{"--job", "NAME", "the job for which is tuned", &S::job, Completes::nothing, {}};
const Option plan_job{"--job", "NAME", "only this job", &S::job, Completes::nothing, {}};
const Option tolerance{"--tolerance",
                       "SHARE",
                       "tension of the hand card within ± this share, such as 8 %; else the job's own",
                       &S::tolerance,
                       Completes::nothing,
                       {}};

const Argument stand{"FILE", "stand file (TOML); - reads standard input", &S::file, true, Completes::file, {}};

const std::vector<ExitCode> verdict{{0, "every job holds all its limits (tight ones included)"},
                                    {1, "a limit fails for at least one job"},
                                    {2, "bad input: the file or the call; the message says where"},
                                    {3, "a fault of the program itself"}};

Command check() {
  return {"check",
          "read a stand file and show what was understood",
          "Reads the stand file, names every fault with its place and what would be accepted, and shows the stand as "
          "understood: rolls with their length, mass and inertia, tensions with their source, the torque they ask for. "
          "A wrong input shows here by its consequence.",
          {stand},
          {jobs, sheet, units, json, csv, xlsx, out, colour, help},
          {{"holdback check stand.toml", "faults with line and field, or the stand as understood"},
           {"holdback check --jobs trials.csv stand.toml", "the same with the jobs of a table"},
           {"holdback check --jobs mix.xlsx --sheet May stand.toml", "the same with those of a workbook"},
           {"holdback check --units us stand.toml", "in lbf, in, psi and degrees Fahrenheit"}},
          plain,
          answer_stand};
}

Command size() {
  return {
      "size",
      "choose the fit that covers the mix of jobs",
      "Compares every fit of the brakes in the file (brakes on the shaft, pad pairs, friction grade) over every job "
      "and the whole roll, recommends one and says why; shows pressures, margins, the binding limit, temperatures "
      "and pad life of each job; and for what falls out, the least change that would bring it in.",
      {stand},
      {one_job, all, brake, grade, brakes, jobs, sheet, units, json, csv, svg, xlsx, out, threads, colour, help},
      {{"holdback size stand.toml", "the recommended fit and every job on it"},
       {"holdback size stand.toml --job \"Label 60\"", "one job in depth, with its torque over the roll"},
       {"holdback size stand.toml --all", "every fit tried, every limit of every job"},
       {"holdback size stand.toml --brake D300 --grade soft", "only fits with this brake and grade"},
       {"holdback size stand.toml --svg figures", "also the figures of the mix and of its tightest job"},
       {"holdback size stand.toml --jobs mix.xlsx --xlsx answer.xlsx", "from a workbook into a workbook"},
       {"holdback size stand.toml --json | jq .outcome", "for a script; numbers in SI"}},
      verdict,
      answer_stand};
}

Command plan() {
  return {
      "plan",
      "pressures over the roll, and the card for setting by hand",
      "For each job on the recommended fit, or on the one named by --brake, --grade and --brakes: the pressure over "
      "the diameter for automatic control, and the fewest settings by hand that keep the tension within its "
      "tolerance, with diameters, pressures and the tension to expect.",
      {stand},
      {plan_job, tolerance, brake, grade, brakes, jobs, sheet, units, json, csv, svg, xlsx, out, threads, colour, help},
      {{"holdback plan stand.toml", "all jobs on the recommended fit"},
       {"holdback plan stand.toml --job \"Label 60\" --tolerance 8%", "one hand card, tension within ±8 %"},
       {"holdback plan stand.toml --svg figures", "also one figure a job, pressure and tension over the roll"},
       {"holdback plan stand.toml --csv --out plan.csv", "for a spreadsheet or a controller"}},
      verdict,
      answer_stand};
}

Command simulate() {
  return {
      "simulate",
      "run a job's roll through a scenario and watch the tension",
      "Puts one job in motion on the recommended fit, or on the one named by --brake, --grade and --brakes: the roll "
      "gets smaller, the brake sticks and slips and warms, the web stretches and goes slack, the control of the file "
      "(or those of --compare) sets the pressure. Says how the tension kept its window, what it peaked at, how much "
      "web hung loose, how long it took to settle, how warm the brake became and where the energy went.",
      {stand},
      {moved_job, scenario, compare, idlers, traces, svg, brake, grade, brakes, jobs, sheet, units, json, runs_csv, out,
       threads, colour, help},
      {{"holdback simulate stand.toml --job \"Label 60\"", "the usual scenario under the stand's own control"},
       {"holdback simulate stand.toml --job \"Label 60\" --scenario splice", "a scenario of the file"},
       {"holdback simulate stand.toml --job \"Label 60\" --compare hand,dancer,loadcell --svg figures",
        "three controls side by side, with their strips"},
       {"holdback simulate stand.toml --job \"Label 60\" --traces run", "all that was recorded, as CSV"}},
      {{0, "the run holds; of several, at least one does"},
       {1, "the web goes slack, a bound or a rating is left"},
       {2, "bad input: the file or the call; the message says where"},
       {3, "a fault of the program itself"}},
      answer_stand};
}

Command tune() {
  return {
      "tune",
      "settings of the control, and their margins from full to core",
      "Makes the stand linear at diameters from full to core and finds a gain and times that keep a gain margin of 2.5 "
      "and a phase margin of 45 degrees at all of them, once fixed and once following the diameter, with dead time, "
      "sampling and filters. Shows the swing of roll against web, how a roll that is out of round shakes the tension, "
      "where stick-slip begins; runs the usual scenario with the settings; and tries the other controls when the "
      "present one does not hold.",
      {stand},
      {tuned_job, svg, idlers, brake, grade, brakes, jobs, sheet, units, json, loops_csv, out, threads, colour, help},
      {{"holdback tune stand.toml --job \"Label 60\"", "settings, margins, evidence"},
       {"holdback tune stand.toml --job \"Label 60\" --svg figures", "also margins over the roll, and the runout"},
       {"holdback tune stand.toml --job \"Label 60\" --json | jq .tuning.loops[0].gain", "for a script"}},
      {{0, "the control holds the window"},
       {1, "it does not; the answer says which would"},
       {2, "bad input: the file or the call; the message says where"},
       {3, "a fault of the program itself"}},
      answer_stand};
}

Command example() {
  return {
      "example",
      "write an invented stand file to start from",
      "Without a name: lists the examples. With one: prints the file, or writes it with --out. A file that is there "
      "is replaced only with --force.",
      {{"NAME", "which example; none lists them", &S::topic, false, Completes::words, example_names()}},
      {out, table_xlsx, force, help},
      {{"holdback example", "what there is"},
       {"holdback example label-slitter --out stand.toml", "a file to edit"},
       {"holdback example film-laminator-trials --xlsx mix.xlsx", "a table of jobs to fill in"},
       {"holdback example label-slitter | holdback size -", "straight to its answer"}},
      plain,
      show_example};
}

Command page_command() {
  return {
      "page",
      "write the page: one HTML file that works offline",
      "Writes the page as one self-contained file, with this same core inside, for a laptop or a tablet at the "
      "machine: "
      "describe the stand, choose the fit, show the stand running, print. Open it in a browser; it needs no network.",
      {},
      {out, force, help},
      {{"holdback page --out holdback.html", "a file to open, to copy to a tablet, to send"}},
      plain,
      write_page};
}

Command description() {
  return {
      "describe",
      "schemas, file format, man page, shell completion",
      "Prints what is derived from the program's own tables: the JSON Schema of the stand file, that of the answers, "
      "the page on the file format, the man page, and the completion for a shell.",
      {{"TOPIC",
        "schema, answer-schema, file-format, man or completion",
        &S::topic,
        true,
        Completes::words,
        {"schema", "answer-schema", "file-format", "man", "completion"}},
       {"SHELL", "with completion: bash or zsh", &S::shell, false, Completes::words, {"bash", "zsh"}}},
      {out, help},
      {{"holdback describe schema --out stand.schema.json", "for an editor that checks while typing"},
       {"holdback describe man | man -l -", "the man page, not installed"},
       {"source <(holdback describe completion bash)", "completion in this shell"}},
      plain,
      describe};
}

}  // namespace

const std::vector<Command>& commands() {
  static const std::vector<Command> all_commands = [] {
    std::vector<Command> all{check(), size(), plan(), simulate(), tune()};
    for (const Command& one : on_site_commands()) all.push_back(one);
    for (const Command& one : {papers_command(), page_command(), example(), description()}) all.push_back(one);
    return all;
  }();
  return all_commands;
}

const Command* find_command(const std::string& name) {
  const auto found =
      std::find_if(commands().begin(), commands().end(), [&](const Command& each) { return each.name == name; });
  return found == commands().end() ? nullptr : &*found;
}

const std::vector<Option>& general_options() {
  static const std::vector<Option> options{help,
                                           {"--version", "", "show the version", &S::version, Completes::nothing, {}}};
  return options;
}

const std::vector<Variable>& variables() {
  static const std::vector<Variable> all_variables{
      {"HOLDBACK_UNITS", "si or us: the units when --units is not given"},
      {"NO_COLOR", "when set and not empty: no colour, unless --colour always is given"}};
  return all_variables;
}

std::string purpose() {
  return "sizes brakes for unwind stands, plans their pressure over the roll and shows the tension in motion";
}

}  // namespace holdback::cli
