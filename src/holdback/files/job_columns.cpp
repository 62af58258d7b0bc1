#include "holdback/files/job_columns.hpp"

#include <algorithm>
#include <cctype>
#include <map>

#include "holdback/files/field_table.hpp"
#include "holdback/files/header_parts.hpp"
#include "holdback/files/header_words.hpp"
#include "holdback/files/job_column_names.hpp"
#include "holdback/files/suggest.hpp"
#include "holdback/units/expression.hpp"
#include "holdback/units/kind_table.hpp"
#include "holdback/units/near_miss.hpp"
#include "holdback/units/text.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

std::string small_letters(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

/// Case, blanks and hyphens do not count in a key.
std::string plain(const std::string& name) {
  std::string result = small_letters(name);
  std::replace_if(
      result.begin(), result.end(), [](char c) { return c == ' ' || c == '-'; }, '_');
  return result;
}

// ---- names
// -----------------------------------------------------------------------------------------------------------

/// A column that a name may mean, with the unit that the name implies.
struct Hit {
  const JobColumn* column{};
  std::string unit{};
  bool operator==(const Hit&) const = default;
};

using Names = std::map<std::string, std::vector<Hit>>;

/// Every name that is known, as words: the table of aliases, the keys of the job, and the keys of web and roll with
/// "web" or "roll" before them.
const Names& known_names() {
  static const Names names = [] {
    Names all;
    const auto add = [&](const std::string& name, const Hit& hit) {
      auto& hits = all[header_words(name)];
      if (std::find(hits.begin(), hits.end(), hit) == hits.end()) hits.push_back(hit);
    };
    for (const ColumnAlias& alias : job_column_aliases())
      for (const std::string& name : alias.names) add(name, {column_called(alias.column), alias.unit});
    for (const JobColumn& column : job_columns())
      if (column.of == ColumnOf::job || all.count(header_words(column.name)) == 0) add(column.name, {&column, ""});
    return all;
  }();
  return names;
}

/// The columns of `hits` that take the unit.
std::vector<Hit> fitting(const std::vector<Hit>& hits, const std::string& unit) {
  std::vector<Hit> fits;
  for (const Hit& hit : hits)
    if (const auto usable = usable_unit(*hit.column->field, unit)) fits.push_back({hit.column, *usable});
  return fits;
}

HeaderMeaning meaning_from(const std::vector<Hit>& hits) {
  HeaderMeaning meaning;
  for (const Hit& hit : hits) meaning.columns.push_back(hit.column);
  if (hits.size() == 1) meaning.unit = hits.front().unit;
  return meaning;
}

/// What a name may stand for; a key with a point in it stands for itself alone.
std::vector<Hit> hits_of(const std::string& name) {
  const JobColumn* column = column_called(plain(name));
  if (column != nullptr && column->of != ColumnOf::job) return {{column, ""}};
  const auto found = known_names().find(header_words(name));
  return found == known_names().end() ? std::vector<Hit>{} : found->second;
}

/// A name with its unit by the known names; nothing when the name is not known, or when a unit that stands loose behind
/// it is none of its.
std::optional<HeaderMeaning> meaning_by_name(const NamedUnit& split, bool loose) {
  const auto hits = hits_of(split.name);
  if (hits.empty()) return std::nullopt;
  if (split.unit.empty()) return meaning_from(hits);
  const auto fits = fitting(hits, split.unit);
  if (!fits.empty()) return meaning_from(fits);
  if (loose) return std::nullopt;
  HeaderMeaning meaning = meaning_from(hits);
  meaning.unit = split.unit;
  meaning.unit_fits = false;
  return meaning;
}

/// The column's own key with a unit in brackets. A unit that belongs to another column of that name decides: "tension
/// [N/m]" is a tension per width.
std::optional<HeaderMeaning> meaning_by_key(const NamedUnit& split) {
  const JobColumn* column = column_called(plain(split.name));
  if (column == nullptr) return std::nullopt;
  if (const auto unit = usable_unit(*column->field, split.unit)) return HeaderMeaning{{column}, *unit, true, true, ""};
  if (const auto other = meaning_by_name(split, true); other && other->columns.size() == 1) return other;
  return HeaderMeaning{{column}, split.unit, false, true, ""};
}

std::optional<HeaderMeaning> refusal_of(const std::string& name) {
  for (const RefusedName& refused : refused_column_names())
    for (const std::string& each : refused.names)
      if (header_words(each) == header_words(name)) {
        HeaderMeaning meaning;
        meaning.columns = {column_called(refused.column)};
        meaning.refused = refused.why;
        return meaning;
      }
  return std::nullopt;
}

std::string prefix_of(ColumnOf of) {
  if (of == ColumnOf::web) return "web.";
  return of == ColumnOf::roll ? "roll." : "";
}

}  // namespace

const std::vector<JobColumn>& job_columns() {
  static const std::vector<JobColumn> all = [] {
    std::vector<JobColumn> columns;
    const auto add = [&](ColumnOf of, const std::vector<const FieldInfo*>& fields) {
      for (const FieldInfo* field : fields) columns.push_back({of, field, prefix_of(of) + field->key});
    };
    add(ColumnOf::job, infos(job_fields()));
    add(ColumnOf::web, infos(web_fields()));
    add(ColumnOf::roll, infos(roll_fields()));
    return columns;
  }();
  return all;
}

const JobColumn* column_called(const std::string& name) {
  const auto& all = job_columns();
  const auto found = std::find_if(all.begin(), all.end(), [&](const JobColumn& column) { return column.name == name; });
  return found == all.end() ? nullptr : &*found;
}

std::vector<std::string> column_names() {
  std::vector<std::string> names;
  for (const JobColumn& column : job_columns()) names.push_back(column.name);
  return names;
}

std::optional<std::string> usable_unit(const FieldInfo& field, const std::string& unit) {
  if (unit.empty()) return unit;
  if (field.form != Form::quantity) return std::nullopt;
  if (field.kind == Quantity::number) return unit == "%" ? std::optional<std::string>(unit) : std::nullopt;
  const auto fits = [&](const std::string& text) {
    return std::holds_alternative<units::UnitValue>(units::parse_unit(text, field.kind));
  };
  if (fits(unit)) return unit;
  const std::string bare =
      small_letters(unit.back() == '.' ? unit.substr(0, unit.size() - 1) : unit);  // "in.", "M/MIN"
  return bare != unit && fits(bare) ? std::optional<std::string>(bare) : std::nullopt;
}

bool is_unit_alone(const std::string& cell) {
  const std::string text = looked_at(cell);
  const std::string unit = opening_bracket(text) == 0 ? in_brackets(text).unit : text;
  if (!looks_like_unit(unit) || unit.size() > longest_unit) return false;
  const auto is_of_a_column = [](const units::Expression& read) {
    return std::any_of(job_columns().begin(), job_columns().end(), [&](const JobColumn& column) {
      return column.field->form == Form::quantity &&
             units::units_of(column.field->kind).dimension == read.measure.dimension;
    });
  };
  const std::string small = small_letters(unit);
  for (const std::string& each :
       small == unit ? std::vector<std::string>{unit} : std::vector<std::string>{unit, small}) {
    const auto read = units::read_expression(each);
    const auto* expression = std::get_if<units::Expression>(&read);
    if (expression != nullptr && is_of_a_column(*expression)) return true;
  }
  return false;
}

HeaderMeaning meaning_of(const std::string& header) {
  const std::string text = looked_at(header);
  const NamedUnit main = in_brackets(text);
  if (const auto meaning = meaning_by_key(main)) return *meaning;
  for (const NamedUnit& split :
       {main, NamedUnit{without_remarks(main.name), main.unit}, NamedUnit{without_remarks(text), ""}}) {
    if (const auto refused = refusal_of(split.name)) return *refused;
    if (const auto meaning = meaning_by_name(split, false)) return *meaning;
  }
  for (const NamedUnit& split : with_loose_unit(text)) {
    if (const auto refused = refusal_of(split.name)) return *refused;
    if (const auto meaning = meaning_by_name(split, true)) return *meaning;
  }
  return {};
}

std::string name_in(const std::string& header) {
  const std::string text = looked_at(header);
  if (opening_bracket(text) != std::string::npos) return in_brackets(text).name;
  for (const NamedUnit& split : with_loose_unit(text))
    if (is_unit_alone(split.unit)) return split.name;
  return text;
}

NearColumn near_column(const std::string& header) {
  const std::string name = name_in(header);
  const std::string column = nearest(name, column_names());
  if (!column.empty()) return {column, column};
  constexpr std::size_t shortest = 6;  // letters; shorter words are near to too much
  const std::string written = small_letters(name);
  for (const ColumnAlias& alias : job_column_aliases())
    for (const std::string& each : alias.names) {
      const std::size_t most = each.size() / shortest;
      const bool similar = written.size() >= shortest && written.size() <= each.size() + most;
      if (similar && units::edit_distance(written, each) <= most) return {alias.column, each};
    }
  return {};
}

std::string word_for(const FieldInfo& field, const std::string& text) {
  if (field.form != Form::words) return text;
  const std::string small = small_letters(std::string(units::trimmed(text)));
  for (const std::string& word : field.words)
    if (small == word) return word;
  for (const WordAlias& alias : word_aliases())
    if (std::find(alias.names.begin(), alias.names.end(), small) != alias.names.end()) return alias.word;
  return text;
}

}  // namespace holdback::files
