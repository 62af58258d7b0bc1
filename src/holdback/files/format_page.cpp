#include "holdback/files/format_page.hpp"

#include <fmt/format.h>

#include <set>

#include "holdback/files/field_table.hpp"
#include "holdback/files/job_column_names.hpp"
#include "holdback/files/job_columns.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

constexpr std::string_view introduction = R"md(# File format

This page is printed by `holdback describe file-format` from the field table in `src/holdback/files/`, which also makes the
reader, the [JSON Schema](../schema/stand.schema.json) and the suggestions in messages. Do not edit it by hand.

A stand file is TOML in UTF-8. A quantity is a text with a unit: `"1.2 lbf/in"`, `"35 psi"`, `"300 m/min"`, `"12 um"`. SI and US
units may be mixed freely, also as products and quotients (`"N*m"`, `"lb/(3000 ft2)"`). A bare number where a unit is due is
an error. Ratios are per cent or a share of one: `"8 %"`, `0.08`. Pressures are gauge pressures. Temperatures are read on their
scale, temperature differences as steps. A key that is absent and has a default is taken from this table, and every answer
lists the defaults that it used.

Order does not matter, save that `[[brake.grade]]` belongs to the `[[brake]]` above it, as `[[scenario.event]]` does to its
`[[scenario]]`, and that events happen in the order in which they stand.

## A small stand

Invented; no real machine, maker or customer.

```toml
)md";

constexpr std::string_view example = R"toml([line]
top_speed = "300 m/min"

[[web]]
name = "film"
material = "polyester"
width = "40 in"
caliper = "12 um"
density = "1400 kg/m3"

[[roll]]
name = "jumbo"
core_diameter = "6 in"
full_diameter = "800 mm"

[[job]]
name = "slit film"
web = "film"
roll = "jumbo"
speed = "250 m/min"
tension_per_width = "0.5 lbf/in"

[[brake]]
name = "disc 300"
pad = "sector"
pad_inner_diameter = "180 mm"
pad_outer_diameter = "290 mm"
pad_angle = "40 deg"
pairs = 4
piston_area = "20 cm2"
disc_mass = "12 kg"
disc_inertia = "0.15 kg*m2"
cooling = [{ speed = "100 rev/min", power = "0.6 kW" }, { speed = "800 rev/min", power = "2.2 kW" }]
cooling_rise = "150 K"
rated_pressure = "80 psi"
rated_torque = "400 N*m"
rated_speed = "1800 rev/min"
rated_temperature = "250 degC"

[[brake.grade]]
name = "standard"
friction = 0.35
temperature_limit = "220 degC"
)toml";

constexpr std::string_view about_jobs = R"md(
## A table of jobs (CSV or workbook)

Jobs may also come from a table: `holdback size stand.toml --jobs jobs.csv`, or `--jobs mix.xlsx`, of which the first sheet
that is shown is read, or the one that `--sheet NAME` names. They are added to those of the stand file.

- The first row names the columns. A quantity's unit stands there, `speed [m/min]`, `Speed (m/min)` or `Speed, m/min`, or in a
  row of units below, or else in each cell.
- Columns are the keys of `[[job]]`. The row's own web and roll are described by their keys behind `web.` and `roll.`:
  `web.caliper [um]`, `roll.full_diameter [mm]`. Beside a name in the column `web` (`roll`) they replace single values of that
  web (roll) for this job; without a name they describe a new one, which may take its width from the column `width`.
- Columns may also be called as the trade calls them (table below). Case, punctuation, the order of words and short forms
  (`dia.`, `Ø`, `max.`) do not count. A name that could be several columns is an error unless its unit tells which. The answer
  says what each column was read as. A column that is near to none is left out with a warning, so remarks may stay.
- A share may be in per cent. Families of material may be written as the trade does: `PET`, `BOPP`, `LDPE`, `aluminum foil`.
- Blank rows, and rows of one text above the header, are passed over. An empty cell is an absent key.
- CSV: commas, semicolons or tabs part the cells; with semicolons a decimal comma is read too. Quotes follow RFC 4180. At most
  64 MB.
- Workbook (.xlsx): cells give their value, formulas the one that is stored; a cell shown in per cent is per cent; dates stay
  serial numbers; of merged cells the first has the value; hidden rows and columns are read like others. At most 100000 rows,
  256 columns, 32 MB packed, 64 MB a part. Messages name the cell, `mix.xlsx:B7`. Old workbooks (.xls) and those with a
  password are refused.

```csv
name,web,roll,speed [m/min],tension_per_width [lbf/in],web.width [mm]
slit 300,film,jumbo,250,0.5,300
slit 450,film,jumbo,220,0.5,450
```
)md";

/// Text that stands in a cell of a Markdown table.
std::string cell(std::string text) {
  for (std::size_t at = text.find('|'); at != std::string::npos; at = text.find('|', at + 2)) text.insert(at, "\\");
  return text;
}

std::string kind_of(const FieldInfo& info) {
  if (info.form == Form::text) return "text";
  if (info.form == Form::words) return "word";
  return info.form == Form::points ? "list" : units::name_of(info.kind);
}

std::string default_of(const FieldInfo& info) {
  if (info.presence == Presence::required) return "**required**";
  return info.presence == Presence::optional ? "—" : "`" + info.default_text + "`";
}

std::string accepted_of(const FieldInfo& info) {
  if (info.form == Form::text) return fmt::format("one line, at most {} characters", longest_text);
  if (info.form == Form::points) return fmt::format("1 to {} points", section_of(info.key).most);
  if (info.form == Form::quantity && info.low->value == info.high->value) return info.low->text;
  if (info.form == Form::quantity)
    return fmt::format("{}{} to {}", info.low->open ? "above " : "", info.low->text, info.high->text);
  std::string words;
  for (const std::string& word : info.words) words += (words.empty() ? "`" : ", `") + word + "`";
  return words;
}

std::string words_in(const std::vector<std::string>& pads) {
  std::string text;
  for (const std::string& pad : pads) text += (text.empty() ? "" : " or ") + pad;
  return text;
}

std::string meaning_of(const FieldInfo& info) {
  std::string text = info.help;
  if (!info.needed_with.empty()) text += fmt::format("; required with pad {}", words_in(info.needed_with));
  if (!info.only_with.empty() && info.only_with != info.needed_with)
    text += fmt::format("; only with pad {}", words_in(info.only_with));
  return text;
}

std::string title_of(const Section& section) {
  if (section.key.empty()) return "Above all tables";
  return section.inline_table ? fmt::format("`{}` of `[[{}]]`", section.key, section.parent)
                              : "`" + header_of(section) + "`";
}

std::string section_text(const Section& section) {
  std::string text = fmt::format("\n## {}\n\n{}", title_of(section), section.help);
  if (section.many) text += fmt::format(" At most {}.", section.most);
  text += "\n\n| key | kind | default | accepted | meaning |\n|---|---|---|---|---|\n";
  for (const FieldInfo* info : section.fields)
    text += fmt::format("| `{}` | {} | {} | {} | {} |\n", info->key, kind_of(*info), cell(default_of(*info)),
                        cell(accepted_of(*info)), cell(meaning_of(*info)));
  return text;
}

/// Each kind that a field takes, once, with texts of it.
std::string kinds_text() {
  std::string text = "\n## Kinds of quantity\n\n| kind | written, for example | shown in |\n|---|---|---|\n";
  std::set<Quantity> kinds;
  for (const Section& section : sections())
    for (const FieldInfo* info : section.fields)
      if (info->form == Form::quantity) kinds.insert(info->kind);
  for (const Quantity kind : kinds) {
    const std::string si = units::unit_of(kind, units::System::si);
    const std::string us = units::unit_of(kind, units::System::us);
    const std::string shown = si.empty() ? "no unit" : si == us ? si : si + " or " + us;
    text += fmt::format("| {} | `{}` | {} |\n", units::name_of(kind), units::accepted_examples(kind), shown);
  }
  return text;
}

/// The names of each column, one row a column.
std::string column_names_text() {
  std::string text = "\n| column | also read as |\n|---|---|\n";
  for (const JobColumn& column : job_columns()) {
    std::string names;
    for (const ColumnAlias& alias : job_column_aliases()) {
      if (alias.column != column.name) continue;
      for (const std::string& name : alias.names) {
        names += (names.empty() ? "" : ", ") + name;
        if (!alias.unit.empty()) names += fmt::format(" (in {})", alias.unit);
      }
    }
    if (!names.empty()) text += fmt::format("| `{}` | {} |\n", column.name, names);
  }
  for (const RefusedName& refused : refused_column_names()) {
    std::string names;
    for (const std::string& name : refused.names) names += (names.empty() ? "" : ", ") + name;
    text += fmt::format("\nNot taken for `{}`, but refused: {}; {}.\n", refused.column, names, refused.why);
  }
  return text;
}

}  // namespace

std::string file_format_page() {
  std::string page = std::string(introduction) + std::string(example) + "```\n";
  for (const Section& section : sections()) page += section_text(section);
  return page + std::string(about_jobs) + column_names_text() + kinds_text();
}

}  // namespace holdback::files
