#include "holdback/files/readings_header.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "holdback/files/header_parts.hpp"
#include "holdback/files/header_words.hpp"
#include "holdback/files/job_columns.hpp"
#include "holdback/files/suggest.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

using Q = Quantity;

/// Names by which a column is known beside its own.
struct Alias {
  const char* column;
  std::vector<const char*> names;
};

const std::vector<Alias>& aliases() {
  static const std::vector<Alias> all{
      {"pressure",
       {"p", "air", "air pressure", "brake pressure", "gauge", "gauge pressure", "set pressure", "line pressure"}},
      {"tension", {"pull", "force", "scale", "web tension", "tension total", "total tension", "load", "spring scale"}},
      {"torque", {"moment", "brake torque", "shaft torque", "torque at shaft"}},
      {"diameter", {"d", "roll diameter", "outer diameter", "roll dia", "roll"}},
      {"pairs", {"n", "pad pairs", "engaged pairs", "pairs on", "pairs engaged", "number pairs"}},
      {"direction", {"course", "up down", "up or down", "rising falling", "rising or falling", "way"}},
      {"temperature", {"temp", "disc temperature", "disk temperature", "disc temp", "disc"}},
      {"note", {"notes", "remark", "remarks", "comment", "comments"}},
  };
  return all;
}

const FieldInfo* field_called(const std::string& name) {
  static const std::map<std::string, const FieldInfo*> known = [] {
    std::map<std::string, const FieldInfo*> all;
    for (const FieldInfo& field : reading_fields()) all.emplace(header_words(field.key), &field);
    for (const Alias& alias : aliases())
      for (const char* each : alias.names) all.emplace(header_words(each), all.at(header_words(alias.column)));
    return all;
  }();
  const auto found = known.find(header_words(name));
  return found == known.end() ? nullptr : found->second;
}

std::vector<std::string> names_of_columns() {
  std::vector<std::string> names;
  for (const FieldInfo& field : reading_fields()) names.push_back(field.key);
  return names;
}

/// What a header says.
struct Meaning {
  const FieldInfo* field{};
  std::string unit{};
  bool unit_fits{true};
  std::string name{};
};

Meaning meaning_of_reading(const std::string& header) {
  const std::string text = looked_at(header);
  if (const FieldInfo* field = field_called(text)) return {field, "", true, text};
  const NamedUnit bracketed = in_brackets(text);
  if (const FieldInfo* field = field_called(bracketed.name)) {
    const auto usable = usable_unit(*field, bracketed.unit);
    return {field, usable.value_or(bracketed.unit), usable.has_value(), bracketed.name};
  }
  for (const NamedUnit& split : with_loose_unit(text)) {
    const FieldInfo* field = field_called(split.name);
    if (field == nullptr) continue;
    if (const auto usable = usable_unit(*field, split.unit)) return {field, *usable, true, split.name};
  }
  return {nullptr, "", true, name_in(text)};
}

/// True for a name that counts pads: a pair is two of them, so that the column is not read as pairs.
bool counts_pads(const std::string& name) {
  static const std::set<std::string> names = [] {
    std::set<std::string> all;
    for (const char* each : {"pads", "n pads", "number of pads", "pads on", "pads engaged", "number of pads engaged"})
      all.insert(header_words(each));
    return all;
  }();
  return names.count(header_words(name)) != 0;
}

/// The header with the unit that stands below it.
std::string with_unit_below(const Cell& header, const Row& units, std::size_t index) {
  if (index >= units.cells.size() || header.text.empty() || !is_reading_unit(units.cells[index].text))
    return header.text;
  const std::string& unit = units.cells[index].text;
  const bool bracketed = unit.front() == '[' || unit.front() == '(';
  return header.text + " " + (bracketed ? unit : "[" + unit + "]");
}

}  // namespace

const std::vector<Field<ReadingDraft>>& reading_fields() {
  using F = Field<ReadingDraft>;
  using D = ReadingDraft;
  static const std::vector<F> rows{
      F::quantity("pressure", Q::pressure, &D::pressure)
          .from("0 bar")
          .to("50 bar")
          .required()
          .such_as("2.5 bar")
          .means("gauge pressure at the brake"),
      F::quantity("tension", Q::force, &D::tension).from("0 N").to("1000000 N").means("of the whole web"),
      F::quantity("torque", Q::torque, &D::torque).from("0 N*m").to("1000000 N*m").means("at the shaft"),
      F::quantity("diameter", Q::short_length, &D::diameter).from("5 mm").to("10 m").means("of the roll"),
      F::count("pairs", &D::pairs).from("1").to("24").means("pad pairs engaged on each brake"),
      F::word<PressureCourse>("direction", {{"rising", PressureCourse::rising}, {"falling", PressureCourse::falling}},
                              &D::course)
          .means("which way the pressure was moved"),
      F::quantity("temperature", Q::temperature, &D::temperature).from("-40 degC").to("1000 degC").means("of the disc"),
      F::text("note", &D::note).means("a remark"),
  };
  return rows;
}

bool is_reading_unit(const std::string& cell) {
  const std::string text = looked_at(cell);
  const std::string unit = opening_bracket(text) == 0 ? in_brackets(text).unit : text;
  if (!looks_like_unit(unit) || unit.size() > longest_unit) return false;
  return std::any_of(reading_fields().begin(), reading_fields().end(),
                     [&](const FieldInfo& field) { return usable_unit(field, unit).has_value(); });
}

bool names_reading_column(const std::string& header) { return meaning_of_reading(header).field != nullptr; }

std::vector<ReadingColumn> reading_columns(const Row& header, const Row& units, const std::string& table,
                                           Reading& reading) {
  std::vector<ReadingColumn> columns;
  std::map<std::string, std::string> seen;
  const auto tell = [&](const Cell& cell, Note what, Note accepted, Severity severity) {
    reading.problem(fmt::format("{} header", table), cell.where, clipped(one_line(cell.text)), std::move(what),
                    std::move(accepted), severity);
  };
  for (std::size_t i = 0; i < header.cells.size(); ++i) {
    ReadingColumn& column = columns.emplace_back();
    column.header = header.cells[i];
    if (column.header.text.empty()) continue;
    const Meaning meaning = meaning_of_reading(with_unit_below(column.header, units, i));
    if (meaning.field == nullptr) {
      const bool pads = counts_pads(meaning.name);
      const std::string near = pads ? "pairs" : nearest(meaning.name, names_of_columns());
      tell(column.header,
           {fmt::format("\"{}\" is not a column of a table of readings{}", clipped(meaning.name),
                        near.empty() ? " and is not read" : "")},
           {near.empty() ? fmt::format("columns: {}", listed(names_of_columns()))
            : pads       ? "\"pairs\", with half of the numbers: a pair is two pads"
                         : fmt::format("did you mean \"{}\"?", near)},
           near.empty() ? Severity::warning : Severity::error);
      continue;
    }
    const FieldInfo& field = *meaning.field;
    const auto [first, is_first] = seen.emplace(field.key, clipped(column.header.text));
    if (!is_first) {
      tell(column.header,
           {fmt::format("\"{}\" is read as {}, and so is \"{}\"", clipped(column.header.text), field.key,
                        first->second)},
           {"one column of the two"}, Severity::error);
      continue;
    }
    if (!meaning.unit_fits) {
      const auto read = units::parse_unit(meaning.unit, field.kind);
      const auto* fault = std::get_if<units::Fault>(&read);
      const bool quantity = field.form == Form::quantity && fault != nullptr;
      tell(column.header, {quantity ? fault->what : fmt::format("{} takes no unit", field.key)},
           {quantity ? fmt::format("a unit such as in {}", fault->accepted) : "a header without a unit"},
           Severity::error);
      reading.absent_everywhere({field.key}, "");
      continue;
    }
    column.field = &field;
    column.unit = meaning.unit;
    column.key = meaning.name == field.key;
  }
  return columns;
}

}  // namespace holdback::files
