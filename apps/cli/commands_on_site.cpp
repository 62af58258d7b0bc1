// The commands for readings that were taken on site.
#include "actions.hpp"
#include "options.hpp"

namespace holdback::cli {

namespace {

using S = Settings;
using namespace options;  // NOLINT(google-build-using-namespace): the words of the table

const Option stand{"--stand", "FILE", "the stand file (TOML)", &S::stand, Completes::file, {}};
const Option job_on_stand{
    "--job", "NAME", "the job that runs: its web, width and tension window", &S::job, Completes::nothing, {}};

Command measure() {
  const Option recording{"--recording", "FILE.wav",      "with pluck: the sound of the plucked span",
                         &S::recording, Completes::file, {}};
  return {"measure",
          "the tension of a web, from readings taken on site",
          "Finds the tension from what was read by one method, with its standard uncertainty, and says whether it lies "
          "in the window of the job.",
          {{"METHOD",
            "push, sag, pluck, pull or cell",
            &S::topic,
            true,
            Completes::words,
            {"push", "sag", "pluck", "pull", "cell"}},
           {"READING",
            "what was read, as KEY=VALUE with its unit; one that is repeated stands several times",
            nullptr,
            false,
            Completes::nothing,
            {},
            &S::readings}},
          {stand, job_on_stand, recording, units, json, svg, out, colour, help},
          {{"holdback measure push span=1.2m push=10mm force=6.4N --stand stand.toml --job \"Label 60\"",
            "the tension before the push"}},
          plain,
          answer_stand};
}

Command fit() {
  return {"fit",
          "what the real brake does, from readings",
          "Fits torque per pressure, threshold and drag to readings and says what they show of the brake.",
          {{"READINGS", "CSV with a head; - reads standard input", &S::file, true, Completes::file, {}}},
          {stand, job_on_stand, brake, grade, brakes, units, json, svg, out, colour, help},
          {{"holdback fit readings.csv --stand stand.toml", "the fitted brake and the verdict"}},
          plain,
          answer_stand};
}

Command diagnose() {
  const Option columns{
      "--columns",        "LIST", "what the header does not tell: time=t,tension=F1[N], …", &S::columns,
      Completes::nothing, {}};
  return {
      "diagnose",
      "what a log says of the tension, and the likely causes",
      "Reads a log of time, speed, tension, pressure and diameter or turns, and finds what is wrong.",
      {{"LOG", "CSV with a head; - reads standard input", &S::file, true, Completes::file, {}}},
      {stand, job_on_stand, columns, brake, grade, brakes, units, json, svg, out, threads, colour, help},
      {{"holdback diagnose log.csv --stand stand.toml --job \"Label 60\"", "the likely causes with their evidence"}},
      plain,
      answer_stand};
}

}  // namespace

std::vector<Command> on_site_commands() { return {measure(), fit(), diagnose()}; }

}  // namespace holdback::cli
