// `diagnose`: what a log says of the tension, and the likely causes.
#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

void diagnose_text(Sheet& sheet, const Answer& answer) {
  const auto& found = *answer.diagnosis;
  sheet.title(found.title);
}

}  // namespace holdback::report
