// `measure`: the tension from readings on site, how sure it is, and what would make it surer.
#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

void measure_text(Sheet& sheet, const Answer& answer) {
  const auto& found = *answer.measurement;
  sheet.title(found.method);
}

}  // namespace holdback::report
