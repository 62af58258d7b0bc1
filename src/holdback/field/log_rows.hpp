// A log on its way through the judge: rows, and buckets of rows of a fraction of a second over which the state of the
// line is judged.
#pragma once

#include <array>
#include <cmath>
#include <limits>
#include <vector>

#include "holdback/model/log.hpp"
#include "holdback/results/diagnosis.hpp"

namespace holdback::field {

inline constexpr double no_reading = std::numeric_limits<double>::quiet_NaN();

/// One row [SI]; not-a-number where there is no reading.
struct LogRow {
  std::array<double, log_channels> value{};
  double step{};  // [s] from the row before; 0 after a hole

  double& operator[](LogChannel c) { return value[static_cast<std::size_t>(c)]; }
  double operator[](LogChannel c) const { return value[static_cast<std::size_t>(c)]; }
  double time() const { return (*this)[LogChannel::time]; }
};

/// Mean over those that are numbers.
struct Mean {
  double sum{};
  double squares{};
  double count{};
  void add(double x) {
    if (std::isnan(x)) return;
    sum += x;
    squares += x * x;
    ++count;
  }
  double value() const { return count > 0 ? sum / count : no_reading; }
  double variance() const { return count > 1 ? std::max(0.0, (squares - sum * sum / count) / (count - 1)) : 0; }
};

struct LogBucket {
  std::vector<LogRow> rows{};
  double begin{};
  double end{};
  bool after_hole{};                      // what stood before it is not known
  std::array<Mean, log_channels> mean{};  // of its rows
  LogPhase phase{LogPhase::standstill};
  double settled{};  // [s] since the line's speed last changed
  double radius{};   // [m]; 0: not known
  bool new_roll{};   // another roll came on
  double web_run{};  // [m] at its end
  double of(LogChannel c) const { return mean[static_cast<std::size_t>(c)].value(); }
  const Mean& mean_of(LogChannel c) const { return mean[static_cast<std::size_t>(c)]; }
  double length() const { return end - begin; }
  double middle() const { return (begin + end) / 2; }
};

}  // namespace holdback::field
