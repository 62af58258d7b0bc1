// `fit`: what the real brake does, and the verdict with its evidence.
#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

void fit_text(Sheet& sheet, const Answer& answer) {
  const auto& found = *answer.fit;
  sheet.title(found.title);
}

}  // namespace holdback::report
