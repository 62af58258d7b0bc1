// Headers as people write them: which column each means, in which unit, and which stay open. The headers are of the
// kind met in lists of jobs of the trade (common practice); what they mean is said by the words themselves.
#include "holdback/files/job_columns.hpp"

#include <gtest/gtest.h>

#include <set>

#include "holdback/files/job_column_names.hpp"
#include "holdback/files/jobs_header.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

/// "speed [m/min]"; several columns parted by " | "; a unit that does not fit behind "!".
std::string read_as(const std::string& header) {
  const HeaderMeaning meaning = meaning_of(header);
  std::string text = meaning.refused.empty() ? "" : "refused: ";
  for (std::size_t i = 0; i < meaning.columns.size(); ++i) text += (i == 0 ? "" : " | ") + meaning.columns[i]->name;
  if (!meaning.unit.empty()) text += (meaning.unit_fits ? " [" : " ![") + meaning.unit + "]";
  return text;
}

TEST(meaning_of, every_key_means_its_own_column) {
  for (const JobColumn& column : job_columns()) {
    const HeaderMeaning meaning = meaning_of(column.name);
    ASSERT_EQ(meaning.columns.size(), 1U) << column.name;
    EXPECT_EQ(meaning.columns[0], &column);
    EXPECT_TRUE(meaning.key) << column.name;
  }
}

TEST(meaning_of, keys_in_other_letters_are_keys) {
  for (const char* header : {"Core Diameter", "Tension per width [N/m]", "WEB.CALIPER (um)", "Stop-Time [s]"})
    EXPECT_EQ(meaning_of(header).key, std::string(header) != "Core Diameter") << header;
  EXPECT_EQ(read_as("Stop-Time [s]"), "stop_time [s]");
}

TEST(meaning_of, a_unit_stands_in_brackets_or_behind_a_comma_or_a_blank) {
  for (const char* header :
       {"speed [m/min]", "Speed (m/min)", "Line speed, m/min", "Web speed m/min", "Speed m/min", "Web speed [m/min]",
        "SPEED (M/MIN)", "Web speed\n[m/min]", "Speed (m/min):", "Run speed  (m/min)*"})
    EXPECT_EQ(read_as(header), "speed [m/min]") << header;
}

TEST(meaning_of, names_of_the_trade) {
  EXPECT_EQ(read_as("Job"), "name");
  EXPECT_EQ(read_as("Job No."), "name");
  EXPECT_EQ(read_as("Tension (N)"), "tension [N]");
  EXPECT_EQ(read_as("Web tension, lbf"), "tension [lbf]");
  EXPECT_EQ(read_as("tension per width N/m"), "tension_per_width [N/m]");
  EXPECT_EQ(read_as("Core OD (mm)"), "roll.core_diameter [mm]");
  EXPECT_EQ(read_as("Core Ø [mm]"), "roll.core_diameter [mm]");
  EXPECT_EQ(read_as("ø of core [mm]"), "roll.core_diameter [mm]");
  EXPECT_EQ(read_as("core dia. in"), "roll.core_diameter [in]");
  EXPECT_EQ(read_as("Max. roll diameter [mm]"), "roll.full_diameter [mm]");
  EXPECT_EQ(read_as("Full dia"), "roll.full_diameter");
  EXPECT_EQ(read_as("Roll O.D. (in.)"), "roll.full_diameter [in]");
  EXPECT_EQ(read_as("Thickness (µm)"), "web.caliper [µm]");
  EXPECT_EQ(read_as("Thickness (μm)"), "web.caliper [μm]") << "the Greek letter";
  EXPECT_EQ(read_as("Thickness (nominal) [um]"), "web.caliper [um]");
  EXPECT_EQ(read_as("Gauge (mil)"), "web.caliper [mil]");
  EXPECT_EQ(read_as("Basis weight (g/m²)"), "web.basis_weight [g/m²]");
  EXPECT_EQ(read_as("Basis weight (lb/(3000 ft²))"), "web.basis_weight [lb/(3000 ft²)]");
  EXPECT_EQ(read_as("Basis weight lb/3000 ft2"), "web.basis_weight [lb/3000 ft2]");
  EXPECT_EQ(read_as("Grammage"), "web.basis_weight");
  EXPECT_EQ(read_as("Density"), "web.density");
  EXPECT_EQ(read_as("Width [mm]"), "width [mm]");
  EXPECT_EQ(read_as("Material"), "web.material");
  EXPECT_EQ(read_as("Shift share %"), "share [%]");
  EXPECT_EQ(read_as("% of time"), "share [%]");
  EXPECT_EQ(read_as("E-stop time (s)"), "emergency_stop_time [s]");
  EXPECT_EQ(read_as("Young's modulus (GPa)"), "web.modulus [GPa]");
  EXPECT_EQ(read_as("Core wt (kg)"), "roll.core_mass [kg]");
  EXPECT_EQ(read_as("web.width, mm"), "web.width [mm]") << "a key behind its point is no other column";
  EXPECT_EQ(read_as("Web width, mm"), "width [mm]");
}

TEST(meaning_of, names_that_are_units_bring_them_along) {
  EXPECT_EQ(read_as("PLI"), "tension_per_width [pli]");
  EXPECT_EQ(read_as("GSM"), "web.basis_weight [g/m2]");
  EXPECT_EQ(read_as("fpm"), "speed [ft/min]");
  EXPECT_EQ(read_as("Specific gravity"), "web.density [g/cm3]");
}

TEST(meaning_of, a_unit_decides_between_columns_of_one_name) {
  EXPECT_EQ(read_as("Tension (PLI)"), "tension_per_width [PLI]");
  EXPECT_EQ(read_as("Tension, N/m"), "tension_per_width [N/m]");
  EXPECT_EQ(read_as("Tension"), "tension") << "the key itself";
  EXPECT_EQ(read_as("Web tension"), "tension | tension_per_width");
  EXPECT_EQ(read_as("Weight (g/m2)"), "web.basis_weight [g/m2]");
  EXPECT_EQ(read_as("Core [mm]"), "roll.core_diameter [mm]");
  EXPECT_EQ(read_as("Core, kg"), "roll.core_mass [kg]");
}

TEST(meaning_of, what_no_unit_decides_stays_open) {
  EXPECT_EQ(read_as("Diameter [mm]"), "roll.core_diameter | roll.full_diameter");
  EXPECT_EQ(read_as("OD"), "roll.core_diameter | roll.full_diameter");
  EXPECT_EQ(read_as("Weight"), "web.basis_weight | roll.core_mass | roll.mass");
  EXPECT_EQ(read_as("Weight (kg)"), "roll.core_mass | roll.mass");
}

TEST(meaning_of, a_unit_that_fits_nothing_is_kept_for_the_message) {
  EXPECT_EQ(read_as("tension [bar]"), "tension ![bar]");
  EXPECT_EQ(read_as("Line speed (bar)"), "speed ![bar]");
  EXPECT_EQ(read_as("name [m]"), "name ![m]");
}

TEST(meaning_of, the_inside_of_a_core_is_not_the_end_of_the_roll) {
  EXPECT_EQ(read_as("Core ID (mm)"), "refused: roll.core_diameter");
  EXPECT_EQ(read_as("core size [in]"), "refused: roll.core_diameter");
  EXPECT_EQ(read_as("Core inside dia., mm"), "refused: roll.core_diameter");
}

TEST(meaning_of, remarks_mean_nothing) {
  for (const char* header :
       {"Operator", "Remarks", "Date", "Customer", "Order qty", "Priority", "", "?", "[mm]", "Length [m]"})
    EXPECT_EQ(read_as(header), "") << header;
}

TEST(near_column, finds_slips_and_leaves_remarks_alone) {
  EXPECT_EQ(near_column("sped [m/min]").column, "speed");
  EXPECT_EQ(near_column("Thicknes (um)").column, "web.caliper");
  EXPECT_EQ(near_column("Thicknes um").name, "thickness");
  EXPECT_EQ(near_column("Grammmage").column, "web.basis_weight");
  for (const char* header :
       {"Operator", "Remarks", "Date", "Customer", "Machine", "Priority", "Shift", "Notes", "Length [m]"})
    EXPECT_EQ(near_column(header).column, "") << header;
}

TEST(job_column_aliases, name_columns_that_exist_and_units_that_they_take) {
  for (const ColumnAlias& alias : job_column_aliases()) {
    const JobColumn* column = column_called(alias.column);
    ASSERT_NE(column, nullptr) << alias.column;
    EXPECT_EQ(usable_unit(*column->field, alias.unit), alias.unit) << alias.column;
  }
  for (const RefusedName& refused : refused_column_names()) EXPECT_NE(column_called(refused.column), nullptr);
}

TEST(job_column_aliases, every_name_leads_to_its_column) {
  for (const ColumnAlias& alias : job_column_aliases())
    for (const std::string& name : alias.names) {
      std::set<std::string> columns;
      for (const JobColumn* column : meaning_of(name).columns) columns.insert(column->name);
      EXPECT_TRUE(columns.count(alias.column) == 1 || column_called(name) != nullptr)
          << name << " is not " << alias.column;
    }
}

TEST(is_unit_alone, knows_units_and_nothing_else) {
  for (const char* cell : {"m/min", "[m/min]", "(N)", "%", "µm", "lb/3000 ft2", "pli"})
    EXPECT_TRUE(is_unit_alone(cell)) << cell;
  for (const char* cell : {"", "12", "12 m/min", "film", "PET 12", "-", "hp"})
    EXPECT_FALSE(is_unit_alone(cell)) << cell;
}

TEST(word_for, takes_words_of_the_trade_in_any_letters) {
  const FieldInfo& material = *column_called("web.material")->field;
  EXPECT_EQ(word_for(material, "PET"), "polyester");
  EXPECT_EQ(word_for(material, "Paper"), "paper");
  EXPECT_EQ(word_for(material, "BOPP"), "polypropylene");
  EXPECT_EQ(word_for(material, "slate"), "slate") << "left to the reader to refuse";
  EXPECT_EQ(word_for(*column_called("name")->field, "PET"), "PET") << "names stay as they are";
  const auto& words = material.words;
  for (const WordAlias& alias : word_aliases())
    EXPECT_NE(std::find(words.begin(), words.end(), alias.word), words.end());
}

}  // namespace
}  // namespace holdback::files
