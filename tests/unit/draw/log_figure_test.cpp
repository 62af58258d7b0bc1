// Figures of a log, drawn from a diagnosis made by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "holdback/draw/figures.hpp"
#include "holdback/draw/svg.hpp"

namespace holdback::draw {
namespace {

using testing::HasSubstr;
using testing::Not;

constexpr double none = std::numeric_limits<double>::quiet_NaN();

Diagnosis made_by_hand() {
  Diagnosis found;
  found.log = "trend.csv";
  found.job = "clear labels";
  found.tension = {100, 90, 110};
  found.verdict = {"the roll is out of round"};
  for (int i = 0; i < 200; ++i) {
    const double time = 0.5 * i;
    found.trace.time.push_back(time);
    found.trace.tension.push_back(i == 50 ? none : 100 + 3 * std::sin(time));
    found.trace.lowest_tension.push_back(i == 50 ? none : 95 + 3 * std::sin(time));
    found.trace.highest_tension.push_back(i == 50 ? none : 105 + 3 * std::sin(time));
    found.trace.speed.push_back(3);
  }
  LogChange stop;
  stop.phase = LogPhase::ramp_down;
  stop.begin = 80;
  stop.end = 90;
  stop.state = State::tight;
  found.changes = {stop};
  found.changes_found = 1;
  for (int i = 0; i <= 400; ++i) {
    found.by_frequency.place.push_back(0.1 * i);
    found.by_frequency.amplitude.push_back(i == 100 ? 2.5 : 0.1);
    found.by_frequency.floor.push_back(0.2);
    found.by_order.place.push_back(0.02 * i);
    found.by_order.amplitude.push_back(i == 50 ? 3.5 : 0.1);
    found.by_order.floor.push_back(0.2);
  }
  LogPeak roll;
  roll.by_order = true;
  roll.order = 1;
  roll.amplitude = 3.5;
  roll.source = PeakSource::roll;
  LogPeak hum;
  hum.frequency = 10;
  hum.amplitude = 2.5;
  found.peaks = {roll, hum};
  return found;
}

std::vector<std::string> files_of(const Diagnosis& found) {
  Answer answer;
  answer.diagnosis = found;
  std::vector<std::string> names;
  for (const auto& figure : figures_of(answer, units::System::si)) names.push_back(figure.file);
  return names;
}

TEST(LogFigures, AreThoseThatTheLogBears) {
  Diagnosis found = made_by_hand();
  EXPECT_THAT(files_of(found), testing::ElementsAre("log-clear-labels", "spectra-clear-labels"));
  found.friction.time = {1, 2, 3};
  found.friction.ratio = {1, 0.9, 0.8};
  EXPECT_THAT(files_of(found), testing::Contains("friction-clear-labels"));
  EXPECT_THAT(files_of(Diagnosis{}), testing::IsEmpty());
}

TEST(LogFigures, NameTheStopAndTheWindow) {
  const std::string drawn = svg(log_figure(made_by_hand(), units::System::si));
  EXPECT_THAT(drawn, HasSubstr("ramp down"));
  EXPECT_THAT(drawn, HasSubstr("window to 110"));
  EXPECT_THAT(drawn, Not(HasSubstr("nan"))) << "a stretch without a reading is a gap";
}

TEST(LogFigures, NamePeaksWhereTheyAre) {
  const std::string drawn = svg(log_spectra_figure(made_by_hand(), units::System::si));
  EXPECT_THAT(drawn, HasSubstr("order 1.00: roll"));
  EXPECT_THAT(drawn, HasSubstr(">1.59")) << "10 rad/s over 2 π";
}

TEST(LogFigures, SayWhenNothingStandsOut) {
  Diagnosis found = made_by_hand();
  found.peaks.clear();
  EXPECT_THAT(log_spectra_figure(found, units::System::si).title, HasSubstr("nothing stands out"));
}

}  // namespace
}  // namespace holdback::draw
