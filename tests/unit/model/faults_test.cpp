#include "holdback/model/faults.hpp"

#include <gtest/gtest.h>

namespace holdback {
namespace {

TEST(Faults, joins_the_owner_s_path_and_the_field) {
  const auto field_of = [](const std::string& path, const std::string& field) {
    Faults faults(path);
    faults.error(field, {"It is wrong."});
    return faults.take().front().field;
  };
  EXPECT_EQ(field_of("roll[1]", "core_diameter"), "roll[1].core_diameter");
  EXPECT_EQ(field_of("roll[1]", ""), "roll[1]");
  EXPECT_EQ(field_of("", "job"), "job");
}

TEST(Faults, keeps_the_order_and_the_severity) {
  Faults faults("line");
  faults.warning("a", {"First."});
  faults.error("b", {"Second."}, {"better"});
  const Problems problems = faults.take();
  ASSERT_EQ(problems.size(), 2u);
  EXPECT_EQ(problems[0].severity, Severity::warning);
  EXPECT_EQ(problems[1].severity, Severity::error);
  EXPECT_EQ(problems[1].accepted.text, "better");
}

}  // namespace
}  // namespace holdback
