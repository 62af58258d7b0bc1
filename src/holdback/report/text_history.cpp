// `history show`: what is kept of a stand, and when its pads are due.
#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

void history_text(Sheet& sheet, const Answer& answer) {
  const auto& found = *answer.history;
  sheet.title(found.stand);
}

}  // namespace holdback::report
