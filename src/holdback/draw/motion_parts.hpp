// What the pictures of runs share: strips over time with the tension, its band and its window.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "holdback/draw/figure_parts.hpp"
#include "holdback/results/answer.hpp"

namespace holdback::draw {

inline constexpr std::size_t strip_columns = 360;  // of a strip, each about a third of a millimetre
inline constexpr double long_slack = 10;           // [m] from here on as web

/// The highest of the values that can be shown; 0 when there is none above it.
double highest_of(const std::vector<double>& values);

/// Seconds, or hours for what ends late.
Quantity time_kind(double end);
std::string time_text(double seconds, units::System system);

/// Slack as a length near at hand, or as web when it is long.
std::string slack_text(double slack, units::System system);

/// A list of a trace as a curve, thinned to the columns of a strip.
Curve trace_curve(const std::string& name, const RunTrace& trace, const std::vector<double>& values, Style style);

/// A strip with a plot of that height [mm] over the time of a run, without numbers on its time axis.
Chart time_strip(const RunTrace& trace, const std::string& name, Quantity kind, double height, int rows);

/// Where a picture of the run's tensions ends [N], below twice the window; 0: at the highest of them.
double top_of(const MotionRun& run, const TensionTarget& tension);

/// The band of tension with its mean, the setpoint and the window.
Chart tension_strip(const MotionRun& run, const TensionTarget& tension, double height, units::System system);

/// The highest tension of all: a dot with its value, or a note when it lies above `top`.
void add_peak(Chart& chart, std::vector<Footnote>& notes, const MotionRun& run, double top, units::System system);

/// The lowest of the strips shows the time. Not for an empty list.
void show_time(std::vector<Chart>& strips);

/// The room that strips take [mm].
double height_of(const std::vector<Chart>& strips);

/// "holds", or that the run came to nothing.
std::string_view outcome_of(const MotionRun& run);

/// The line under the title.
std::string under_of(const Simulation& simulation);

/// Notes where they are due: that a run stopped by a fault, that the window moves.
void fault_note(std::vector<Footnote>& notes, const MotionRun& run, units::System system);
void window_note(std::vector<Footnote>& notes, const RunTrace& trace);

/// The run for who cannot see the picture.
std::string in_words(const MotionRun& run, units::System system);

}  // namespace holdback::draw
