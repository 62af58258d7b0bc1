// A job that the recommended fit does not cover, and what would bring it in.
#include <fmt/format.h>

#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

std::string change_of(const Remedy& remedy, units::System system) {
  std::string out = fmt::format("{} → {}, {} in hand ({})", filled(remedy.what, system), key_of(remedy.state),
                                kept_together(in_hand(remedy.margin)), info(remedy.binding).name);
  if (!remedy.jobs_won.empty()) out += "; also brings in " + names(remedy.jobs_won);
  if (!remedy.jobs_lost.empty()) out += "; but loses " + names(remedy.jobs_lost);
  return out;
}

void failing_limits(Sheet& sheet, const std::vector<Limit>& failing) {
  const auto system = sheet.style().system;
  for (const auto& limit : failing) {
    sheet.paragraph(
        fmt::format("{}: {} ({})", key_of(limit.state), words_of(limit, system), kept_together(in_hand(limit.margin))),
        ink_of(limit.state), 4, true);
  }
}

}  // namespace

void uncovered_text(Sheet& sheet, const Uncovered& uncovered) {
  const auto system = sheet.style().system;
  const auto why = filled(uncovered.why, system);
  sheet.paragraph(named(uncovered.job) + (why.empty() ? "" : ": " + why), draw::Ink::strong, 2, true);
  failing_limits(sheet, uncovered.failing);
  if (uncovered.remedies.empty()) {
    sheet.paragraph("None of the single changes that were tried brings it in.", draw::Ink::plain, 4, true);
    return;
  }
  sheet.paragraph("What would change it, the least first:", draw::Ink::plain, 4);
  int number = 0;
  for (const auto& remedy : uncovered.remedies) {
    sheet.paragraph(fmt::format("{}. {}", ++number, change_of(remedy, system)), draw::Ink::plain, 6, true);
  }
}

}  // namespace holdback::report
