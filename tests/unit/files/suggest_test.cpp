// A near miss is recognised, a far one is left alone.
#include "holdback/files/suggest.hpp"

#include <gtest/gtest.h>

namespace holdback::files {
namespace {

const std::vector<std::string> keys{"core_diameter", "full_diameter", "core_mass",        "runout",
                                    "name",          "tension",       "tension_per_width"};

TEST(Nearest, FindsADroppedAnInsertedAReplacedAndASwappedLetter) {
  EXPECT_EQ(nearest("core_diametr", keys), "core_diameter");
  EXPECT_EQ(nearest("runnout", keys), "runout");
  EXPECT_EQ(nearest("nane", keys), "name");
  EXPECT_EQ(nearest("nmae", keys), "name");
}

TEST(Nearest, DoesNotMindCaseBlanksAndHyphens) {
  EXPECT_EQ(nearest("Core Diameter", keys), "core_diameter");
  EXPECT_EQ(nearest("core-mass", keys), "core_mass");
}

TEST(Nearest, FindsAWordByItsBeginning) { EXPECT_EQ(nearest("core_dia", keys), "core_diameter"); }

TEST(Nearest, PrefersTheNearerOfTwo) { EXPECT_EQ(nearest("tensions", keys), "tension"); }

TEST(Nearest, IsSilentAboutAStranger) {
  EXPECT_EQ(nearest("colour", keys), "");
  EXPECT_EQ(nearest("x", keys), "");
  EXPECT_EQ(nearest("", keys), "");
  EXPECT_EQ(nearest(std::string(1000, 'n'), keys), "");
}

TEST(Listed, CutsALongList) {
  EXPECT_EQ(listed({"a", "b"}), "\"a\", \"b\"");
  EXPECT_EQ(listed(std::vector<std::string>(14, "a")).substr(55), "\"a\" and 2 more");
}

}  // namespace
}  // namespace holdback::files
