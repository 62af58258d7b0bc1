#include "holdback/files/field_table.hpp"

#include <algorithm>
#include <stdexcept>

namespace holdback::files {

const std::vector<Section>& sections() {
  static const std::vector<Section> all{
      {"", "", false, 1, false, "Keys that stand before the first table.", infos(head_fields())},
      {section::stand, "", false, 1, false, "The unwind stand and the air around it.", infos(stand_fields())},
      {section::air, "", false, 1, false, "Air supply and regulator. All pressures are gauge.", infos(air_fields())},
      {section::line, "", false, 1, false, "The line that pulls the web.", infos(line_fields())},
      {section::limits, "", false, 1, false, "What counts as good enough.", infos(limits_fields())},
      {section::web, "", true, 10'000, false, "A material at a width.", infos(web_fields())},
      {section::roll, "", true, 10'000, false, "A roll as it comes to the stand.", infos(roll_fields())},
      {section::job, "", true, 100'000, false, "A web on a roll, run at a speed and a tension.", infos(job_fields())},
      {section::brake, "", true, 1'000, false, "A candidate: one disc with its pad pairs.", infos(brake_fields())},
      {section::grade, section::brake, true, 50, false, "A friction grade offered for the brake above.",
       infos(grade_fields())},
      {section::cooling, section::brake, true, 100, true,
       "The power that the disc sheds at a speed, in free air, at the brake's cooling_rise.", infos(cooling_fields())},
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
