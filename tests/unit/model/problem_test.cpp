#include "holdback/model/problem.hpp"

#include <gtest/gtest.h>

namespace holdback {
namespace {

TEST(has_errors, tells_errors_from_warnings) {
  Problem warning;
  warning.severity = Severity::warning;
  Problem error;
  EXPECT_FALSE(has_errors({}));
  EXPECT_FALSE(has_errors({warning, warning}));
  EXPECT_TRUE(has_errors({warning, error}));
}

}  // namespace
}  // namespace holdback
