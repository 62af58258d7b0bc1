// The fields of a log that was judged.
#pragma once

#include "holdback/report/words.hpp"
#include "holdback/results/diagnosis.hpp"

namespace holdback::report {

constexpr auto fields_of(Of<Diagnosis> /*unused*/) {
  using T = Diagnosis;
  return record("diagnosis", "a log, read and judged",  //
                field("title", &T::title, "of the stand"),
                field("assumptions", &T::assumptions, "what the models assume"),
                field("cautions", &T::cautions, "what a person must heed"));
}

}  // namespace holdback::report
