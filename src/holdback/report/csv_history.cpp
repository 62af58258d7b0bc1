// The entries of a history as a table that `history` reads back.
#include "holdback/model/date.hpp"
#include "holdback/model/history_fields.hpp"
#include "holdback/report/csv_rows.hpp"

namespace holdback::report {

namespace {

/// A column that no entry fills is left out, but for the common ones.
bool used(const History& history, const HistoryField& field) {
  for (const HistoryEntry& entry : history.entries)
    if (!std::holds_alternative<std::monostate>(value_of(entry, field))) return true;
  return false;
}

void add(Row& row, const HistoryEntry& entry, const HistoryField& field) {
  const HistoryValue value = value_of(entry, field);
  const auto* number = std::get_if<double>(&value);
  const auto* text = std::get_if<std::string>(&value);
  if (std::holds_alternative<std::optional<double> HistoryEntry::*>(field.target)) {
    if (number != nullptr)
      row.number(field.key, *number, field.kind);
    else
      row.none(field.key, field.kind);
  } else if (number != nullptr) {
    const bool day = std::holds_alternative<std::optional<int> HistoryEntry::*>(field.target);
    row.text(field.key, day ? date_text(static_cast<int>(*number)) : "yes");
  } else {
    row.text(field.key, text != nullptr ? *text : "");
  }
}

}  // namespace

JobsTable history_table(const History& history, units::System system) {
  Rows rows;
  for (const HistoryEntry& entry : history.entries) {
    Row row(system);
    row.count("number", entry.number);
    row.text("stand", entry.stand);
    row.text("date", date_text(entry.day));
    row.text("kind", key_of(entry.kind));
    if (entry.corrects != 0)
      row.count("corrects", entry.corrects);
    else
      row.text("corrects", "");
    for (const HistoryField& field : history_fields())
      if (used(history, field)) add(row, entry, field);
    rows.add(row);
  }
  return rows.table();
}

}  // namespace holdback::report
