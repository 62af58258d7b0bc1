#include "holdback/files/jobs_header.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "holdback/files/suggest.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

std::string prefix_of(ColumnOf of) {
  if (of == ColumnOf::web) return "web.";
  return of == ColumnOf::roll ? "roll." : "";
}

/// Why the unit of a header cannot be the column's, and what would be accepted.
std::pair<Note, Note> fault_of_unit(const JobColumn& column, const std::string& unit) {
  if (column.field->form != Form::quantity)
    return {{fmt::format("{} is a text and has no unit", column.name)}, {fmt::format("a header \"{}\"", column.name)}};
  const auto read = units::parse_unit(unit, column.field->kind);
  const auto* fault = std::get_if<units::Fault>(&read);
  if (fault == nullptr) return {{fmt::format("{} takes no unit", column.name)}, {"a header without a unit"}};
  return {{fault->what}, {fmt::format("a unit such as in {}", fault->accepted)}};
}

/// The header with the unit that stands below it.
std::string with_unit_below(const Cell& header, const Row& units, std::size_t index) {
  if (index >= units.cells.size() || header.text.empty() || !is_unit_alone(units.cells[index].text)) return header.text;
  const std::string& unit = units.cells[index].text;
  const bool bracketed = unit.front() == '[' || unit.front() == '(';
  return name_in(header.text) + " " + (bracketed ? unit : "[" + unit + "]");
}

/// One header after the other; the unknown ones last, when it is known which columns the others are.
class HeaderReader {
 public:
  HeaderReader(const std::string& table, Reading& reading) : table_(table), reading_(reading) {}

  std::vector<Column> read(const Row& header, const Row& units) {
    std::vector<Column> columns;
    std::vector<std::size_t> unknown;
    for (std::size_t i = 0; i < std::min(header.cells.size(), most_columns); ++i) {
      columns.emplace_back().header = header.cells[i];
      const HeaderMeaning meaning = meaning_of(with_unit_below(header.cells[i], units, i));
      if (meaning.columns.empty())
        unknown.push_back(i);
      else
        known(meaning, columns.back());
    }
    for (const std::size_t i : unknown) unknown_column(columns[i]);
    return columns;
  }

 private:
  void known(const HeaderMeaning& meaning, Column& column) {
    if (!meaning.refused.empty()) return refused(meaning, column);
    if (meaning.columns.size() > 1) return ambiguous(meaning, column);
    const JobColumn& is = *meaning.columns.front();
    const auto [first, is_first] = seen_.emplace(is.name, clipped(one_line(column.header.text)));
    column.meant = is.name;
    if (!is_first) return second(is, meaning.key, first->second, column);
    if (!meaning.unit_fits) {
      auto [what, accepted] = fault_of_unit(is, meaning.unit);
      tell(column.header, std::move(what), std::move(accepted));
      return reading_.absent_everywhere({is.field->key}, "");
    }
    column.of = is.of;
    column.field = is.field;
    column.unit = meaning.unit;
    column.key = meaning.key;
  }

  void second(const JobColumn& column, bool key, const std::string& first, const Column& given) {
    if (key)
      return tell(given.header, {fmt::format("the column {} stands here a second time", column.name)},
                  {"each column once"});
    tell(given.header,
         {fmt::format(R"("{}" is read as {}, and so is the column "{}")", shown_name(given), column.name, first)},
         {"one column of the two; give the other one a header that is no field, such as \"remark\""});
  }

  /// Several columns that it could be: all of them are left out of what is missing.
  void ambiguous(const HeaderMeaning& meaning, Column& column) {
    std::vector<std::string> names;
    for (const JobColumn* each : meaning.columns) {
      names.push_back(each->name);
      reading_.absent_everywhere({each->field->key}, "");
    }
    column.meant = names.front();
    const std::string fits = meaning.unit_fits ? "" : ", and its unit fits none of them";
    tell(column.header, {fmt::format("\"{}\" could be several columns{}", shown_name(column), fits)},
         {fmt::format("one of {}", listed(names))});
  }

  void refused(const HeaderMeaning& meaning, Column& column) {
    const JobColumn& is = *meaning.columns.front();
    column.meant = is.name;
    reading_.absent_everywhere({is.field->key}, "");
    tell(column.header, {fmt::format("{}: \"{}\"", meaning.refused, shown_name(column))},
         {fmt::format("\"{}\", {}; or, for a remark, any other header", is.name, is.field->help)});
  }

  /// A slip is an error; a column that means nothing here, such as one of remarks, is left out and said so.
  void unknown_column(Column& column) {
    const Cell& header = column.header;
    if (header.text.empty()) return;  // told when a cell stands under it
    const NearColumn near = near_column(header.text);
    const std::string name = shown_name(column);
    if (near.column.empty() || seen_.count(near.column) != 0)
      return tell(header, {fmt::format("\"{}\" is not a column of a table of jobs and is not read", name)},
                  {fmt::format("any header for a remark; columns: {}", listed(column_names()))}, Severity::warning);
    column.meant = near.column;
    reading_.absent_everywhere({column_called(near.column)->field->key}, "");
    const std::string also = near.name == near.column ? "" : fmt::format(", which is read as {}", near.column);
    tell(header, {fmt::format("\"{}\" is not a column of a table of jobs", name)},
         {fmt::format("did you mean \"{}\"{}?", near.name, also)});
  }

  static std::string shown_name(const Column& column) { return clipped(name_in(column.header.text)); }

  void tell(const Cell& cell, Note what, Note accepted, Severity severity = Severity::error) {
    reading_.problem(fmt::format("{} header", table_), cell.where, clipped(one_line(cell.text)), std::move(what),
                     std::move(accepted), severity);
  }

  const std::string& table_;
  Reading& reading_;
  std::map<std::string, std::string> seen_{};  // name of a column → the header that is read as it
};

}  // namespace

std::string Column::name() const { return prefix_of(of) + field->key; }

std::vector<Column> columns_of(const Row& header, const Row& units, const std::string& table, Reading& reading) {
  if (header.cells.size() > most_columns)
    reading.problem(fmt::format("{} header", table), header.cells[most_columns].where, "",
                    {fmt::format("the header has more than {} cells, too many to read", most_columns)},
                    {fmt::format("at most {} columns", most_columns)});
  return HeaderReader(table, reading).read(header, units);
}

std::vector<ColumnRead> columns_read(const std::vector<Column>& columns, const std::string& table) {
  std::vector<ColumnRead> all;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const Column& column = columns[i];
    if (column.header.text.empty()) continue;
    const int number = static_cast<int>(i) + 1;
    const bool read = column.field != nullptr;
    all.push_back({table, column.header.where.cell ? column_letters(number) : std::to_string(number),
                   clipped(one_line(column.header.text)), read ? column.name() : "", read ? column.unit : "",
                   column.key});
  }
  return all;
}

bool is_row_of_units(const Row& row) {
  const auto nothing = [](const std::string& text) { return text.empty() || text == "-" || text == "–"; };
  return !row.blank() && std::all_of(row.cells.begin(), row.cells.end(),
                                     [&](const Cell& cell) { return nothing(cell.text) || is_unit_alone(cell.text); });
}

bool is_title(const Row& row) {
  if (row.filled() != 1) return false;
  const auto cell =
      std::find_if(row.cells.begin(), row.cells.end(), [](const Cell& each) { return !each.text.empty(); });
  return meaning_of(cell->text).columns.empty();
}

}  // namespace holdback::files
