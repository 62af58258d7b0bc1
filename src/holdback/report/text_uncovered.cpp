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

Table failing_limits(const std::vector<Limit>& failing, units::System system) {
  Table table({{"", false, false, ""},
               {"", true, false, ""},
               {"", true, false, ""},
               {"", true, false, ""},
               {"", false, false, ""}});
  for (const auto& limit : failing) {
    const auto& about = info(limit.id);
    table.row({{std::string(about.name), draw::Ink::bad},
               {units::show(limit.value, about.kind, system)},
               {(about.sense == Sense::at_most ? "≤ " : "≥ ") + units::show(limit.bound, about.kind, system)},
               {in_hand(limit.margin), draw::Ink::bad},
               {at_diameter(limit.diameter, system)}});
  }
  return table;
}

}  // namespace

void uncovered_text(Sheet& sheet, const Uncovered& uncovered) {
  const auto system = sheet.style().system;
  sheet.paragraph(named(uncovered.job) + " fails", draw::Ink::strong, 2, true);
  if (uncovered.failing.empty()) {
    sheet.paragraph(filled(uncovered.why, system), draw::Ink::plain, 4, true);
  } else {
    sheet.table(failing_limits(uncovered.failing, system), 6);
  }
  if (uncovered.remedies.empty()) {
    sheet.paragraph("None of the changes that were tried brings it in.", draw::Ink::plain, 4, true);
    return;
  }
  sheet.paragraph("What would bring it in, the least change first:", draw::Ink::plain, 4);
  int number = 0;
  for (const auto& remedy : uncovered.remedies) {
    sheet.paragraph(fmt::format("{}. {}", ++number, change_of(remedy, system)), draw::Ink::plain, 6, true);
  }
}

}  // namespace holdback::report
