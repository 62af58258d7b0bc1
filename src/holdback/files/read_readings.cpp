// A table of readings, row by row; each row is read by the same fields as a table of a stand file.
#include "holdback/files/read_readings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <set>

#include "holdback/files/cross_check.hpp"
#include "holdback/files/readings_header.hpp"
#include "holdback/files/suggest.hpp"
#include "holdback/files/table_cells.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

constexpr std::size_t largest_file = 16'000'000;  // bytes
constexpr std::size_t most_readings = 2000;

/// What stands behind the number of a cell: "35 psi" → "psi".
std::string unit_of_cell(const std::string& text) {
  const std::size_t end = text.find_first_not_of("0123456789.,+-eE \t");
  // A unit such as "Eh" is none of ours; an exponent is part of the number.
  return end == std::string::npos ? "" : std::string(trimmed(std::string_view(text).substr(end)));
}

/// Words of the trade for rising and falling.
std::string course_word(const std::string& text) {
  std::string small;
  for (const char c : text) small += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  static const std::set<std::string> rising{"up", "rise", "increasing", "inc", "+", "↑", "r", "raising"};
  static const std::set<std::string> falling{"down", "fall", "decreasing", "dec", "-", "−", "↓", "f", "lowering"};
  if (rising.count(small) != 0) return "rising";
  if (falling.count(small) != 0) return "falling";
  return small;
}

class ReadingsReader {
 public:
  ReadingsReader(StandFile& notes, ReadingTable& out, std::string file)
      : notes_(notes), out_(out), file_(std::move(file)), reading_(notes_, file_) {}

  void read(std::string_view text) {
    const char delimiter = delimiter_of(text);
    decimal_comma_ = delimiter == ';';
    CsvReader csv(text, delimiter);
    const Row header = header_of(csv);
    if (header.cells.empty()) return;
    const Row units = units_of(csv);
    columns_ = reading_columns(header, units, file_, reading_);
    give_columns_read();
    check_columns(header);
    Row row;
    while (csv.next(row)) {
      if (row.blank()) continue;
      if (out_.rows.size() >= most_readings) {
        reading_.problem(fmt::format("{} row {}", file_, row.number), row.cells.front().where, "",
                         {"there are too many readings"}, {fmt::format("at most {}", most_readings)});
        break;
      }
      read_row(row);
    }
    tell_unread();
    if (rows_ == 0)
      reading_.problem(file_, header.cells.front().where, "", {"the table has a header and no reading"},
                       {"one row for each reading"});
  }

 private:
  /// The first row that names a column; rows of a single text above it are titles.
  static Row header_of(CsvReader& csv) {
    Row row;
    while (csv.next(row))
      if (!row.blank() && (row.filled() > 1 || names_reading_column(first_text(row)))) return row;
    return row.blank() ? Row{} : row;
  }

  static std::string first_text(const Row& row) {
    for (const Cell& cell : row.cells)
      if (!cell.text.empty()) return cell.text;
    return {};
  }

  /// A row below the head with a unit, and nothing but units and empty cells.
  static bool is_row_of_units(const Row& row) {
    const auto nothing = [](const std::string& text) {
      return text.empty() || text == "-" || text == "–" || text == "1";
    };
    bool any = false;
    for (const Cell& cell : row.cells) {
      if (nothing(cell.text)) continue;
      if (!is_reading_unit(cell.text)) return false;
      any = true;
    }
    return any;
  }

  static Row units_of(CsvReader& csv) {
    CsvReader ahead = csv;
    Row row;
    while (ahead.next(row) && row.blank()) {
    }
    if (!is_row_of_units(row)) return {};
    csv = ahead;
    return row;
  }

  void give_columns_read() {
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      const ReadingColumn& column = columns_[i];
      if (column.header.text.empty()) continue;
      out_.columns.push_back({file_, std::to_string(i + 1), clipped(column.header.text),
                              column.field != nullptr ? column.field->key : "", column.unit, column.key});
    }
  }

  bool has(const std::string& key) const {
    return std::any_of(columns_.begin(), columns_.end(), [&](const ReadingColumn& column) {
      return column.field != nullptr && column.field->key == key;
    });
  }

  void check_columns(const Row& header) {
    const auto missing = [&](const std::string& what, const std::string& accepted) {
      if (has_errors(notes_.problems)) return;  // a header with a fault may be the one
      reading_.problem(fmt::format("{} header", file_), header.cells.front().where, "", {what}, {accepted});
    };
    const bool pressure = has("pressure");
    const bool pull = has("tension") || has("torque");
    if (!pressure) missing("the table has no column of pressures", "a header cell \"pressure [bar]\"");
    if (!pull)
      missing("the table has neither tension nor torque",
              "a header cell \"tension [N]\" with \"diameter [mm]\", or \"torque [N*m]\"");
    if (has("tension") && !has("torque") && !has("diameter"))
      missing("tension needs the diameter of the roll at which it was read", "a header cell \"diameter [mm]\"");
    incomplete_ = !pressure || !pull;
    std::set<std::string> absent;
    if (!pressure) absent.insert("pressure");
    reading_.absent_everywhere(absent, "");
  }

  void read_row(const Row& row) {
    ++rows_;
    if (!well_formed(row)) return;
    if (is_unread(row)) {
      if (unread_++ == 0) first_unread_ = row;
      return;
    }
    Node node;
    node.where = row.cells.front().where;
    ReadingRow read;
    read.row = row.number;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      const Cell& cell = row.cells[i];
      if (columns_[i].field == nullptr || cell.text.empty()) continue;
      read.places[columns_[i].field->key] = {file_, cell.where, clipped(cell.text)};
      if (is_error_value(cell.text)) {
        reading_.problem(label(row) + columns_[i].field->key, cell.where, clipped(cell.text),
                         {"the cell shows an error"}, {"a value; mend the formula in the sheet"});
        return;
      }
      add_cell(columns_[i], cell, row, node);
    }
    Owner owner;
    owner.path = fmt::format("reading[{}]", row.number);
    owner.label = label(row);
    owner.words = fmt::format("row {}", row.number);
    const std::size_t before = notes_.problems.size();
    const ReadingDraft draft = reading_.table(reading_fields(), node, owner);
    read.pressure = draft.pressure;
    read.tension = draft.tension;
    read.torque = draft.torque;
    read.diameter = draft.diameter;
    read.pairs = draft.pairs;
    read.course = draft.course;
    read.temperature = draft.temperature;
    read.note = draft.note;
    if (notes_.problems.size() == before && !incomplete_) check_row(draft, row, read);
    out_.rows.push_back(std::move(read));
  }

  /// A row of a form whose reading was not filled in.
  bool is_unread(const Row& row) const {
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      const FieldInfo* field = columns_[i].field;
      if (field != nullptr && (field->key == "tension" || field->key == "torque") && !row.cells[i].text.empty())
        return false;
    }
    return !incomplete_;
  }

  void tell_unread() {
    if (unread_ == 0) return;
    const bool all = unread_ == rows_;
    const std::string one = fmt::format("row {} has neither tension nor torque and is left out", first_unread_.number);
    const std::string several = fmt::format("{} rows have neither tension nor torque and are left out", unread_);
    reading_.problem(
        label(first_unread_) + (has("torque") ? "torque" : "tension"), first_unread_.cells.front().where, "",
        {all            ? "no reading is filled in: no row has tension or torque"
         : unread_ == 1 ? one
                        : several},
        {"one of the two in each row that was read, such as 120 N"}, all ? Severity::error : Severity::warning);
  }

  std::string label(const Row& row) const { return fmt::format("{} row {}, ", file_, row.number); }

  /// What the cells of a row are together.
  void check_row(const ReadingDraft& draft, const Row& row, const ReadingRow& read) {
    const Position where = row.cells.front().where;
    const auto refuse = [&](const std::string& column, const std::string& what, const std::string& accepted) {
      const auto place = read.places.find(column);
      reading_.problem(label(row) + column, place == read.places.end() ? where : place->second.where,
                       place == read.places.end() ? "" : place->second.value, {what}, {accepted});
    };
    if (draft.tension && draft.torque) return refuse("torque", "the row gives tension and torque", "one of the two");
    if (draft.tension && !draft.diameter)
      refuse("diameter", fmt::format("row {} has a tension and no diameter", row.number),
             "the diameter of the roll, such as 600 mm");
  }

  bool well_formed(const Row& row) {
    const std::string field = fmt::format("{} row {}", file_, row.number);
    const auto refuse = [&](Position where, const std::string& what, const std::string& accepted) {
      reading_.problem(field, where, "", {what}, {accepted});
      return false;
    };
    if (row.fault == RowFault::open_quote)
      return refuse(row.fault_where, "a quote opens here and never closes",
                    "a second quote; a quote inside a text is doubled");
    if (row.fault == RowFault::text_after_quote)
      return refuse(row.fault_where, "text follows a closing quote", "the delimiter, or the whole cell in quotes");
    if (row.cells.size() != columns_.size())
      return refuse(row.cells.front().where,
                    fmt::format("the row has {} cells, and the header has {}", row.cells.size(), columns_.size()),
                    fmt::format("{} cells; a cell with the delimiter in it stands in quotes", columns_.size()));
    return true;
  }

  void add_cell(ReadingColumn& column, const Cell& cell, const Row& row, Node& node) {
    const FieldInfo& field = *column.field;
    Node made;
    made.key = field.key;
    made.key_where = column.header.where;
    made.kind = Node::Kind::text;
    made.where = cell.where;
    made.written = clipped(cell.text);
    made.text = field.form == Form::words ? course_word(cell.text) : cell.text;
    if (field.form == Form::quantity) {
      if (decimal_comma_) made.text = with_decimal_point(made.text);
      if (is_bare_number(made.text) && needs_unit(field)) {
        if (column.unit.empty()) return tell_missing_unit(column, cell);
        made.text += " " + column.unit;
      } else if (needs_unit(field)) {
        look_at_unit(column, cell, row);
      }
    }
    node.children.push_back(std::move(made));
  }

  void tell_missing_unit(ReadingColumn& column, const Cell& cell) {
    reading_.absent_everywhere({column.field->key}, "");
    incomplete_ = true;
    if (column.unit_missed) return;
    column.unit_missed = true;
    reading_.problem(fmt::format("{} header", file_), column.header.where, clipped(column.header.text),
                     {fmt::format("{} has no unit, and its cells are bare numbers such as {}", column.field->key,
                                  clipped(cell.text))},
                     {fmt::format("a header with the unit in brackets, or cells such as {}",
                                  units::accepted_examples(column.field->kind))});
  }

  /// A cell in another unit than its column is read as it stands, and told: it may be a slip.
  void look_at_unit(ReadingColumn& column, const Cell& cell, const Row& row) {
    const std::string unit = unit_of_cell(cell.text);
    const std::string before = column.unit.empty() ? column.seen_unit : column.unit;
    if (column.seen_unit.empty()) column.seen_unit = unit;
    if (before.empty() || unit.empty() || unit == before || column.mixed) return;
    if (!std::holds_alternative<units::UnitValue>(units::parse_unit(unit, column.field->kind))) return;
    column.mixed = true;
    reading_.problem(label(row) + column.field->key, cell.where, clipped(cell.text),
                     {fmt::format("units are mixed: {} here, {} {}", clipped(unit), clipped(before),
                                  column.unit.empty() ? "above" : "in the header")},
                     {"one unit in a column, if this is a slip; each cell is read in its own unit"}, Severity::warning);
  }

  StandFile& notes_;
  ReadingTable& out_;
  std::string file_;
  Reading reading_;
  std::vector<ReadingColumn> columns_{};
  bool decimal_comma_{};
  bool incomplete_{};  // a needed column cannot be read, as is told at its header
  int rows_{};
  int unread_{};  // rows without tension and torque
  Row first_unread_{};
};

}  // namespace

ReadingTable read_readings(std::string_view text, const std::string& file_name) {
  ReadingTable table;
  StandFile notes;
  if (auto wrong =
          unreadable(text, largest_file, "a table of readings: a header row, and a row for each reading", file_name)) {
    notes.problems.push_back(std::move(*wrong));
  } else {
    text = without_mark(text);
    notes.lines[file_name] = lines_of(text);
    ReadingsReader(notes, table, file_name).read(text);
  }
  finish(notes, file_name);
  table.lines = std::move(notes.lines[file_name]);
  table.problems = std::move(notes.problems);
  return table;
}

Problem problem_of_reading(const std::string& file, const ReadingTable& table, const ReadingRow& row,
                           const std::string& column, Note what, Note accepted, Severity severity) {
  Problem problem;
  problem.severity = severity;
  problem.field = fmt::format("{} row {}, {}", file, row.row, column);
  problem.what = std::move(what);
  problem.accepted = std::move(accepted);
  problem.file = file;
  const auto place = row.places.find(column);
  if (place == row.places.end()) return problem;
  problem.where = place->second.where;
  problem.value = place->second.value;
  const auto index = static_cast<std::size_t>(std::max(problem.where.line, 1)) - 1;
  if (problem.where.line > 0 && index < table.lines.size()) problem.source_line = table.lines[index];
  return problem;
}

}  // namespace holdback::files
