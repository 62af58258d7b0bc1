// A table of jobs, row by row. A row becomes the same nodes as a TOML table and is read by the same fields.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "holdback/files/cross_check.hpp"
#include "holdback/files/csv.hpp"
#include "holdback/files/jobs_header.hpp"
#include "holdback/files/reading.hpp"
#include "holdback/files/resolve.hpp"
#include "holdback/files/stand_file.hpp"
#include "holdback/files/suggest.hpp"
#include "holdback/files/table_cells.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

constexpr std::size_t largest_file = 64'000'000;  // bytes

/// A weight that is written in per cent as a plain number: "35 %", and 35 under a header with "%", is 0.35.
std::string plain_share(const std::string& text, const std::string& unit) {
  const std::string written = unit == "%" && is_bare_number(text) ? text + " %" : text;
  const units::Parsed share = units::parse(written, Quantity::ratio);
  const bool per_cent = written.find('%') != std::string::npos && std::holds_alternative<double>(share);
  return per_cent ? fmt::format("{}", std::get<double>(share)) : text;
}

/// The three tables that a row may hold.
struct RowTables {
  Node job{};
  Node web{};
  Node roll{};

  Node& of(ColumnOf which) { return which == ColumnOf::web ? web : which == ColumnOf::roll ? roll : job; }
};

class JobsReader {
 public:
  JobsReader(StandFile& out, std::string file, bool sheet)
      : out_(out), file_(std::move(file)), sheet_(sheet), reading_(out_, file_) {}

  void read(std::string_view text) {
    const char delimiter = sheet_ ? ',' : delimiter_of(text);
    decimal_comma_ = delimiter == ';';
    CsvReader csv(text, delimiter, sheet_);
    const Row header = header_of_table(csv);
    const Row units = row_of_units(csv);
    columns_ = columns_of(header, units, file_, reading_);
    out_.columns = columns_read(columns_, file_);
    header_row_ = header.number;
    if (header.cells.size() > most_columns) return;
    check_header(header);
    Row row;
    while (csv.next(row) && room(row))
      if (!row.blank()) read_row(row);
    if (rows_ == 0)
      reading_.problem(file_, header.cells.front().where, "", {"the table has a header and no job"},
                       {"one row for each job"});
  }

 private:
  /// The first row that holds anything; rows of a single text above the header are titles, unless nothing follows.
  static Row header_of_table(CsvReader& csv) {
    Row row;
    while (csv.next(row) && row.blank()) {
    }
    if (!is_title(row)) return row;
    CsvReader ahead = csv;
    for (Row next; ahead.next(next);) {
      if (next.blank() || is_title(next)) continue;
      csv = ahead;
      return next;
    }
    return row;
  }

  /// The row below the header when it gives the units; else nothing is taken.
  static Row row_of_units(CsvReader& csv) {
    CsvReader ahead = csv;
    Row row;
    while (ahead.next(row) && row.blank()) {
    }
    if (!is_row_of_units(row)) return {};
    csv = ahead;
    return row;
  }

  bool has_column(const std::string& name) const {
    return std::any_of(columns_.begin(), columns_.end(),
                       [&](const Column& c) { return c.field != nullptr && c.name() == name; });
  }

  /// Columns whose header is wrong count too: their own fault is told already.
  bool has_columns_of(ColumnOf of) const {
    const std::string prefix = (of == ColumnOf::web ? section::web : section::roll) + ".";
    return std::any_of(columns_.begin(), columns_.end(), [&](const Column& c) {
      return c.field != nullptr ? c.of == of : c.meant.compare(0, prefix.size(), prefix) == 0;
    });
  }

  /// A required column that is missing is told once, here, and its default once for the whole table.
  void check_header(const Row& header) {
    std::set<std::string> absent;
    for (const Field<JobDraft>& field : job_fields()) {
      if (has_column(field.key)) continue;
      absent.insert(field.key);
      const bool own = (field.key == section::web && has_columns_of(ColumnOf::web)) ||
                       (field.key == section::roll && has_columns_of(ColumnOf::roll));
      if (field.presence == Presence::required && !own) tell_missing_column(field, header);
    }
    reading_.absent_everywhere(absent, fmt::format("every job of {}", file_));
  }

  void tell_missing_column(const FieldInfo& field, const Row& header) {
    for (const Column& column : columns_)
      if (column.meant == field.key) return;
    const std::string column = needs_unit(field) ? fmt::format("{} [m/min]", field.key) : field.key;
    reading_.problem(fmt::format("{} header", file_), header.cells.front().where, "",
                     {fmt::format("the table has no column {}", field.key)},
                     {fmt::format("a header cell \"{}\"", column)});
  }

  bool room(const Row& row) {
    const std::size_t most = section_of(section::job).most;
    if (out_.stand.jobs.size() < most || row.blank()) return true;
    reading_.problem(fmt::format("{} row {}", file_, row.number), row.cells.front().where, "",
                     {"there are too many jobs to read"},
                     {fmt::format("at most {} in stand file and table together", most)});
    return false;
  }

  void read_row(Row& row) {
    ++rows_;
    if (sheet_) fill_up(row);
    if (!well_formed(row)) return;
    RowTables tables;
    for (Node* node : {&tables.job, &tables.web, &tables.roll}) node->where = row.cells.front().where;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (row.cells[i].text.empty()) continue;
      if (columns_[i].field != nullptr) add_cell(columns_[i], row.cells[i], tables);
      if (columns_[i].header.text.empty()) tell_missing_name(columns_[i], row.cells[i]);
    }
    if (has_values(row)) read_job(tables, row);
  }

  /// A row of a sheet holds as many cells as were filled in: short ones get empty cells, long ones more columns.
  void fill_up(Row& row) {
    const std::size_t cells = std::max(row.cells.size(), columns_.size());
    for (std::size_t i = columns_.size(); i < cells; ++i)
      columns_.emplace_back().header.where = {header_row_, static_cast<int>(i) + 1, true};
    for (std::size_t i = row.cells.size(); i < cells; ++i)
      row.cells.push_back({"", {row.number, static_cast<int>(i) + 1, true}});
  }

  /// False when a cell that is read holds no value but what a sheet shows instead of one; each such cell is told.
  bool has_values(const Row& row) {
    bool all = true;
    for (std::size_t i = 0; i < columns_.size() && sheet_; ++i) {
      const std::string& text = row.cells[i].text;
      if (columns_[i].field == nullptr || text.empty() || (text[0] != '=' && !is_error_value(text))) continue;
      all = false;
      reading_.problem(fmt::format("{} row {}, {}", file_, row.number, columns_[i].name()), row.cells[i].where,
                       clipped(text), {text[0] == '=' ? "the formula has no stored value" : "the cell shows an error"},
                       {text[0] == '=' ? "a file that was saved by the program that computes it, or the value itself"
                                       : "a value; mend the formula in the sheet"});
    }
    return all;
  }

  /// Once for each column, as a warning: it may hold remarks.
  void tell_missing_name(Column& column, const Cell& cell) {
    if (column.name_missed) return;
    column.name_missed = true;
    reading_.problem(
        fmt::format("{} header", file_), column.header.where, "",
        {fmt::format("a column has no name and is not read; the first cell in it is \"{}\"", clipped(cell.text))},
        {fmt::format("any header for a remark; columns: {}", listed(column_names()))}, Severity::warning);
  }

  bool well_formed(const Row& row) {
    const std::string field = fmt::format("{} row {}", file_, row.number);
    if (row.fault == RowFault::open_quote)
      return reading_.problem(field, row.fault_where, "", {"a quote opens here and never closes"},
                              {"a second quote; a quote inside a text is doubled"}),
             false;
    if (row.fault == RowFault::text_after_quote)
      return reading_.problem(field, row.fault_where, "", {"text follows a closing quote"},
                              {"the delimiter, or the whole cell in quotes; a quote inside a text is doubled"}),
             false;
    if (row.cells.size() != columns_.size())
      return reading_.problem(
                 field, row.cells.front().where, "",
                 {fmt::format("the row has {} cells, and the header has {}", row.cells.size(), columns_.size())},
                 {fmt::format("{} cells; a cell with the delimiter in it stands in quotes", columns_.size())}),
             false;
    return true;
  }

  void add_cell(Column& column, const Cell& cell, RowTables& tables) {
    Node node;
    node.key = column.field->key;
    node.key_where = column.header.where;
    node.kind = Node::Kind::text;
    node.where = cell.where;
    node.written = clipped(cell.text);
    node.text = word_for(*column.field, cell.text);
    if (column.field->form == Form::quantity) {
      if (decimal_comma_) node.text = with_decimal_point(node.text);
      if (column.field->kind == Quantity::number) {
        node.text = plain_share(node.text, column.unit);
      } else if (is_bare_number(node.text)) {
        if (column.unit.empty() && needs_unit(*column.field)) return tell_missing_unit(column, cell);
        if (!column.unit.empty()) node.text += " " + column.unit;
      }
    }
    tables.of(column.of).children.push_back(std::move(node));
  }

  /// Once for each column, at its header; until then the cells of that column are not read.
  void tell_missing_unit(Column& column, const Cell& cell) {
    if (column.unit_missed) return;
    column.unit_missed = true;
    reading_.absent_everywhere({column.field->key}, "");
    reading_.problem(
        fmt::format("{} header", file_), column.header.where, clipped(column.header.text),
        {fmt::format("{} has no unit, and its cells are bare numbers such as {}", column.name(), clipped(cell.text))},
        {fmt::format("a header with the unit in brackets, or cells such as {}",
                     units::accepted_examples(column.field->kind))});
  }

  void read_job(RowTables& tables, const Row& row) {
    const std::size_t index = out_.stand.jobs.size();
    const Node* name = tables.job.child("name");
    Owner owner;
    owner.path = fmt::format("job[{}]", index);
    owner.label = fmt::format("{} row {}, ", file_, row.number);
    owner.words = name != nullptr ? fmt::format("job \"{}\"", clipped(name->text)) : fmt::format("row {}", row.number);
    reading_.place(owner.path, row.cells.front().where, fmt::format("row {}", row.number));
    give_width_to_own_web(tables);
    const bool own_web = take_own(tables.job, tables.web, section::web, owner);
    const bool own_roll = take_own(tables.job, tables.roll, section::roll, owner);
    JobDraft draft = reading_.table(job_fields(), tables.job, owner);
    if (draft.name.empty()) draft.name = fmt::format("row {}", row.number);
    const Web web = own_web ? web_of_row(tables, part(owner, section::web)) : web_in(draft, tables, owner);
    const Roll roll = own_roll ? reading_.table(roll_fields(), tables.roll, part(owner, section::roll))
                               : roll_in(draft, tables, owner);
    out_.stand.jobs.push_back(resolved(draft, web, roll, tables.job, owner, reading_));
    if (!tables.web.children.empty()) add_located(problems_of(web, owner.path + ".web"), out_);
    if (!tables.roll.children.empty()) add_located(problems_of(roll, owner.path + ".roll"), out_);
  }

  /// A row that describes its own web may give the width as the job's.
  static void give_width_to_own_web(RowTables& tables) {
    auto& job = tables.job.children;
    const bool own = !tables.web.children.empty() && tables.job.child(section::web) == nullptr;
    if (!own || tables.web.child("width") != nullptr) return;
    const auto width = std::find_if(job.begin(), job.end(), [](const Node& node) { return node.key == "width"; });
    if (width == job.end()) return;
    tables.web.children.push_back(*width);
    job.erase(width);
  }

  /// True when the row names no web (roll) but describes one; it is then called as the row says, or like the job.
  static bool take_own(Node& job, Node& own, const std::string& key, const Owner& owner) {
    if (own.children.empty() || job.child(key) != nullptr) return false;
    Node name;
    const Node* given = own.child("name");
    const Node* job_name = job.child("name");
    if (given != nullptr) {
      name = *given;
    } else {
      name = job_name != nullptr ? *job_name : Node{};
      name.key = "name";
      name.kind = Node::Kind::text;
      if (job_name == nullptr) name.text = owner.words;
      own.children.push_back(name);
    }
    name.key = key;
    job.children.push_back(name);
    return true;
  }

  static Owner part(const Owner& job, const std::string& key) {
    return {job.path_of(key), job.label + key + ".", fmt::format("{} of {}", key, job.words), ""};
  }

  Web web_of_row(const RowTables& tables, const Owner& owner) {
    const WebDraft draft = reading_.table(web_fields(), tables.web, owner);
    return resolved(draft, tables.web, owner, reading_);
  }

  Web web_in(const JobDraft& draft, const RowTables& tables, const Owner& owner) {
    const Web base = web_called(draft.web_name, out_.stand, tables.job, owner, reading_);
    WebDraft changed{base, std::nullopt};
    reading_.override_with(web_fields(), tables.web, part(owner, section::web), changed);
    return overridden(base, changed, tables.web);
  }

  Roll roll_in(const JobDraft& draft, const RowTables& tables, const Owner& owner) {
    Roll roll = roll_called(draft.roll_name, out_.stand, tables.job, owner, reading_);
    reading_.override_with(roll_fields(), tables.roll, part(owner, section::roll), roll);
    return roll;
  }

  StandFile& out_;
  std::string file_;
  bool sheet_;
  Reading reading_;
  int header_row_{1};
  std::vector<Column> columns_{};
  bool decimal_comma_{};
  int rows_{};
};

}  // namespace

void read_jobs(std::string_view text, const std::string& file_name, StandFile& into, bool sheet) {
  // The lines of a sheet written as CSV are nothing that a person has seen.
  const auto keep_lines = [&] {
    if (!sheet && text.size() <= largest_file) into.lines[file_name] = lines_of(text);
  };
  if (auto wrong = unreadable(text, largest_file, "a table of jobs: a header row, and a row for each job", file_name)) {
    keep_lines();
    into.problems.push_back(std::move(*wrong));
    return finish(into, file_name);
  }
  text = without_mark(text);
  keep_lines();
  remove_cross_problems(into);
  JobsReader(into, file_name, sheet).read(text);
  add_cross_problems(into);
  finish(into, file_name);
}

}  // namespace holdback::files
