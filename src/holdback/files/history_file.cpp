#include "holdback/files/history_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "holdback/files/csv.hpp"
#include "holdback/files/entry_reader.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/model/date.hpp"
#include "holdback/model/history_fields.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

constexpr std::size_t largest = 32U << 20U;  // bytes
constexpr std::size_t most_rows = 20'000;

/// A column: one of the five that every entry has, or a row of the table of fields.
struct Column {
  std::string key{};
  const HistoryField* field{};
  std::string unit{};  // of its numbers; empty: each cell carries its own
};

const std::vector<std::string>& common() {
  static const std::vector<std::string> keys{"number", "stand", "date", "kind", "corrects"};
  return keys;
}

std::vector<std::string> all_keys() {
  std::vector<std::string> keys = common();
  for (const HistoryField& field : history_fields()) keys.push_back(field.key);
  return keys;
}

class TableReader {
 public:
  TableReader(std::string_view text, const std::string& file) : csv_(text, delimiter_of(text)), file_(file) {}

  HistoryFile read() {
    Row row;
    while (csv_.next(row) && row.blank()) continue;
    header(row);
    if (has_errors(out_.problems)) return std::move(out_);
    while (csv_.next(row) && out_.entries.size() < most_rows) {
      well_formed(row);
      if (!row.blank()) entry(row);
    }
    if (out_.entries.size() == most_rows)
      fault({}, "", "", {fmt::format("more than {} entries are too many to read", most_rows)}, {"fewer"});
    if (out_.entries.empty() && !has_errors(out_.problems))
      fault({}, "", "", {"the table holds no entry"}, {"rows below the head, as `history show --csv` writes them"});
    together();
    return std::move(out_);
  }

 private:
  void fault(Position where, const std::string& field, const std::string& value, Note what, Note accepted) {
    Problem problem;
    problem.what = std::move(what);
    problem.field = field;
    problem.value = clipped(value);
    problem.accepted = std::move(accepted);
    problem.file = file_;
    problem.where = where;
    out_.problems.push_back(std::move(problem));
  }

  void header(const Row& row) {
    std::set<std::string> seen;
    for (std::size_t i = 0; i < row.cells.size() && i < 1000; ++i) {
      columns_.push_back(column(row.cells[i], static_cast<int>(i) + 1));
      const std::string& key = columns_.back().key;
      if (!key.empty() && !seen.insert(key).second)
        fault(row.cells[i].where, "head", key, {fmt::format("the column {} stands here a second time", key)},
              {"each column once"});
    }
    for (const char* key : {"stand", "date", "kind"})
      if (seen.count(key) == 0)
        fault({1, 1}, "head", "", {fmt::format("the column {} is missing", key)},
              {"a table of entries as `history show --csv` writes it"});
  }

  Column column(const Cell& cell, int number) {
    const std::size_t bracket = cell.text.find('[');
    const std::string key(trimmed(std::string_view(cell.text).substr(0, bracket)));
    Column column;
    column.field = history_field(key);
    if (column.field == nullptr && std::find(common().begin(), common().end(), key) == common().end()) {
      if (!cell.text.empty())
        fault(cell.where, "head", cell.text, {"there is no such column in a table of entries"},
              did_you_mean(key, all_keys()));
      return column;
    }
    column.key = key;
    std::string unit;
    if (bracket != std::string::npos) {
      const std::size_t end = cell.text.find(']', bracket);
      unit = cell.text.substr(bracket + 1, end == std::string::npos ? end : end - bracket - 1);
      read_unit(column, unit, cell);
    }
    out_.columns.push_back({file_, std::to_string(number), clipped(cell.text), key, clipped(unit), true});
    return column;
  }

  void read_unit(Column& column, const std::string& unit, const Cell& cell) {
    if (column.field == nullptr || !is_number(*column.field))
      return fault(cell.where, "head", cell.text, {fmt::format("{} has no unit", column.key)}, {column.key});
    const auto read = units::parse_unit(unit, column.field->kind);
    if (const auto* wrong = std::get_if<units::Fault>(&read))
      return fault(cell.where, "head", cell.text, {wrong->what}, {wrong->accepted});
    column.unit = unit;
  }

  void well_formed(const Row& row) {
    if (row.fault == RowFault::none) return;
    const bool open = row.fault == RowFault::open_quote;
    fault(row.fault_where, fmt::format("row {}", row.number), "",
          {open ? "a quote is opened and never closed" : "text stands behind a closing quote"},
          {"quotes around a cell, and a quote inside it doubled"});
  }

  void entry(const Row& row) {
    Problems problems;
    EntryReader reader(problems);
    HistoryEntry entry;
    entry.number = static_cast<int>(out_.entries.size()) + 1;
    const std::string label = fmt::format("row {}, ", row.number);
    reader.place(row.cells.front().where, label);
    if (row.cells.size() > columns_.size())
      reader.tell("columns", "", {"the row has more cells than the head"}, {"a cell for each column"});
    for (const bool first : {true, false}) cells(row, first, label, reader, entry);
    reader.place(row.cells.front().where, label);
    if (entry.stand.empty()) reader.tell("stand", "", {"the row names no stand"}, {"the name of the stand"});
    if (!seen_date_) reader.tell("date", "", {"the row has no date"}, {date_form});
    if (!seen_kind_) reader.tell("kind", "", {"the row has no kind"}, did_you_mean("", kind_words()));
    if (reader.sound()) reader.whole(entry);
    for (Problem& problem : problems) {
      problem.file = file_;
      out_.problems.push_back(std::move(problem));
    }
    out_.entries.push_back(std::move(entry));
    lines_.push_back(row.cells.front().where);
  }

  /// The five common cells first: the kind says what the others may be.
  void cells(const Row& row, bool first, const std::string& label, EntryReader& reader, HistoryEntry& entry) {
    if (first) seen_date_ = seen_kind_ = known_kind_ = false;
    for (std::size_t i = 0; i < std::min(row.cells.size(), columns_.size()); ++i) {
      const Cell& cell = row.cells[i];
      const Column& column = columns_[i];
      if (cell.text.empty()) continue;
      reader.place(cell.where, label);
      if (first && column.field == nullptr && column.key.empty())
        reader.tell("columns", cell.text, {"the cell stands under no head"}, {"a column with a head"});
      if (first && column.field == nullptr && !column.key.empty()) common_cell(column.key, cell.text, reader, entry);
      if (!first && column.field != nullptr && known_kind_) reader.value(entry, *column.field, cell.text, column.unit);
    }
  }

  void common_cell(const std::string& key, const std::string& text, EntryReader& reader, HistoryEntry& entry) {
    if (key == "date") {
      seen_date_ = true;
      reader.date(entry, text);
    } else if (key == "kind") {
      seen_kind_ = true;
      known_kind_ = entry_kind(text).has_value();
      reader.kind(entry, text);
    } else if (key == "stand") {
      const ReadValue read = word_value(text, key);
      if (const auto* refused = std::get_if<RefusedValue>(&read))
        reader.tell(key, text, refused->what, refused->accepted);
      else
        entry.stand = std::get<std::string>(std::get<HistoryValue>(read));
    } else {
      const auto count = units::parse(text, Quantity::count);
      const auto* value = std::get_if<double>(&count);
      if (value == nullptr || *value < 1 || *value > 1e9)
        return reader.tell(key, text, {fmt::format("{} is a whole number from 1 on", key)}, {"such as 12"});
      (key == "number" ? entry.number : entry.corrects) = static_cast<int>(*value);
    }
  }

  /// What the entries of each stand show together.
  void together() {
    if (has_errors(out_.problems)) return;
    for (Problem& problem : problems_of(out_.entries)) {
      for (std::size_t i = 0; i < out_.entries.size(); ++i)
        if (problem.field.rfind(name_of(out_.entries[i]) + ",", 0) == 0) problem.where = lines_[i];
      problem.file = file_;
      out_.problems.push_back(std::move(problem));
    }
    link_corrections(out_.entries);
  }

  CsvReader csv_;
  const std::string& file_;
  std::vector<Column> columns_{};
  std::vector<Position> lines_{};
  HistoryFile out_{};
  bool seen_date_{};
  bool seen_kind_{};
  bool known_kind_{};  // so that the values can be judged
};

}  // namespace

HistoryFile read_entry(const std::string& kind, const std::string& date, const std::vector<EntryWord>& words) {
  HistoryFile out;
  EntryReader reader(out.problems);
  HistoryEntry entry;
  reader.kind(entry, kind);
  reader.date(entry, date);
  std::set<std::string> seen;
  for (const EntryWord& word : words) {
    const HistoryField* field = history_field(word.key);
    if (!seen.insert(word.key).second) {
      reader.tell(word.key, word.text, {fmt::format("{} stands here a second time", word.key)}, {"each key once"});
    } else if (field == nullptr) {
      const auto known = entry_kind(kind) ? keys_of(entry.kind) : all_keys();
      reader.tell(word.key, word.text, {"there is no such key"}, did_you_mean(word.key, known));
    } else if (entry_kind(kind)) {
      reader.value(entry, *field, word.text);
    }
  }
  if (reader.sound()) reader.whole(entry);
  out.entries.push_back(std::move(entry));
  return out;
}

HistoryFile read_history(std::string_view text, const std::string& file_name) {
  if (auto problem = unreadable(text, largest, "a table of entries", file_name)) {
    HistoryFile out;
    out.problems.push_back(std::move(*problem));
    return out;
  }
  return TableReader(without_mark(text), file_name).read();
}

std::vector<std::string> stands_of(const std::vector<HistoryEntry>& entries) {
  std::vector<std::string> stands;
  std::set<std::string> seen;
  for (const HistoryEntry& entry : entries)
    if (seen.insert(entry.stand).second) stands.push_back(entry.stand);
  return stands;
}

}  // namespace holdback::files
