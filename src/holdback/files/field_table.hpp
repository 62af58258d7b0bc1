// The field table: every key of a stand file, one function for each kind of table.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "holdback/files/drafts.hpp"
#include "holdback/files/field.hpp"

namespace holdback::files {

const std::vector<Field<FileHead>>& head_fields();
const std::vector<Field<Stand>>& stand_fields();
const std::vector<Field<AirSupply>>& air_fields();
const std::vector<Field<Line>>& line_fields();
const std::vector<Field<Limits>>& limits_fields();
const std::vector<Field<WebDraft>>& web_fields();
const std::vector<Field<Roll>>& roll_fields();
const std::vector<Field<JobDraft>>& job_fields();
const std::vector<Field<BrakeDraft>>& brake_fields();
const std::vector<Field<Grade>>& grade_fields();
const std::vector<Field<CoolingPoint>>& cooling_fields();
const std::vector<Field<Ply>>& ply_fields();
const std::vector<Field<WebPath>>& path_fields();
const std::vector<Field<Idler>>& idler_fields();
const std::vector<Field<Shaft>>& shaft_fields();
const std::vector<Field<ShaftSection>>& shaft_section_fields();
const std::vector<Field<Uncertainty>>& uncertainty_fields();
const std::vector<Field<Control>>& control_fields();
const std::vector<Field<LoadCell>>& load_cell_fields();
const std::vector<Field<Dancer>>& dancer_fields();
const std::vector<Field<DiameterSensor>>& diameter_sensor_fields();
const std::vector<Field<Scenario>>& scenario_fields();
const std::vector<Field<Event>>& event_fields();

/// Longest text of a field, in characters; texts are one line.
inline constexpr std::size_t longest_text = 120;

/// Keys of the tables as they stand in a file.
namespace section {
inline const std::string stand = "stand", air = "air", line = "line", limits = "limits", web = "web", roll = "roll",
                         job = "job", brake = "brake", grade = "grade", cooling = "cooling", ply = "ply", path = "path",
                         idler = "idler", shaft = "shaft", shaft_section = "section", uncertainty = "uncertainty",
                         control = "control", load_cell = "load_cell", dancer = "dancer",
                         diameter_sensor = "diameter_sensor", scenario = "scenario", event = "event";
}

/// A kind of table with its rows, for schema, page and suggestions.
struct Section {
  std::string key{};     // "web"; empty for the keys above all tables
  std::string parent{};  // "brake" for the tables inside a brake
  bool many{};           // an array of tables
  std::size_t most{1};   // how many are read
  bool inline_table{};   // written as a list in braces, not under a header
  bool optional{};       // inside a parent: may be absent
  std::string help{};
  std::vector<const FieldInfo*> fields{};
};

/// All kinds of table in the order of the page.
const std::vector<Section>& sections();

/// The section with this key; throws std::logic_error when there is none.
const Section& section_of(const std::string& key);

/// How a section's header is written: "[line]", "[[web]]", "[[brake.grade]]".
std::string header_of(const Section& section);

/// The rows without their targets.
template <class T>
std::vector<const FieldInfo*> infos(const std::vector<Field<T>>& fields) {
  std::vector<const FieldInfo*> result;
  for (const Field<T>& field : fields) result.push_back(&field);
  return result;
}

}  // namespace holdback::files
