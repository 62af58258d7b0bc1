// What the faults say, and that nothing wrong slips through.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <variant>

#include "holdback/units/near_miss.hpp"
#include "holdback/units/text.hpp"
#include "holdback/units/units.hpp"
#include "unit/units/reading.hpp"

namespace holdback::units {
namespace {

using Q = Quantity;
using testing::HasSubstr;

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
  EXPECT_EQ(quoted("\xe0\x80\xaf"), "'\ufffd\ufffd\ufffd'") << "the same in three bytes";
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

}  // namespace
}  // namespace holdback::units
