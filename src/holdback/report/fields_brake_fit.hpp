// The fields of a brake that was fitted to readings.
#pragma once

#include "holdback/report/words.hpp"
#include "holdback/results/brake_fit.hpp"

namespace holdback::report {

constexpr auto fields_of(Of<BrakeFit> /*unused*/) {
  using T = BrakeFit;
  return record("brake_fit", "the constants of a real brake, fitted to readings",  //
                field("title", &T::title, "of the stand"),
                field("assumptions", &T::assumptions, "what the models assume"),
                field("cautions", &T::cautions, "what a person must heed"));
}

}  // namespace holdback::report
