#include "holdback/results/limit.hpp"

#include <gtest/gtest.h>

#include <set>

namespace holdback {
namespace {

TEST(info, tells_every_limit_by_a_key_and_a_name_of_its_own) {
  std::set<std::string_view> keys;
  std::set<std::string_view> names;
  for (int i = 0; i < limit_count; ++i) {
    const LimitInfo& about = info(static_cast<LimitId>(i));
    EXPECT_EQ(about.id, static_cast<LimitId>(i));
    keys.insert(about.key);
    names.insert(about.name);
  }
  EXPECT_EQ(keys.size(), static_cast<std::size_t>(limit_count));
  EXPECT_EQ(names.size(), static_cast<std::size_t>(limit_count));
}

TEST(state_of, has_three_words_and_no_fourth) {
  EXPECT_EQ(key_of(state_of(2, 0.1)), "holds");
  EXPECT_EQ(key_of(state_of(1.05, 0.1)), "tight");
  EXPECT_EQ(key_of(state_of(0.5, 0.1)), "fails");
}

}  // namespace
}  // namespace holdback
