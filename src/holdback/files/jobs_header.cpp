#include "holdback/files/jobs_header.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <set>

#include "holdback/files/suggest.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

std::string prefix_of(ColumnOf of) {
  if (of == ColumnOf::web) return "web.";
  return of == ColumnOf::roll ? "roll." : "";
}

/// Every column that may stand in the header.
std::vector<Column> all_columns() {
  std::vector<Column> all;
  const auto add = [&](ColumnOf of, const std::vector<const FieldInfo*>& fields) {
    for (const FieldInfo* field : fields) all.push_back({of, field, "", "", {}, false});
  };
  add(ColumnOf::job, infos(job_fields()));
  add(ColumnOf::web, infos(web_fields()));
  add(ColumnOf::roll, infos(roll_fields()));
  return all;
}

struct NameAndUnit {
  std::string name;
  std::string unit;
};

/// "speed [m/min]" and "speed (m/min)" → "speed", "m/min".
NameAndUnit split(const std::string& header) {
  const char close = header.empty() ? ' ' : header.back();
  const std::size_t open = close == ']' ? header.find('[') : close == ')' ? header.find('(') : std::string::npos;
  if (open == std::string::npos) return {header, ""};
  const std::string unit = header.substr(open + 1, header.size() - open - 2);
  return {std::string(trimmed(header.substr(0, open))), std::string(trimmed(unit))};
}

/// Case, blanks and hyphens do not count in a header.
std::string plain(const std::string& name) {
  std::string result;
  for (const char c : name)
    result += c == ' ' || c == '-' ? '_' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return result;
}

/// Why the unit of a header cannot be the column's.
std::optional<Fault> fault_of_unit(const Column& column, const std::string& unit) {
  if (unit.empty()) return std::nullopt;
  if (column.field->form != Form::quantity)
    return Fault{{fmt::format("{} is a text and has no unit", column.name())},
                 {fmt::format("a header \"{}\"", column.name())}};
  const auto read = units::parse_unit(unit, column.field->kind);
  if (const auto* fault = std::get_if<units::Fault>(&read))
    return Fault{{fault->what}, {fmt::format("a unit such as in {}", fault->accepted)}};
  return std::nullopt;
}

class HeaderReader {
 public:
  HeaderReader(const std::string& table, Reading& reading) : table_(table), reading_(reading) {}

  Column read(const Cell& cell) {
    Column column;
    column.header = cell;
    const auto [name, unit] = split(cell.text);
    const Column* known = find(name);
    if (known == nullptr) {
      column.meant = nearest(name, column_names());
      unknown_column(name, column.meant, cell);
      return column;
    }
    if (!seen_.insert(known->name()).second) {
      tell(cell, {fmt::format("the column {} stands here a second time", known->name())}, {"each column once"});
      return column;
    }
    column.of = known->of;
    column.field = known->field;
    column.unit = unit;
    if (const auto fault = fault_of_unit(*known, unit)) {
      tell(cell, fault->what, fault->accepted);
      reading_.absent_everywhere({known->field->key}, "");
      column.meant = known->name();
      column.field = nullptr;
    }
    return column;
  }

 private:
  const Column* find(const std::string& name) const {
    const auto found = std::find_if(all_.begin(), all_.end(), [&](const Column& c) { return c.name() == plain(name); });
    return found == all_.end() ? nullptr : &*found;
  }

  void unknown_column(const std::string& name, const std::string& near, const Cell& cell) {
    if (name.empty()) return tell(cell, {"a column has no name"}, {fmt::format("columns: {}", listed(column_names()))});
    tell(cell, {fmt::format("\"{}\" is not a column of a table of jobs", clipped(name))},
         {near.empty() ? fmt::format("columns: {}", listed(column_names()))
                       : fmt::format("did you mean \"{}\"?", near)});
  }

  void tell(const Cell& cell, Note what, Note accepted) {
    reading_.problem(fmt::format("{} header", table_), cell.where, clipped(cell.text), std::move(what),
                     std::move(accepted));
  }

  const std::string& table_;
  Reading& reading_;
  std::vector<Column> all_{all_columns()};
  std::set<std::string> seen_{};
};

}  // namespace

std::string Column::name() const { return prefix_of(of) + field->key; }

std::vector<std::string> column_names() {
  std::vector<std::string> names;
  for (const Column& column : all_columns()) names.push_back(column.name());
  return names;
}

std::vector<Column> columns_of(const Row& header, const std::string& table, Reading& reading) {
  HeaderReader reader(table, reading);
  std::vector<Column> columns;
  for (const Cell& cell : header.cells) columns.push_back(reader.read(cell));
  return columns;
}

}  // namespace holdback::files
