// Sizes of units against other programs (units.txt) and against printed tables (published.txt).

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include "holdback/units/kind_table.hpp"
#include "holdback/units/unit_table.hpp"
#include "holdback/units/units.hpp"

namespace holdback::units {
namespace {

using Row = std::vector<std::string>;

Row split(const std::string& line) {
  const std::string bar = " | ";
  Row cells;
  std::size_t from = 0;
  for (auto to = line.find(bar); to != std::string::npos; from = to + bar.size(), to = line.find(bar, from)) {
    cells.push_back(line.substr(from, to - from));
  }
  cells.push_back(line.substr(from));
  return cells;
}

// The rows of a table beside this file, without its comments; every row must have seven cells.
std::vector<Row> rows_of(const std::string& name) {
  std::ifstream file(std::string(HOLDBACK_SOURCE_DIR) + "/tests/published/units/" + name);
  std::vector<Row> rows;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    rows.push_back(split(line));
    EXPECT_EQ(rows.back().size(), 7U) << name << ": " << line;
    rows.back().resize(7);
  }
  EXPECT_FALSE(rows.empty()) << name << " cannot be read";
  return rows;
}

Quantity kind_called(const std::string& key) {
  for (const Kind& kind : kind_table()) {
    if (kind.key == key) return kind.quantity;
  }
  ADD_FAILURE() << "no kind is called '" << key << "'";
  return Quantity::number;
}

double value_of(const std::string& text, Quantity kind) {
  const auto read = parse(text, kind);
  if (const auto* fault = std::get_if<Fault>(&read)) {
    ADD_FAILURE() << text << ": " << fault->what;
    return std::nan("");
  }
  return std::get<double>(read);
}

double factor_of(const std::string& unit, Quantity kind) {
  const auto read = parse_unit(unit, kind);
  if (const auto* fault = std::get_if<Fault>(&read)) {
    ADD_FAILURE() << unit << ": " << fault->what;
    return std::nan("");
  }
  return std::get<UnitValue>(read).factor;
}

bool has_number(const std::string& text) {
  return text.find_first_of("0123456789") == 0 || (text.size() > 1 && text[0] == '-');
}

// A whole quantity if the text has a number, the size of the unit if not.
double size_of(const std::string& text, Quantity kind) {
  const bool quantity = has_number(text) && text.find('/') != 1;  // "1/K" is a unit
  return quantity ? value_of(text, kind) : factor_of(text, kind);
}

// Half a unit in the last printed digit: "2.7680e4" was printed to 0.5.
double half_last_digit(const std::string& printed) {
  const auto e = std::min(printed.find('e'), printed.size());
  const auto point = printed.find('.');
  const auto decimals = point < e ? e - point - 1 : 0;
  const int exponent = e < printed.size() ? std::stoi(printed.substr(e + 1)) : 0;
  return 0.5 * std::pow(10.0, exponent - static_cast<int>(decimals));
}

TEST(PublishedUnits, HalfTheLastPrintedDigitIsReadFromTheText) {
  EXPECT_DOUBLE_EQ(half_last_digit("4.448222"), 0.5e-6);
  EXPECT_DOUBLE_EQ(half_last_digit("2.7680e4"), 0.5);
  EXPECT_DOUBLE_EQ(half_last_digit("2.54e-5"), 0.5e-7);
  EXPECT_DOUBLE_EQ(half_last_digit("75"), 0.5);
}

TEST(PublishedUnits, EveryUnitHasTheSizeThatGnuUnitsGives) {
  for (const auto& row : rows_of("units.txt")) {
    SCOPED_TRACE(row[0]);
    const double expected = std::stod(row[3]);
    EXPECT_NEAR(size_of(row[0], kind_called(row[1])), expected, 1e-14 * std::fabs(expected));
  }
}

TEST(PublishedUnits, EveryUnitHasTheSizeThatUdunitsPrintsToSixDigits) {
  int compared = 0;
  for (const auto& row : rows_of("units.txt")) {
    if (row[5] == "-") continue;
    SCOPED_TRACE(row[0]);
    const double expected = std::stod(row[5]);
    EXPECT_NEAR(size_of(row[0], kind_called(row[1])), expected, 5e-6 * std::fabs(expected));
    ++compared;
  }
  EXPECT_GT(compared, 150);
}

std::set<std::string, std::less<>> referenced_units() {
  std::set<std::string, std::less<>> texts;
  for (const auto& row : rows_of("units.txt")) texts.insert(row[0]);
  return texts;
}

TEST(PublishedUnits, EveryNameOfEveryUnitHasAnOutsideReference) {
  const auto texts = referenced_units();
  for (const Unit& unit : unit_table()) {
    for (const auto name : names_of(unit))
      EXPECT_TRUE(texts.count(name)) << "units.txt has no row for '" << name << "'";
  }
}

TEST(PublishedUnits, EveryUnitThatIsShownHasAnOutsideReference) {
  const auto texts = referenced_units();
  for (const Kind& kind : kind_table()) {
    for (const auto unit : {kind.shown_si, kind.shown_us}) {
      EXPECT_TRUE(unit.empty() || texts.count(unit)) << "units.txt has no row for '" << unit << "' of " << kind.key;
    }
  }
}

// The rows of one case of published.txt.
void check_case(const std::string& id) {
  int rows = 0;
  for (const auto& row : rows_of("published.txt")) {
    if (row[0] != id) continue;
    SCOPED_TRACE(row[1] + " in " + row[4]);
    const auto kind = kind_called(row[2]);
    const double expected = std::stod(row[3]);
    const double tolerance = row[5] == "print" ? half_last_digit(row[3]) : std::stod(row[5]) * std::fabs(expected);
    EXPECT_NEAR(value_of(row[1], kind) / factor_of(row[4], kind), expected, tolerance);
    ++rows;
  }
  EXPECT_GT(rows, 0) << "published.txt has no row of " << id;
}

TEST(PublishedUnits, U1FactorsAsNistPrintsThem) { check_case("U-1"); }
TEST(PublishedUnits, U2FactorsToFullPrecision) { check_case("U-2"); }
TEST(PublishedUnits, U3BasisWeightByTheReamToGramsPerSquareMetre) { check_case("U-3"); }

}  // namespace
}  // namespace holdback::units
