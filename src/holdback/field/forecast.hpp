// When pads will be worn: straight lines of depth over use, with what was known beforehand, and the work to come.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/results/history.hpp"

namespace holdback::field {

/// What is known of a wear rate before this set of pads was measured.
struct WearPrior {
  double rate{};         // [m/use] > 0
  double uncertainty{};  // [m/use] > 0, standard
};

/// One pad in use: depths over use since it was new. Use is counted in the unit of the basis.
struct PadCase {
  std::string pad{};
  std::vector<double> use{};
  std::vector<double> depth{};  // [m] left above the maker's limit
  int measured{};               // of them, without that of the new pad
  double used{};                // up to the day from which is looked ahead
  std::optional<WearPrior> prior{};
};

/// A stretch of the log.
struct UsePeriod {
  double days{};  // > 0
  double use{};   // ≥ 0
};

/// All that a forecast stands on.
struct ForecastCase {
  UseBasis basis{};
  std::vector<PadCase> pads{};
  double resolution{1e-4};           // [m] > 0 of the gauge
  std::vector<UsePeriod> periods{};  // empty only with UseBasis::calendar, where a day is a day
  int from{};                        // day from which it looks ahead
  int samples{8192};
};

/// Depth over use as a straight line by least squares, about its middle: depth = depth_mean − rate (use − use_mean).
struct WearLine {
  int count{};
  double use_mean{};
  double depth_mean{};
  double spread{};    // Σ (use − use_mean)²
  double rate{};      // [m/use] 0 when all points have one use
  double residual{};  // [m²] Σ (depth − line)²
};
WearLine wear_line(const std::vector<double>& use, const std::vector<double>& depth);

/// Weights of what is assumed where data are few, in numbers of readings and of log periods.
inline constexpr double scatter_weight =
    2;                                      // a depth scatters like the gauge's resolution, until its own scatter shows
inline constexpr double work_weight = 3;    // work varies by work_spread from month to month, likewise
inline constexpr double work_spread = 0.3;  // [1]
inline constexpr double month = 30;         // [days]

/// Whether a pad can be forecast at all: two points at different use, or one point and something known beforehand.
bool can_forecast(const PadCase& pad);

/// The next change of pads. Model: each pad wears straight in use, its readings scatter normally with one variance for
/// all pads; the work to come is a Wiener process with drift, so that the time to do it is inverse Gaussian
/// [@chhikara1989]
/// [@tweedie1957]. Posterior by Monte Carlo with a fixed seed: the variance scaled inverse χ², then middle and rate of
/// each line normal, the rate with its prior [@gelman2013, ch. 3, 14]; without a prior the interval of the remaining
/// use is Fieller's [@fieller1954]. Interval and middle are the 5, 50 and 95 % quantiles of the first pad worn. Pads
/// that cannot be forecast are left out; nothing when no wear is to be seen yet, so that no middle can be given.
/// std::invalid_argument when no pad can be forecast, or when the log is empty and needed.
std::optional<Forecast> forecast(const ForecastCase& of);

}  // namespace holdback::field
