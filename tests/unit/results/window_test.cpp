#include "holdback/results/window.hpp"

#include <gtest/gtest.h>

#include "holdback/results/likelihood.hpp"

namespace holdback {
namespace {

TEST(bounds, every_bound_has_its_words_and_its_side) {
  for (int i = 0; i <= static_cast<int>(last_bound); ++i) {
    const auto bound = static_cast<BoundId>(i);
    EXPECT_FALSE(key_of(bound).empty());
    EXPECT_FALSE(name_of(bound).empty());
  }
  EXPECT_TRUE(is_lower(BoundId::traction));
  EXPECT_TRUE(is_lower(BoundId::usual_least));
  EXPECT_FALSE(is_lower(BoundId::strength));
  EXPECT_FALSE(is_lower(BoundId::usual_most));
}

TEST(inputs, every_input_has_its_word) {
  for (int i = 0; i < input_count; ++i) EXPECT_FALSE(key_of(static_cast<Input>(i)).empty());
}

}  // namespace
}  // namespace holdback
