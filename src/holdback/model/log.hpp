// A stretch of a log: what was recorded on the line, row by row, already in SI.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "holdback/model/quantity.hpp"

namespace holdback {

/// What a log can hold.
enum class LogChannel { time, speed, tension, pressure, diameter, turns, temperature, pairs };
inline constexpr std::size_t log_channels = static_cast<std::size_t>(LogChannel::pairs) + 1;

/// The kind of quantity of each: time [s] from the first row, speed [m/s] of the web, tension [N] over the whole width,
/// pressure [Pa] gauge at the brake, diameter [m] of the roll, turns [rad] of the roll counted on, temperature [K] of
/// the disc, pairs engaged on each brake.
constexpr Quantity kind_of(LogChannel channel) {
  constexpr std::array<Quantity, log_channels> kinds{Quantity::duration,    Quantity::speed,        Quantity::force,
                                                     Quantity::pressure,    Quantity::short_length, Quantity::turns,
                                                     Quantity::temperature, Quantity::count};
  return kinds[static_cast<std::size_t>(channel)];
}

/// The size [SI] beyond which no reading of a channel lies on any web line; what is larger is a fault of the recorder
/// or of the unit in the head. Common practice, no source: far beyond anything built.
constexpr double largest_reading(LogChannel channel) {
  constexpr std::array<double, log_channels> largest{1e10, 200, 1e7, 1e8, 20, 1e10, 5000, 1000};
  return largest[static_cast<std::size_t>(channel)];
}

/// Rows that follow each other faster [s] are not of a line: their times are in another unit than was said. Common
/// practice, no source: a hundred times as fast as drives are recorded.
inline constexpr double least_log_interval = 1e-5;

/// Rows in the order of the log. A channel that the log lacks has an empty list; a cell without a reading (empty, no
/// number, a sensor that dropped out) is not-a-number. Times rise strictly: rows that do not are left out before.
struct LogBlock {
  std::size_t rows{};
  std::array<std::vector<double>, log_channels> channel{};

  std::vector<double>& of(LogChannel which) { return channel[static_cast<std::size_t>(which)]; }
  const std::vector<double>& of(LogChannel which) const { return channel[static_cast<std::size_t>(which)]; }
};

}  // namespace holdback
