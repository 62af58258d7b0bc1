#include "holdback/numerics/spectrum.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <limits>
#include <map>
#include <numbers>
#include <sstream>
#include <stdexcept>

#include "support/files.hpp"

namespace holdback::numerics {
namespace {

using std::numbers::pi;

std::vector<double> noise(std::size_t count, std::uint64_t state = 12345) {
  std::vector<double> values;
  for (std::size_t i = 0; i < count; ++i) {
    state = (1103515245U * state + 12345U) % 2147483648U;
    values.push_back(static_cast<double>(state) / 2147483648.0 - 0.5);
  }
  return values;
}

// The formulas of tests/published/scripts/signal_reference.py.
std::vector<double> signal_called(const std::string& name) {
  if (name == "noise") return noise(4096);
  std::vector<double> values;
  if (name == "coloured") {
    double last = 0;
    for (const double z : noise(8192)) values.push_back(last = 0.9 * last + z);
  } else if (name == "chirp") {
    constexpr double end = 5000 / 250.0;
    for (int i = 0; i < 5000; ++i) {
      const double t = i / 250.0;
      values.push_back(std::sin(2 * pi * (5 * t + (40.0 - 5) / (2 * end) * t * t)) + 0.7 * t / end);
    }
  } else {
    for (int i = 0; i < 6000; ++i) {
      const double t = i / 100.0, angle = 2 * pi * (1.5 * t + 0.01 * t * t);
      values.push_back(std::sin(angle) + 0.3 * std::sin(4 * angle));
    }
  }
  return values;
}

// SciPy 1.10.1, scipy.signal.welch, by the script; to 1e-9 of the highest density, for entries far below it are the
// rounding of its sum.
TEST(welch_density, agrees_with_scipy) {
  std::istringstream rows(test::read_source("tests/published/signals/welch.txt"));
  std::string line;
  std::map<std::string, Spectrum> made;
  int compared = 0;
  while (std::getline(rows, line)) {
    if (line.empty() || line.front() == '#') continue;
    std::istringstream row(line);
    std::string name, detrend;
    double rate = 0, place = 0, density = 0;
    std::size_t segment = 0, entry = 0;
    ASSERT_TRUE(row >> name >> rate >> segment >> detrend >> entry >> place >> density) << line;
    Spectrum& spectrum = made[name + detrend];
    if (spectrum.value.empty())
      spectrum =
          welch_density(signal_called(name), rate, segment, detrend == "linear" ? Detrend::line : Detrend::constant);
    ASSERT_LT(entry, spectrum.value.size()) << line;
    double highest = 0;
    for (const double value : spectrum.value) highest = std::max(highest, value);
    EXPECT_NEAR(spectrum.value[entry], density, 1e-9 * density + 1e-13 * highest) << line;
    EXPECT_NEAR(spectrum.place(entry), place, 1e-12 * rate) << line;
    ++compared;
  }
  EXPECT_GT(compared, 60);
}

// Closed form: noise of variance 1/12 through y = 0.9 y' + z has the density 2/12/|1 − 0.9 e^(−iω)|² at a rate of 1.
TEST(welch_density, finds_the_known_density_of_coloured_noise) {
  std::vector<double> values;
  double last = 0;
  for (const double z : noise(1 << 18)) values.push_back(last = 0.9 * last + z);
  const Spectrum density = welch_density(values, 1, 256);
  for (const std::size_t k : {8U, 32U, 64U, 100U, 120U}) {
    const double omega = 2 * pi * density.place(k);
    const double expected = 2.0 / 12 / std::norm(std::complex<double>(1) - 0.9 * std::polar(1.0, -omega));
    EXPECT_NEAR(density.value[k], expected, 0.12 * expected) << k;  // ± 4/√2047 by chance
  }
}

TEST(WelchStream, does_not_average_over_a_break) {
  const auto values = noise(300);
  WelchStream stream(1, 256);
  for (std::size_t i = 0; i < 200; ++i) stream.put(values[i]);
  stream.cut();
  for (std::size_t i = 200; i < 300; ++i) stream.put(values[i]);
  EXPECT_EQ(stream.segments(), 0);
  EXPECT_TRUE(stream.density().value.empty());
}

TEST(WelchStream, refuses_segments_that_hold_nothing) {
  EXPECT_THROW(WelchStream(1, 2), std::invalid_argument);
  EXPECT_THROW(WelchStream(1, 255), std::invalid_argument);
  EXPECT_THROW(WelchStream(0, 256), std::invalid_argument);
  EXPECT_THROW(WelchStream(std::numeric_limits<double>::quiet_NaN(), 256), std::invalid_argument);
}

TEST(amplitude_spectrum, has_nothing_to_say_of_next_to_no_values) {
  EXPECT_TRUE(amplitude_spectrum({}, 1).value.empty());
  EXPECT_TRUE(amplitude_spectrum({1}, 1).value.empty());
  EXPECT_TRUE(amplitude_spectrum({1, 2, 3}, 0).value.empty());
}

// [welch1967]: half-overlapping Hann segments are correlated by 1/6, its square 1/36.
TEST(independent_segments, counts_overlap_as_less) {
  EXPECT_DOUBLE_EQ(independent_segments(1), 1);
  EXPECT_NEAR(independent_segments(1e9), 1e9 / (1 + 1.0 / 18), 1);
}

// Closed form for one segment: Q(1, r) = e^(−r), so that the chance over N entries is 1 − (1 − e^(−r))^N.
TEST(false_alarm_chance, is_that_of_the_exponential_for_one_segment) {
  EXPECT_NEAR(false_alarm_chance(5, 1, 1), std::exp(-5), 1e-12);
  EXPECT_NEAR(false_alarm_chance(5, 1, 200), 1 - std::pow(1 - std::exp(-5), 200), 1e-12);
  EXPECT_NEAR(false_alarm_chance(0.001, 4, 1000), 1, 1e-12);
  EXPECT_EQ(false_alarm_chance(0, 4, 10), 1);
}

TEST(find_lines, finds_a_tone_in_noise_with_place_and_amplitude) {
  auto values = noise(40000);
  for (std::size_t i = 0; i < values.size(); ++i)
    values[i] += 0.2 * std::sin(2 * pi * 0.07321 * static_cast<double>(i));
  const Spectrum density = welch_density(values, 1, 1024);
  const auto lines = find_lines(density, noise_floor(density, 40), 1e-6);
  ASSERT_EQ(lines.size(), 1U);
  EXPECT_NEAR(lines[0].place, 0.07321, 0.1 / 1024);
  EXPECT_NEAR(lines[0].amplitude, 0.2, 0.008);
  EXPECT_LT(lines[0].false_alarm, 1e-12);
}

// At a chance of one in a hundred, noise alone may show a line in one of a hundred spectra; of 200, 2 are expected and
// more than 9 have a chance of some 1e-4 (binomial).
TEST(find_lines, finds_in_noise_no_more_than_chance) {
  int found = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    const Spectrum density = welch_density(noise(4096, seed * 7919), 1, 256);
    if (!find_lines(density, noise_floor(density, 40), 0.01).empty()) ++found;
  }
  EXPECT_LE(found, 9);
}

// The floor is the mean of the noise, not its median: 2/12 a hertz here.
TEST(noise_floor, is_the_density_of_the_noise) {
  const Spectrum density = welch_density(noise(4096), 1, 256);
  const auto floor = noise_floor(density, 60);
  double mean = 0;
  for (std::size_t k = 20; k < 110; ++k) mean += floor[k] / 90;
  EXPECT_NEAR(mean, 2.0 / 12, 0.015);
}

}  // namespace
}  // namespace holdback::numerics
