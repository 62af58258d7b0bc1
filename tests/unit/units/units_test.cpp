// What a person may write, what the faults say, and how values are shown and written.

#include "holdback/units/units.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>
#include <random>
#include <stdexcept>
#include <string>
#include <variant>
#include <vector>

#include "holdback/units/kind_table.hpp"
#include "holdback/units/near_miss.hpp"
#include "holdback/units/text.hpp"
#include "holdback/units/unit_table.hpp"

namespace holdback::units {
namespace {

using Q = Quantity;
using testing::HasSubstr;

double value(std::string_view text, Quantity kind) {
  const auto read = parse(text, kind);
  if (const auto* fault = std::get_if<Fault>(&read)) {
    ADD_FAILURE() << text << ": " << fault->what;
    return std::nan("");
  }
  return std::get<double>(read);
}

Fault fault(std::string_view text, Quantity kind) {
  const auto read = parse(text, kind);
  if (const auto* found = std::get_if<Fault>(&read)) return *found;
  ADD_FAILURE() << text << " was read as " << std::get<double>(read);
  return {};
}

// ---- what a person may write

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
       {"5 N*m", "5 N\u00b7m", "5 N\u22c5m", "5 N\u00d7m", "5 N.m", "5 N m", "5 N-m", "5 Nm", "5 (N)(m)"}) {
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

// ---- what the faults say

TEST(Faults, AnotherDimensionIsNamed) {
  const auto found = fault("35 psi", Q::speed);
  EXPECT_EQ(found.what, "'35 psi' is a pressure, not a speed");
  EXPECT_EQ(found.accepted, accepted_examples(Q::speed));
  EXPECT_EQ(fault("3 m", Q::force).what, "'3 m' is a length, not a force");
  EXPECT_EQ(fault("3 N7", Q::force).what, "'3 N7' is not a force");
}

TEST(Faults, ABareNumberIsToldThatAUnitIsDue) {
  const auto found = fault("300", Q::speed);
  EXPECT_EQ(found.what, "'300' has no unit; a speed needs one");
  EXPECT_THAT(found.accepted, HasSubstr("300 m/min"));
}

TEST(Faults, APoundIsAMassAndPoundForceIsWanted) {
  EXPECT_THAT(fault("12 lb", Q::force).what, HasSubstr("'lb' is a mass, write 'lbf' for a force"));
  EXPECT_THAT(fault("1.2 lb/in", Q::tension_per_width).what, HasSubstr("write 'lbf' for a force"));
  EXPECT_THAT(fault("20 ft-lb", Q::torque).what, HasSubstr("write 'lbf' for a force"));
  EXPECT_THAT(fault("3 lbs/in2", Q::pressure).what, HasSubstr("write 'lbf' for a force"));
  EXPECT_THAT(fault("3 kg/cm2", Q::pressure).what, HasSubstr("write 'kgf' for a force"));
}

TEST(Faults, APoundForceIsAForceAndAMassIsWanted) {
  EXPECT_THAT(fault("40 lbf/3000 ft2", Q::basis_weight).what, HasSubstr("'lbf' is a force, write 'lb' for a mass"));
}

TEST(Faults, ANearMissGetsASuggestion) {
  EXPECT_EQ(fault("5 bra", Q::pressure).what, "'bra' is not a known unit; did you mean 'bar'?");
  EXPECT_THAT(fault("5 mPa", Q::pressure).what, HasSubstr("did you mean 'MPa'?"));
  EXPECT_THAT(fault("5 Kg", Q::mass).what, HasSubstr("did you mean 'kg'?"));
  EXPECT_THAT(fault("5 inchs", Q::short_length).what, HasSubstr("did you mean 'inch'?"));
  EXPECT_THAT(fault("5 lbin", Q::torque).what, HasSubstr("did you mean 'in*lbf'?"));
  EXPECT_EQ(fault("5 furlong", Q::web_length).what, "'furlong' is not a known unit");
}

TEST(Faults, NamesOfTheTradeWithMoreThanOneMeaningGetAdvice) {
  EXPECT_THAT(fault("50 psia", Q::pressure).what, HasSubstr("gauge"));
  EXPECT_THAT(fault("5 ton", Q::mass).what, HasSubstr("2240 lb"));
  EXPECT_THAT(fault("80 gauge", Q::caliper).what, HasSubstr("write mil"));
  EXPECT_THAT(fault("40 lb/ream", Q::basis_weight).what, HasSubstr("lb/3000 ft2"));
  EXPECT_THAT(fault("40 #/3000 ft2", Q::basis_weight).what, HasSubstr("write lb for a mass"));
  EXPECT_THAT(fault("23 C", Q::temperature).what, HasSubstr("degC"));
}

TEST(Faults, ACommaIsAmbiguous) {
  for (const auto* text : {"1,000 N", "1,5 N", "40 lb/3,000 ft2"}) {
    EXPECT_THAT(fault(text, text[0] == '4' ? Q::basis_weight : Q::force).what, HasSubstr("comma")) << text;
  }
}

TEST(Faults, ANumberMustNotFallApart) {
  EXPECT_THAT(fault("35 000 N", Q::force).what, HasSubstr("gap"));
  EXPECT_THAT(fault("1 000 N", Q::force).what, HasSubstr("gap"));
  EXPECT_THAT(fault("1.5.2 N", Q::force).what, HasSubstr("gap"));
  EXPECT_THAT(fault("5 .2 N", Q::force).what, HasSubstr("gap"));
}

TEST(Faults, AFractionIsToldToBecomeADecimal) {
  EXPECT_EQ(fault("3/4 in", Q::short_length).what, "'3/4 in' has a fraction; write a decimal");
  EXPECT_THAT(fault("1 1/2 in", Q::short_length).what, HasSubstr("write a decimal"));
  EXPECT_THAT(fault("1/2 %", Q::ratio).what, HasSubstr("write a decimal"));
  EXPECT_THAT(fault("1 1/2 %", Q::ratio).what, HasSubstr("write a decimal"));
  EXPECT_THAT(fault("1 / .5", Q::ratio).what, HasSubstr("write a decimal"));
}

TEST(Faults, WhatIsNoNumberIsRefused) {
  for (const auto* text : {"", "   ", "N", "nan N", "inf N", "-inf", "\u221e N", "- 5 N", "--5 N", "e5 N", ".", "+"}) {
    EXPECT_FALSE(fault(text, Q::force).what.empty()) << text;
  }
  EXPECT_EQ(fault("", Q::force).what, "nothing is written");
}

TEST(Faults, NumbersOutOfRangeAreRefused) {
  for (const auto* text : {"1e400 N", "1e-400 N", "-1e999999999999 N", "1e308 GN", "1e308 kN", "1e-323 mN"}) {
    EXPECT_FALSE(fault(text, Q::force).what.empty()) << text;
  }
  EXPECT_THAT(fault("1e308 kN", Q::force).what, HasSubstr("too large"));
  EXPECT_EQ(value("0e-400 N", Q::force), 0.0) << "nothing is lost of a zero";
}

TEST(Faults, BrokenUnitsAreRefused) {
  for (const auto* text : {"5 N/",       "5 N//m",    "5 *N",      "5 N*",  "5 (N",    "5 N)",        "5 ()",
                           "5 N^",       "5 N^x",     "5 N^0",     "5 N0",  "5 N99",   "5 N 2",       "5 ft 2",
                           "5 N^-",      "5 N\u207b", "5\u00b2 N", "5'6\"", "5 N/0 m", "5 sq",        "5 sq N N N",
                           "5 \xff\xfe", "5 N\xc3",   "5 _N",      "5 N;",  "0x10 N",  "5 kg*m/s^2^2"}) {
    EXPECT_FALSE(fault(text, Q::force).what.empty()) << text;
  }
}

TEST(Faults, DeepNestingAndHighPowersAreRefused) {
  const std::string open(90, '(');
  EXPECT_THAT(fault("5 " + open + "N" + std::string(90, ')'), Q::force).what, HasSubstr("too many brackets"));
  EXPECT_FALSE(fault("5 ((((((N9)9)9)9)9)9)", Q::force).what.empty());
  EXPECT_FALSE(fault("5 (km9 km9)9", Q::force).what.empty());
  EXPECT_EQ(value("5 ((((N))))", Q::force), 5.0);
}

TEST(Faults, LongTextIsRefusedAndClippedInTheSentence) {
  const auto found = fault("5 " + std::string(100'000, 'N'), Q::force);
  EXPECT_THAT(found.what, HasSubstr("too long"));
  EXPECT_LT(found.what.size(), 120U);
}

TEST(Faults, AUnitAloneIsJudgedLikeAUnitInAText) {
  EXPECT_EQ(std::get<Fault>(parse_unit("psi", Q::speed)).what, "'psi' is a pressure, not a speed");
  EXPECT_EQ(std::get<Fault>(parse_unit("", Q::speed)).what, "no unit is written; a speed needs one");
  EXPECT_THAT(std::get<Fault>(parse_unit("%", Q::number)).what, HasSubstr("takes none"));
}

TEST(Faults, QuotedTextIsAlwaysValidUtf8) {
  EXPECT_EQ(quoted("5 N"), "'5 N'");
  EXPECT_EQ(quoted("\xff"), "'\ufffd'");
  EXPECT_EQ(quoted("\xc0\xaf"), "'\ufffd\ufffd'") << "an overlong slash";
  EXPECT_EQ(quoted("\xed\xa0\x80"), "'\ufffd\ufffd\ufffd'") << "a surrogate";
  EXPECT_EQ(quoted("a\nb"), "'a\ufffdb'");
}

TEST(EditDistance, CountsInsertDropReplaceAndSwap) {
  EXPECT_EQ(edit_distance("bar", "bar"), 0U);
  EXPECT_EQ(edit_distance("bra", "bar"), 1U);
  EXPECT_EQ(edit_distance("ba", "bar"), 1U);
  EXPECT_EQ(edit_distance("bars", "bar"), 1U);
  EXPECT_EQ(edit_distance("car", "bar"), 1U);
  EXPECT_EQ(edit_distance("", "bar"), 3U);
}

// ---- units alone

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

// ---- shown for a reader

TEST(Show, UsesTheUnitsOfTheReader) {
  EXPECT_EQ(show(5, Q::speed, System::si), "300 m/min");
  EXPECT_EQ(show(5.08, Q::speed, System::us), "1000 ft/min");
  EXPECT_EQ(show(210.1522, Q::tension_per_width, System::us), "1.20 lbf/in");
  EXPECT_EQ(show(293.15, Q::temperature, System::si), "20.0 °C");
  EXPECT_EQ(show(293.15, Q::temperature, System::us), "68.0 °F");
  EXPECT_EQ(show(10, Q::temperature_difference, System::us), "18.0 °F");
  EXPECT_EQ(show(0.35, Q::ratio, System::us), "35.0 %");
  EXPECT_EQ(show(0.35, Q::ratio, System::si, 2), "35 %");
  EXPECT_EQ(show(1.5707963267948966, Q::angle, System::si), "90.0 °");
  EXPECT_EQ(show(Amount{250'000, Q::pressure}, System::si), "2.50 bar");
}

TEST(Show, KeepsTheDigitsBeforeThePointAndNoFalseOnesAfterIt) {
  EXPECT_EQ(show_number(1234, Q::number, System::si), "1234");
  EXPECT_EQ(show_number(1234.5678, Q::number, System::si, 6), "1234.57");
  EXPECT_EQ(show_number(123456789, Q::number, System::si), "123456789");
  EXPECT_EQ(show_number(999.6, Q::number, System::si), "1000");
  EXPECT_EQ(show_number(9.996, Q::number, System::si), "10.0");
  EXPECT_EQ(show_number(12.34, Q::number, System::si), "12.3");
  EXPECT_EQ(show_number(0.01234, Q::number, System::si), "0.0123");
  EXPECT_EQ(show_number(-0.5, Q::number, System::si), "-0.500");
  EXPECT_EQ(show_number(0, Q::number, System::si), "0");
  EXPECT_EQ(show_number(-0.0, Q::number, System::si), "0");
}

TEST(Show, UsesAnExponentOnlyWhereNobodyCountsZeros) {
  EXPECT_EQ(show_number(1.234e-6, Q::number, System::si), "0.00000123");
  EXPECT_EQ(show_number(1.234e-7, Q::number, System::si), "1.23e-7");
  EXPECT_EQ(show_number(1.5e15, Q::number, System::si), "1.50e15");
}

TEST(Show, ACountIsAWholeNumber) {
  EXPECT_EQ(show(3, Q::count, System::si), "3");
  EXPECT_EQ(show(1234, Q::count, System::us), "1234");
}

TEST(Show, SaysWhenThereIsNoFiniteValue) {
  EXPECT_EQ(show(std::numeric_limits<double>::infinity(), Q::duration, System::si), "∞ s");
  EXPECT_EQ(show(-std::numeric_limits<double>::infinity(), Q::duration, System::si), "-∞ s");
  EXPECT_EQ(show(std::nan(""), Q::duration, System::si), "undefined s");
}

constexpr System both[] = {System::si, System::us};

TEST(Show, IsTheNumberAloneAndTheUnitAlone) {
  for (const Kind& kind : kind_table()) {
    for (const auto system : both) {
      const auto unit = unit_of(kind.quantity, system);
      const auto number = show_number(321.5, kind.quantity, system);
      EXPECT_EQ(show(321.5, kind.quantity, system), unit.empty() ? number : number + " " + unit) << kind.key;
    }
  }
}

TEST(Show, EveryShownTextReadsBackToItsDigits) {
  std::mt19937_64 random{7};
  std::uniform_real_distribution<double> exponent{-4, 6};
  for (const Kind& kind : kind_table()) {
    for (const auto system : both) {
      for (int i = 0; i < 200; ++i) {
        const double si = std::pow(10.0, exponent(random));
        const auto text = show(si, kind.quantity, system, 6);
        const double shown = in_display_unit(si, kind.quantity, system);
        const double offset = in_display_unit(0, kind.quantity, system);
        const double slack = kind.quantity == Q::count ? 0.5 : 6e-6 * std::fabs(shown);
        const double read = in_display_unit(value(text, kind.quantity), kind.quantity, system);
        ASSERT_NEAR(read, shown, slack + 1e-12 * std::fabs(offset)) << text << " for " << kind.key;
      }
    }
  }
}

TEST(Fill, PutsTheAmountsIntoTheSentence) {
  const Note note{"At {1} the tension is {0}, and {0} is too much.",
                  {{210.1522, Q::tension_per_width}, {5.08, Q::speed}}};
  EXPECT_EQ(fill(note, System::us), "At 1000 ft/min the tension is 1.20 lbf/in, and 1.20 lbf/in is too much.");
  EXPECT_EQ(fill(note, System::si), "At 305 m/min the tension is 210 N/m, and 210 N/m is too much.");
}

TEST(Fill, LeavesBracesThatNameNoAmount) {
  const Note note{"{} {1} {x} {0 {99999999999999999999} {0}{", {{2, Q::count}}};
  EXPECT_EQ(fill(note, System::si), "{} {1} {x} {0 {99999999999999999999} 2{");
}

// ---- written for a file

TEST(Write, GivesBackWhatAPersonWrote) {
  EXPECT_EQ(write(value("1.2 lbf/in", Q::tension_per_width), Q::tension_per_width, System::us), "1.2 lbf/in");
  EXPECT_EQ(write(value("35 psi", Q::pressure), Q::pressure, System::us), "35 psi");
  EXPECT_EQ(write(value("40 lb/3000 ft2", Q::basis_weight), Q::basis_weight, System::us), "40 lb/3000 ft²");
  EXPECT_EQ(write(value("23 degC", Q::temperature), Q::temperature, System::si), "23 °C");
  EXPECT_EQ(write(value("12 um", Q::caliper), Q::caliper, System::si), "12 µm");
  EXPECT_EQ(write(value("20000 ft", Q::web_length), Q::web_length, System::us), "20000 ft");
  EXPECT_EQ(write(0.35, Q::ratio, System::si), "35 %");
  EXPECT_EQ(write(4, Q::count, System::us), "4");
  EXPECT_EQ(write(0, Q::force, System::us), "0 lbf");
}

TEST(Write, FallsBackToTheSiUnitWhereNoTextInTheShownUnitIsExact) {
  // 1e-300 K lies far below the last digit of any number of degrees Celsius that is near -273.15.
  EXPECT_EQ(write(1e-300, Q::temperature, System::si), "1e-300 K");
  EXPECT_EQ(write(1e308, Q::short_length, System::si), "1e308 m");
}

TEST(Write, RefusesAValueThatHasNoText) {
  EXPECT_THROW(write(std::nan(""), Q::force, System::si), std::invalid_argument);
  EXPECT_THROW(write(std::numeric_limits<double>::infinity(), Q::force, System::si), std::invalid_argument);
}

void expect_round_trip(double si, Quantity kind, System system) {
  const auto text = write(si, kind, system);
  const auto read = parse(text, kind);
  ASSERT_TRUE(std::holds_alternative<double>(read)) << text << ": " << std::get<Fault>(read).what;
  ASSERT_EQ(std::get<double>(read), si) << text;
}

TEST(Write, EveryValueOfEveryKindReadsBackExactly) {
  std::mt19937_64 random{20};
  std::uniform_real_distribution<double> exponent{-12, 12};
  std::uniform_real_distribution<double> mantissa{-10, 10};
  for (const Kind& kind : kind_table()) {
    for (const auto system : both) {
      for (int i = 0; i < 400; ++i) {
        double si = mantissa(random) * std::pow(10.0, exponent(random));
        if (kind.quantity == Q::count) si = std::round(si);
        ASSERT_NO_FATAL_FAILURE(expect_round_trip(si, kind.quantity, system)) << kind.key;
      }
    }
  }
}

TEST(Write, AnyBitPatternThatIsFiniteReadsBackExactly) {
  std::mt19937_64 random{21};
  for (const Kind& kind : kind_table()) {
    if (kind.quantity == Q::count) continue;
    for (int i = 0; i < 300; ++i) {
      const std::uint64_t bits = random();
      double si{};
      std::memcpy(&si, &bits, sizeof si);
      if (!std::isfinite(si)) continue;
      ASSERT_NO_FATAL_FAILURE(expect_round_trip(si, kind.quantity, both[i % 2])) << kind.key;
    }
  }
}

// ---- names of kinds

TEST(Kinds, HaveAKeyANameAndAnSiUnit) {
  EXPECT_EQ(key_of(Q::tension_per_width), "tension_per_width");
  EXPECT_EQ(name_of(Q::tension_per_width), "tension per width");
  EXPECT_EQ(si_unit_of(Q::tension_per_width), "N/m");
  EXPECT_EQ(si_unit_of(Q::temperature), "K");
  EXPECT_EQ(si_unit_of(Q::rotational_speed), "rad/s");
  EXPECT_EQ(si_unit_of(Q::ratio), "1");
}

TEST(Kinds, TheSiUnitIsCoherentAndAscii) {
  for (const Kind& kind : kind_table()) {
    if (kind.si_unit == "1") continue;
    const auto unit = std::get<UnitValue>(parse_unit(kind.si_unit, kind.quantity));
    EXPECT_EQ(unit.factor, 1.0) << kind.key;
    EXPECT_EQ(unit.offset, 0.0) << kind.key;
    for (const char c : kind.si_unit) EXPECT_GT(c, ' ') << kind.key;
  }
}

// ---- garbage

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
