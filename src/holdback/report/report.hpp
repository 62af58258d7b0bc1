// Writers over an answer. They show; they compute nothing.
#pragma once

#include <string>

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

/// Problems in the manner of a good compiler: file:line:column, what, the line with an arrow, value, accepted.
std::string problems_text(const Problems& problems, const Style& style);

/// The answer as JSON, SI numbers, validating against answer_schema(). Two answers that are equal give identical bytes.
std::string json(const Answer& answer);

/// JSON Schema 2020-12 of every answer, derived from the same field lists that json() writes by.
std::string answer_schema();

/// The jobs of an answer as CSV, one row a job, header with units. Empty when the answer has no jobs.
std::string csv(const Answer& answer, units::System system);

}  // namespace holdback::report
