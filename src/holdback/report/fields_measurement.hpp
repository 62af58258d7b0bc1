// The fields of a tension that was measured on site.
#pragma once

#include "holdback/report/words.hpp"
#include "holdback/results/measurement.hpp"

namespace holdback::report {

constexpr auto fields_of(Of<Measurement> /*unused*/) {
  using T = Measurement;
  return record("measurement", "the tension of a web, from readings by one method",  //
                field("method", &T::method, "push, sag, pluck, pull or cell"),
                field("tension", &T::tension, Quantity::force, "over the whole width"),
                field("uncertainty", &T::uncertainty, Quantity::force, "standard uncertainty of the tension"),
                field("assumptions", &T::assumptions, "what the models assume"),
                field("cautions", &T::cautions, "what a person must heed"));
}

}  // namespace holdback::report
