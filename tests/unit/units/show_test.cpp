// How values are shown to a reader and written to a file.

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>
#include <random>
#include <stdexcept>
#include <string>
#include <variant>

#include "holdback/units/kind_table.hpp"
#include "holdback/units/units.hpp"
#include "unit/units/reading.hpp"

namespace holdback::units {
namespace {

using Q = Quantity;

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
  EXPECT_EQ(show(6.283185307179586, Q::frequency, System::si), "1.00 Hz");
  EXPECT_EQ(show(6.283185307179586, Q::frequency, System::us), "1.00 Hz");
  EXPECT_EQ(show(14.5939029372, Q::damping, System::us), "1.00 lbf·s/ft");
  EXPECT_EQ(show(-0.02, Q::friction_slope, System::si), "-2.00 %/(m/s)");
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

TEST(Write, GivesBackEveryShortNumberInEveryDisplayUnit) {
  std::mt19937_64 random{23};
  for (const Kind& kind : kind_table()) {
    for (const auto system : both) {
      for (int i = 0; i < 200; ++i) {
        const auto number = std::to_string(random() % 10'000) + (kind.quantity == Q::count ? "" : ".5");
        const auto unit = unit_of(kind.quantity, system);
        const auto text = unit.empty() ? number : number + " " + unit;
        ASSERT_EQ(write(value(text, kind.quantity), kind.quantity, system), text) << kind.key;
      }
    }
  }
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

}  // namespace
}  // namespace holdback::units
