// The fast reader of decimals against the C library's strtod, which rounds correctly: bit for bit.
#include "holdback/files/decimal.hpp"

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <random>
#include <string>

namespace holdback::files {
namespace {

struct Read {
  bool is_number{};
  double value{};
  std::size_t size{};
};

Read read(const std::string& text, char point = '.') {
  const std::string padded = text + std::string(2 * decimal_padding, ',');
  const char* at = padded.data();
  Read read;
  read.is_number = scan_decimal(at, point, read.value);
  read.size = static_cast<std::size_t>(at - padded.data());
  return read;
}

void expect_as_strtod(const std::string& text) {
  char* end = nullptr;
  const double expected = std::strtod(text.c_str(), &end);
  const Read got = read(text);
  const auto size = static_cast<std::size_t>(end - text.c_str());
  ASSERT_EQ(got.is_number, size > 0) << text;
  if (size == 0) return;
  ASSERT_EQ(got.size, size) << text;
  ASSERT_EQ(std::memcmp(&got.value, &expected, sizeof expected), 0) << text << ": " << got.value << " " << expected;
}

/// Up to 24 digits with a sign, a point and an exponent here and there.
std::string random_decimal(std::mt19937_64& random) {
  const auto below = [&](std::uint64_t n) { return random() % n; };
  const std::uint64_t more = below(50) == 0 ? 12 : 0;
  std::string text = below(3) == 0 ? (below(2) == 0 ? "-" : "+") : "";
  for (auto i = below(12 + more); i > 0; --i) text += static_cast<char>('0' + below(10));
  if (below(4) != 0) text += '.';
  for (auto i = text.find('.') == std::string::npos ? 0 : below(12 + more); i > 0; --i)
    text += static_cast<char>('0' + below(10));
  if (below(6) == 0)
    text += (below(2) == 0 ? "e" : "E") + std::string(below(2) == 0 ? "-" : "") +
            std::to_string(below(below(8) == 0 ? 400 : 25));
  return text;
}

TEST(Decimal, ReadsRandomDecimalsAsStrtodDoes) {
  std::mt19937_64 random(1);
  for (int i = 0; i < 2'000'000; ++i) ASSERT_NO_FATAL_FAILURE(expect_as_strtod(random_decimal(random)));
}

TEST(Decimal, ReadsBackEveryDoubleWrittenWithSeventeenDigits) {
  std::mt19937_64 random(2);
  for (int i = 0; i < 500'000; ++i) {
    const std::uint64_t bits = random();
    double value = 0;
    std::memcpy(&value, &bits, sizeof value);
    char text[64];
    std::snprintf(text, sizeof text, "%.17g", value);
    if (std::strchr(text, 'n') != nullptr) continue;
    ASSERT_NO_FATAL_FAILURE(expect_as_strtod(text));
  }
}

// Halfway between two doubles, and next to it: where a reader that rounds twice goes wrong. The first is 2^53 + 1.
TEST(Decimal, RoundsHalvesToEven) {
  for (const char* text :
       {"9007199254740993", "9007199254740993.0", "9007199254740993.00001", "9007199254740995",
        "0.500000000000000166533453693773481063544750213623046875", "1.00000000000000011102230246251565", "1e22",
        "1e23", "8.442911973260991817e-309", "2.2250738585072011e-308", "123456789012345678e-19"})
    expect_as_strtod(text);
}

TEST(Decimal, StopsWhereTheNumberStops) {
  EXPECT_EQ(read("12.5N").size, 4U);
  EXPECT_EQ(read("12e").size, 2U) << "no exponent follows";
  EXPECT_EQ(read("12.").size, 3U);
  EXPECT_EQ(read(".5").value, 0.5);
  EXPECT_FALSE(read("").is_number);
  EXPECT_FALSE(read(".").is_number);
  EXPECT_FALSE(read("-").is_number);
  EXPECT_FALSE(read("nan").is_number);
}

TEST(Decimal, TakesACommaAsItsPoint) {
  const std::string text = "12,25;" + std::string(decimal_padding, ' ');
  const char* at = text.data();
  double value = 0;
  ASSERT_TRUE(scan_decimal(at, ',', value));
  EXPECT_EQ(value, 12.25);
  EXPECT_EQ(at - text.data(), 5);
}

}  // namespace
}  // namespace holdback::files
