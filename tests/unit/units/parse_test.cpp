// What a person may write, alone and in a mass of garbage.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <variant>
#include <vector>

#include "holdback/units/kind_table.hpp"
#include "holdback/units/text.hpp"
#include "holdback/units/unit_table.hpp"
#include "holdback/units/units.hpp"
#include "unit/units/reading.hpp"

namespace holdback::units {
namespace {

using Q = Quantity;
using testing::HasSubstr;

TEST(Parse, ReadsTheTextsOfADailySheet) {
  EXPECT_DOUBLE_EQ(value("300 m/min", Q::speed), 5.0);
  EXPECT_DOUBLE_EQ(value("1000 ft/min", Q::speed), 5.08);
  EXPECT_DOUBLE_EQ(value("2.5 bar", Q::pressure), 250'000.0);
  EXPECT_DOUBLE_EQ(value("80 g/m2", Q::basis_weight), 0.080);
  EXPECT_DOUBLE_EQ(value("48 in", Q::short_length), 1.2192);
  EXPECT_DOUBLE_EQ(value("10 mil", Q::caliper), 0.000254);
  EXPECT_DOUBLE_EQ(value("2 kW", Q::power), 2000.0);
  EXPECT_DOUBLE_EQ(value("2 weeks", Q::calendar_time), 14 * 86400.0);
}

TEST(Parse, DecimalUnitsGiveTheVeryLiteral) {
  EXPECT_EQ(value("35 %", Q::ratio), 0.35);
  EXPECT_EQ(value("12 um", Q::caliper), 12e-6);
  EXPECT_EQ(value("1.5 mm", Q::short_length), 1.5e-3);
  EXPECT_EQ(value("45 min", Q::running_time), 2700.0);
  EXPECT_EQ(value("7 in", Q::short_length), 0.1778);
}

TEST(Parse, SpaceBeforeTheUnitIsOptional) {
  EXPECT_EQ(value("35%", Q::ratio), value("35 %", Q::ratio));
  EXPECT_EQ(value("1.2lbf/in", Q::tension_per_width), value("1.2 lbf/in", Q::tension_per_width));
  EXPECT_EQ(value("  5\u00a0N \t", Q::force), 5.0);
  EXPECT_EQ(value("6\"", Q::short_length), value("6 in", Q::short_length));
}

TEST(Parse, NumbersMayHaveSignFractionAndExponent) {
  EXPECT_EQ(value("-5 N", Q::force), -5.0);
  EXPECT_EQ(value("\u22125 N", Q::force), -5.0) << "the Unicode minus";
  EXPECT_EQ(value("+5 N", Q::force), 5.0);
  EXPECT_EQ(value("1e-3 m", Q::short_length), 1e-3);
  EXPECT_EQ(value(".5 m", Q::short_length), 0.5);
  EXPECT_EQ(value("5. m", Q::short_length), 5.0);
  EXPECT_EQ(value("2E2 N", Q::force), 200.0);
}

TEST(Parse, MicroDegreeAndPowersAreReadInAsciiAndUnicode) {
  EXPECT_EQ(value("12 \u00b5m", Q::caliper), value("12 um", Q::caliper));
  EXPECT_EQ(value("12 \u03bcm", Q::caliper), value("12 um", Q::caliper));
  EXPECT_EQ(value("90\u00b0", Q::angle), value("90 deg", Q::angle));
  EXPECT_EQ(value("4 in\u00b2", Q::area), value("4 in^2", Q::area));
  EXPECT_EQ(value("4 in2", Q::area), value("4 in^2", Q::area));
  EXPECT_EQ(value("3 m\u00b7s\u207b\u00b9", Q::speed), 3.0);
  EXPECT_EQ(value("3 m*s^-1", Q::speed), 3.0);
  EXPECT_EQ(value("3 m s-1", Q::speed), 3.0);
}

TEST(Parse, ProductsMayBeWrittenWithAnyOfTheirSigns) {
  for (const auto* text :
       {"5 N*m", "5 N\u00b7m", "5 N\u22c5m", "5 N\u00d7m", "5 N.m", "5 N m", "5 N-m", "5 Nm", "5 (N)(m)", "5 (N)m"}) {
    EXPECT_EQ(value(text, Q::torque), 5.0) << text;
  }
  EXPECT_EQ(value("5 in-lbf", Q::torque), value("5 lbf*in", Q::torque));
}

TEST(Parse, AQuotientTakesOnlyTheNextFactor) {
  EXPECT_EQ(value("6 m/s/s", Q::acceleration), 6.0);
  EXPECT_EQ(value("6 J/kg/K", Q::specific_heat), 6.0);
  EXPECT_EQ(value("6 J/(kg K)", Q::specific_heat), 6.0);
  EXPECT_THAT(fault("6 J/kg K", Q::specific_heat).what, HasSubstr("not a specific heat"));
}

// One pound over 3000 square feet: 453.59237 g / (3000 · 0.3048² m²).
constexpr double pound_a_ream = 0.45359237 / (3000 * 0.3048 * 0.3048);

TEST(Parse, ANumberAfterTheSlashBelongsToTheAreaAfterIt) {
  EXPECT_DOUBLE_EQ(value("40 lb/3000 ft2", Q::basis_weight), 40 * pound_a_ream);
  EXPECT_DOUBLE_EQ(value("40 lb/3000ft2", Q::basis_weight), 40 * pound_a_ream);
  EXPECT_DOUBLE_EQ(value("40 lb/3000 sq ft", Q::basis_weight), 40 * pound_a_ream);
  EXPECT_DOUBLE_EQ(value("40 lb/(3000 ft2)", Q::basis_weight), 40 * pound_a_ream);
  EXPECT_DOUBLE_EQ(value("40 lb/(500*24in*36in)", Q::basis_weight), 40 * pound_a_ream);
  EXPECT_DOUBLE_EQ(value("40 lb / 3 msf", Q::basis_weight), 40 * pound_a_ream);
}

TEST(Parse, ATimesSignAfterTheNumberLetsGoOfTheArea) {
  EXPECT_THAT(fault("40 lb/3000*ft2", Q::basis_weight).what, HasSubstr("not a basis weight"));
}

TEST(Parse, TemperaturesAreReadOnTheirScale) {
  EXPECT_DOUBLE_EQ(value("20 degC", Q::temperature), 293.15);
  EXPECT_DOUBLE_EQ(value("212 \u00b0F", Q::temperature), 373.15);
  EXPECT_DOUBLE_EQ(value("300 K", Q::temperature), 300.0);
  EXPECT_DOUBLE_EQ(value("-40 degF", Q::temperature), value("-40 degC", Q::temperature));
}

TEST(Parse, TemperatureDifferencesAreReadAsSteps) {
  EXPECT_DOUBLE_EQ(value("20 degC", Q::temperature_difference), 20.0);
  EXPECT_DOUBLE_EQ(value("9 degF", Q::temperature_difference), 5.0);
  EXPECT_DOUBLE_EQ(value("0.9 %/degF", Q::fade), 0.0162);
}

TEST(Parse, ATemperatureIsAScaleAloneAndNoProduct) {
  EXPECT_THAT(fault("20 degC*m/m", Q::temperature).what, HasSubstr("write degC, degF or K alone"));
}

TEST(Parse, ARatioIsABareNumberOrPerCent) {
  EXPECT_EQ(value("0.35", Q::ratio), 0.35);
  EXPECT_EQ(value("35 %", Q::ratio), 0.35);
  EXPECT_EQ(value("35 percent", Q::ratio), 0.35);
}

TEST(Parse, KindsWithoutAUnitTakeABareNumber) {
  EXPECT_EQ(value("0.8", Q::number), 0.8);
  EXPECT_EQ(value("120.5", Q::price), 120.5);
  EXPECT_EQ(value("4", Q::count), 4.0);
  EXPECT_THAT(fault("5 m", Q::number).what, HasSubstr("'5 m' is a length, not a plain number"));
  EXPECT_THAT(fault("5 %", Q::number).what, HasSubstr("takes none"));
  EXPECT_THAT(fault("2.5", Q::count).what, HasSubstr("not a whole number"));
}

TEST(Parse, AnAngleMakesARotationalSpeed) {
  EXPECT_DOUBLE_EQ(value("60 rev/min", Q::rotational_speed), 6.283185307179586);
  EXPECT_DOUBLE_EQ(value("60 rpm", Q::rotational_speed), 6.283185307179586);
  EXPECT_THAT(fault("60 1/min", Q::rotational_speed).what, HasSubstr("an angle is missing"));
}

TEST(Parse, AFrequencyIsInCyclesOrInAngle) {
  EXPECT_DOUBLE_EQ(value("1 Hz", Q::frequency), 6.283185307179586);
  EXPECT_DOUBLE_EQ(value("60 1/min", Q::frequency), 6.283185307179586);
  EXPECT_DOUBLE_EQ(value("60/min", Q::frequency), 6.283185307179586);
  EXPECT_DOUBLE_EQ(value("1 1/s", Q::frequency), 6.283185307179586);
  EXPECT_DOUBLE_EQ(value("60 rpm", Q::frequency), 6.283185307179586);
  EXPECT_DOUBLE_EQ(value("6 rad/s", Q::frequency), 6.0);
  EXPECT_EQ(fault("5 Hz", Q::speed).what, "'5 Hz' is a rotational speed or a frequency, not a speed");
  EXPECT_EQ(fault("5 m/s", Q::frequency).what, "'5 m/s' is a speed, not a frequency");
  EXPECT_THAT(fault("5 hz", Q::frequency).what, HasSubstr("did you mean 'Hz'?"));
  EXPECT_EQ(fault("5", Q::frequency).what, "'5' has no unit; a frequency needs one");
}

TEST(Parse, ReadsTheTextsOfALoopAndItsDampers) {
  // One pound-force second a foot: 4.4482216152605 N / 0.3048 m, exact factors of 1959.
  EXPECT_DOUBLE_EQ(value("1 lbf*s/ft", Q::damping), 4.4482216152605 / 0.3048);
  EXPECT_DOUBLE_EQ(value("100 N*s/m", Q::damping), 100.0);
  EXPECT_DOUBLE_EQ(value("100 kg/s", Q::damping), 100.0);
  EXPECT_DOUBLE_EQ(value("-2 %/(m/s)", Q::friction_slope), -0.02);
  EXPECT_DOUBLE_EQ(value("0.3048 %/(ft/s)", Q::friction_slope), 0.01);
  EXPECT_EQ(fault("5 N/m", Q::damping).what, "'5 N/m' is a force per width, not a damping");
  EXPECT_EQ(fault("5 %", Q::friction_slope).what, "'5 %' is a plain number, not a friction slope");
}

TEST(Parse, UnitsMayOpenWithAReciprocal) {
  EXPECT_EQ(value("0.002 1/K", Q::fade), 0.002);
  EXPECT_EQ(value("0.002/K", Q::fade), 0.002);
}

TEST(Parse, EveryExampleThatFaultsShowIsAccepted) {
  for (const Kind& kind : kind_table()) {
    const auto examples = accepted_examples(kind.quantity);
    for (std::size_t from = 0; from < examples.size();) {
      const auto to = std::min(examples.find(", ", from), examples.size());
      EXPECT_GT(value(examples.substr(from, to - from), kind.quantity), 0) << kind.key;
      from = to + 2;
    }
  }
}

TEST(ParseUnit, GivesFactorAndOffset) {
  const auto unit = std::get<UnitValue>(parse_unit("degC", Q::temperature));
  EXPECT_EQ(unit.factor, 1.0);
  EXPECT_EQ(unit.offset, 273.15);
  EXPECT_EQ(std::get<UnitValue>(parse_unit("degC", Q::temperature_difference)).offset, 0.0);
  EXPECT_EQ(std::get<UnitValue>(parse_unit(" kN ", Q::force)).factor, 1000.0);
  EXPECT_EQ(std::get<UnitValue>(parse_unit("", Q::ratio)).factor, 1.0);
  EXPECT_EQ(std::get<UnitValue>(parse_unit("", Q::count)).factor, 1.0);
}

TEST(UnitTable, NoNameStandsForTwoUnits) {
  for (const Unit& unit : unit_table()) {
    for (const auto name : names_of(unit)) EXPECT_EQ(find_unit(name), &unit) << name;
  }
  EXPECT_EQ(find_unit(""), nullptr);
  EXPECT_EQ(find_unit("inch inches"), nullptr) << "two aliases are no name";
}

// Pieces that steer random text into every branch of the grammar.
std::string random_text(std::mt19937_64& random) {
  const std::vector<std::string> pieces = {
      "5",       "1e",      "-",    ".",     ",",    " ",      "N",      "lb",
      "ft2",     "/",       "*",    "(",     ")",    "^",      "\u00b2", "\u207b",
      "\u00b5m", "\u00b0C", "sq ",  "in",    "%",    "'",      "\"",     "3000",
      "1e99",    "\xff",    "\xe2", "inH2O", "-lbf", "\u00a0", "m9",     std::string(1, '\0')};
  std::uniform_int_distribution<std::size_t> pick{0, pieces.size() - 1};
  std::uniform_int_distribution<int> count{0, 14};
  std::uniform_int_distribution<int> byte{0, 255};
  std::string text = random() % 2 == 0 ? "5 " : "";
  for (int i = count(random); i > 0; --i) {
    text += random() % 8 == 0 ? std::string(1, static_cast<char>(byte(random))) : pieces[pick(random)];
  }
  return text;
}

bool is_utf8(const std::string& text) {
  for (std::size_t at = 0; at < text.size();) {
    const auto c = code_point_at(text, at);
    if (c.value == 0xFFFD && c.size == 1) return false;
    at += c.size;
  }
  return true;
}

TEST(Garbage, EndsInAFiniteValueOrInAnAnswerableFault) {
  std::mt19937_64 random{22};
  for (int i = 0; i < 30'000; ++i) {
    const auto text = random_text(random);
    const auto kind = kind_table()[random() % kind_table().size()].quantity;
    const auto read = parse(text, kind);
    if (const auto* si = std::get_if<double>(&read)) {
      ASSERT_TRUE(std::isfinite(*si)) << text;
    } else {
      const auto& found = std::get<Fault>(read);
      ASSERT_FALSE(found.what.empty() || found.accepted.empty()) << text;
      ASSERT_TRUE(is_utf8(found.what)) << text;
    }
  }
}

}  // namespace
}  // namespace holdback::units
