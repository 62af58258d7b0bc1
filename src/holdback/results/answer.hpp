// The answer to any request: problems of the input, defaults that were used, and the result of the command.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/model/problem.hpp"
#include "holdback/results/brake_fit.hpp"
#include "holdback/results/check.hpp"
#include "holdback/results/choice.hpp"
#include "holdback/results/diagnosis.hpp"
#include "holdback/results/history.hpp"
#include "holdback/results/measurement.hpp"
#include "holdback/results/motion.hpp"
#include "holdback/results/plan.hpp"
#include "holdback/results/tuning.hpp"

namespace holdback {

/// A value that the stand file does not give and that was taken from the field table.
struct DefaultUsed {
  std::string field{};  // path, "air.supply_pressure", "brake[0].threshold_pressure"
  std::string owner{};  // name of the thing in words: "brake \"D300\""; empty for the single tables
  std::string text{};   // the value as the field table states it: "6 bar"
};

/// A column of a table of jobs, and what it was read as.
struct ColumnRead {
  std::string file{};    // name of the table
  std::string column{};  // "B" of a sheet, "2" of a text
  std::string header{};  // as written
  std::string field{};   // "speed", "web.caliper"; empty when the column is not read
  std::string unit{};    // that the header gives; empty when each cell carries its own
  bool key{};            // the header is the field's own key
};

/// How the answer ended; the command line's exit code.
enum class Outcome { holds = 0, fails = 1, bad_input = 2, internal = 3 };

struct Answer {
  std::string command{};  // "check", "size", "plan", "simulate", "tune", "measure", "fit", "diagnose", "history"
  Outcome outcome{Outcome::holds};
  Problems problems{};  // errors and warnings, in file order
  std::vector<DefaultUsed> defaults{};
  std::vector<ColumnRead> columns{};  // of the table of jobs or readings, or of the log, when one was given
  std::optional<Check> check{};
  std::optional<Choice> choice{};
  std::optional<Plan> plan{};
  std::optional<Simulation> simulation{};
  std::optional<Tuning> tuning{};
  std::optional<Measurement> measurement{};
  std::optional<BrakeFit> fit{};
  std::optional<Diagnosis> diagnosis{};
  std::optional<History> history{};
};

}  // namespace holdback
