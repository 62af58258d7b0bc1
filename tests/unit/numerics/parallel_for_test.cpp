#include "holdback/numerics/parallel_for.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>
#include <string>
#include <vector>

namespace holdback::numerics {
namespace {

TEST(parallel_for, visits_every_index_once_on_any_number_of_threads) {
  for (const std::size_t threads : {0u, 1u, 2u, 3u, 16u}) {
    for (const std::size_t count : {0u, 1u, 2u, 7u, 1000u}) {
      std::vector<int> visits(count, 0);
      parallel_for(count, threads, [&](std::size_t i) { ++visits[i]; });
      EXPECT_EQ(visits, std::vector<int>(count, 1)) << threads << " threads, " << count;
    }
  }
}

TEST(parallel_for, gives_the_same_digits_on_one_thread_and_on_many) {
  const auto compute = [](std::size_t threads) {
    std::vector<double> out(5000);
    parallel_for(out.size(), threads, [&](std::size_t i) { out[i] = std::sin(static_cast<double>(i)) / 3; });
    return out;
  };
  EXPECT_EQ(compute(1), compute(4));
}

TEST(parallel_for, throws_on_the_exception_of_the_lowest_index) {
  for (int run = 0; run < 50; ++run) {
    std::string told;
    try {
      parallel_for(1000, 4, [](std::size_t i) {
        if (i % 100 == 37) throw std::runtime_error(std::to_string(i));
      });
    } catch (const std::runtime_error& error) {
      told = error.what();
    }
    ASSERT_EQ(told, "37");
  }
}

TEST(parallel_for, uses_the_machine_when_not_told) {
  std::vector<int> visits(100, 0);
  parallel_for(visits.size(), [&](std::size_t i) { ++visits[i]; });
  EXPECT_EQ(visits, std::vector<int>(100, 1));
}

TEST(hardware_threads, is_at_least_one) { EXPECT_GE(hardware_threads(), 1u); }

}  // namespace
}  // namespace holdback::numerics
