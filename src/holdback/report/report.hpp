// Writers over an answer. They show; they compute nothing.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/results/answer.hpp"
#include "holdback/units/units.hpp"

namespace holdback::report {

/// How a text answer is set.
struct Style {
  units::System system{units::System::si};
  bool colour{false};  // ANSI colour beside the words; never instead of them
  int width{100};      // columns
  bool all{false};     // every fit that was tried, every limit of every job
};

/// The answer as a person reads it in a terminal: well set tables and a small picture.
std::string text(const Answer& answer, const Style& style);

/// The first problems of a long list: `most` of them, errors before warnings where the list is cut.
Problems first_problems(const Problems& problems, std::size_t most);

/// Problems in the manner of a good compiler: file:line:column (a cell in a sheet: file:B7), what, the line with an
/// arrow, value, accepted. At most 200 of them, then how many more there are.
std::string problems_text(const Problems& problems, const Style& style);

/// The answer as JSON, SI numbers, validating against answer_schema(). Two answers that are equal give identical bytes.
std::string json(const Answer& answer);

/// JSON Schema 2020-12 of every answer, derived from the same field lists that json() writes by.
std::string answer_schema();

/// The jobs of an answer as a table in the reader's units, one row a job (`simulate`: a run; `tune`: a diameter of a
/// loop); heads carry the units. Empty when the answer has no jobs.
struct JobsTable {
  struct Cell {
    std::string text{};
    std::optional<double> number{};  // instead of the text
  };
  std::vector<std::string> heads{};
  std::vector<std::vector<Cell>> rows{};
};
JobsTable jobs_table(const Answer& answer, units::System system);

/// The same as CSV, header with units. Empty when the answer has no jobs.
std::string csv(const Answer& answer, units::System system);

/// What was kept of a run as CSV, one row a kept time, header with units. A list that is shorter than that of the times
/// leaves cells empty. Empty when nothing was kept.
std::string trace_csv(const MotionRun& run, units::System system);

}  // namespace holdback::report
