// The fields of a stand's history.
#pragma once

#include "holdback/report/words.hpp"
#include "holdback/results/history.hpp"

namespace holdback::report {

constexpr auto fields_of(Of<History> /*unused*/) {
  using T = History;
  return record("history", "what is kept of one stand over the years",  //
                field("stand", &T::stand, "name under which it is kept"),
                field("assumptions", &T::assumptions, "what the models assume"),
                field("cautions", &T::cautions, "what a person must heed"));
}

}  // namespace holdback::report
