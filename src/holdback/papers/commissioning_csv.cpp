// The table of the commissioning sheet as CSV, in the columns that `fit` reads.
#include <fmt/format.h>

#include "holdback/draw/cells.hpp"
#include "holdback/papers/card_parts.hpp"
#include "holdback/papers/commissioning_parts.hpp"
#include "holdback/papers/papers.hpp"
#include "holdback/report/csv_rows.hpp"

namespace holdback::papers {

namespace {

/// A title above the head: one cell, always in quotes, so that a sheet takes it for text.
std::string title_line(const Dossier& dossier, const Commissioning& commissioning) {
  const auto text = draw::plain(
      fmt::format("Commissioning of {}: {}. Fill in tension with diameter, or torque, and leave empty what was not "
                  "read. Then: "
                  "holdback fit THIS --stand {} --brake \"{}\" --grade \"{}\" --brakes {}",
                  dossier.stand.title.empty() ? dossier.file : dossier.stand.title, cards::brakes_of(commissioning.fit),
                  dossier.file, commissioning.fit.brake, commissioning.fit.grade, commissioning.fit.brakes));
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + "\"\n";
}

std::string head(units::System system) {
  return fmt::format("pressure [{}],pairs,direction,tension [{}],diameter [{}],torque [{}],temperature [{}],note\n",
                     units::unit_of(Quantity::pressure, system), units::unit_of(Quantity::force, system),
                     units::unit_of(Quantity::short_length, system), units::unit_of(Quantity::torque, system),
                     units::unit_of(Quantity::temperature, system));
}

}  // namespace

std::string commissioning_csv(const Dossier& dossier) {
  if (!dossier.commissioning) return head(dossier.system);
  const auto& commissioning = *dossier.commissioning;
  const auto unit = units::unit_of(Quantity::torque, dossier.system);
  std::string out = title_line(dossier, commissioning) + head(dossier.system);
  for (const auto& row : cards::commissioning_rows(commissioning, dossier.system)) {
    const auto note = fmt::format("{}expect {} {} ({} to {})", row.course.empty() ? "released: " : "", row.torque, unit,
                                  row.torque_low, row.torque_high);
    out += fmt::format("{},{},{},,,,,{}\n", row.pressure, row.pairs, row.course, report::csv_cell(note));
  }
  return out;
}

}  // namespace holdback::papers
