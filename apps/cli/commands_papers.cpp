#include "actions.hpp"
#include "commands.hpp"
#include "options.hpp"

namespace holdback::cli {

namespace {

using S = Settings;
using namespace options;  // NOLINT(google-build-using-namespace): the words of the table

const Option folder{"--out", "DIR",           "the folder for the papers, made when it is not there; needed",
                    &S::out, Completes::file, {}};
const Option only{
    "--only",
    "LIST",
    "only these, with commas between them: report, cards, maintenance, commissioning, comparison, changes",
    &S::only,
    Completes::nothing,
    {}};
const Option sheet_size{
    "--paper",      "SIZE",           "a4 or letter; else a4 with SI units and letter with US units",
    &S::sheet_size, Completes::words, {"a4", "letter"}};
const Option date{"--date",           "DATE", "year-month-day on the papers; else they carry none", &S::date,
                  Completes::nothing, {}};
const Option worked{"--job", "NAME", "the job that is worked through, and the only card", &S::job, Completes::nothing,
                    {}};
const Option beside{"--beside", "FILE", "another stand file: a comparison of both", &S::beside, Completes::file, {}};
const Option before{"--before", "FILE",          "an earlier revision of the file: what changed, and what that does",
                    &S::before, Completes::file, {}};
const Option other_brake{"--other-brake",    "NAME", "compare with the best fit of this brake", &S::other_brake,
                         Completes::nothing, {}};
const Option other_grade{"--other-grade", "NAME", "… of this friction grade", &S::other_grade, Completes::nothing, {}};
const Option other_brakes{"--other-brakes",   "N", "… with so many brakes on the shaft", &S::other_brakes,
                          Completes::nothing, {}};
const Option jobs{"--jobs", "FILE", "more jobs: a table as CSV or workbook (.xlsx)", &S::jobs, Completes::file, {}};
const Option sheet{"--sheet", "NAME", "with a workbook: its sheet with the jobs", &S::sheet, Completes::nothing, {}};
const Option papers_json{
    "--json",           "", "what stands on the papers as JSON on standard output, figures as SVG in it", &S::json,
    Completes::nothing, {}};

}  // namespace

Command papers_command() {
  return {
      "papers",
      "PDFs: selection report, cards for the machine, commissioning sheet",
      "Writes what is left behind with the customer and on the machine: a selection report that can be checked line by "
      "line, with every equation of one job worked through; a set-up card for each job; a maintenance card; a "
      "commissioning sheet with a table to fill, which fit reads back; with --beside or another fit a comparison, with "
      "--before the list of changes. Files of the same names in the folder are replaced.",
      {{"FILE", "stand file (TOML); - reads standard input", &S::file, true, Completes::file, {}}},
      {folder, only,  date,   sheet_size, worked, beside, before,      other_brake, other_grade, other_brakes,
       brake,  grade, brakes, jobs,       sheet,  units,  papers_json, threads,     colour,      help},
      {{"holdback papers stand.toml --out papers --date 2026-05-03", "all papers of the stand"},
       {"holdback papers stand.toml --out papers --only cards --job \"Label 60\"", "one card"},
       {"holdback papers stand.toml --out papers --units us", "in US units, on Letter"},
       {"holdback papers new.toml --before old.toml --only changes --out papers", "what the customer changed"},
       {"holdback papers stand.toml --only comparison --other-grade soft --out papers", "two fits side by side"}},
      {{0, "written; every job holds all its limits (tight ones included)"},
       {1, "written; a limit fails for at least one job"},
       {2, "bad input: the file or the call; the message says where"},
       {3, "a fault of the program itself"}},
      write_papers};
}

}  // namespace holdback::cli
