#include "holdback/files/field_table.hpp"

#include <algorithm>
#include <stdexcept>

namespace holdback::files {

const std::vector<Section>& sections() {
  static const std::vector<Section> all{
      {"", "", false, 1, false, false, "Keys that stand before the first table.", infos(head_fields())},
      {section::stand, "", false, 1, false, false, "The unwind stand and the air around it.", infos(stand_fields())},
      {section::air, "", false, 1, false, false, "Air supply and regulator. All pressures are gauge.",
       infos(air_fields())},
      {section::line, "", false, 1, false, false, "The line that pulls the web.", infos(line_fields())},
      {section::limits, "", false, 1, false, false, "What counts as good enough.", infos(limits_fields())},
      {section::uncertainty, "", false, 1, false, false,
       "How far an input may lie from its value; every value between is as likely as another.",
       infos(uncertainty_fields())},
      {section::path, "", false, 1, false, false, "The way of the web from the roll to the first driven nip.",
       infos(path_fields())},
      {section::idler, "", true, 200, false, false, "A roller that the web turns.", infos(idler_fields())},
      {section::shaft, "", false, 1, false, false,
       "The unwind shaft as a beam on two bearings. Without this table it is not judged.", infos(shaft_fields())},
      {section::shaft_section, section::shaft, true, 50, false, false,
       "A stretch of the shaft, from the first bearing on; the last one goes on to the end.",
       infos(shaft_section_fields())},
      {section::web, "", true, 10'000, false, false, "A material at a width.", infos(web_fields())},
      {section::ply, section::web, true, 20, false, true,
       "A layer of the laminate above; its tension is the sum of its plies.", infos(ply_fields())},
      {section::roll, "", true, 10'000, false, false, "A roll as it comes to the stand.", infos(roll_fields())},
      {section::job, "", true, 100'000, false, false, "A web on a roll, run at a speed and a tension.",
       infos(job_fields())},
      {section::brake, "", true, 1'000, false, false, "A candidate: one disc with its pad pairs.",
       infos(brake_fields())},
      {section::grade, section::brake, true, 50, false, false, "A friction grade offered for the brake above.",
       infos(grade_fields())},
      {section::cooling, section::brake, true, 100, true, true,
       "The power that the disc sheds at a speed, in free air, at the brake's cooling_rise.", infos(cooling_fields())},
      {section::control, "", false, 1, false, false, "What sets the brake pressure while the web runs.",
       infos(control_fields())},
      {section::load_cell, "", false, 1, false, false,
       "A roller that weighs the tension. Without this table there is none; an empty one takes the usual values.",
       infos(load_cell_fields())},
      {section::dancer, "", false, 1, false, false,
       "A roller that hangs in a loop of web, pushed by air. Without this table there is none; an empty one takes the "
       "usual values.",
       infos(dancer_fields())},
      {section::diameter_sensor, "", false, 1, false, false,
       "What measures the roll. Without this table there is none; an empty one takes the usual values.",
       infos(diameter_sensor_fields())},
      {section::scenario, "", true, 100, false, false, "What happens to the running stand.", infos(scenario_fields())},
      {section::event, section::scenario, true, 200, false, false,
       "What happens next in the scenario above, in this order.", infos(event_fields())},
  };
  return all;
}

const Section& section_of(const std::string& key) {
  const auto& all = sections();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Section& s) { return s.key == key; });
  if (found == all.end()) throw std::logic_error("no section " + key);
  return *found;
}

std::string header_of(const Section& section) {
  const std::string path = section.parent.empty() ? section.key : section.parent + "." + section.key;
  return section.many ? "[[" + path + "]]" : "[" + path + "]";
}

}  // namespace holdback::files
