// How the tension swings, stretch by stretch: its strongest line, beside speed and
// diameter. What swings by itself, a loop that hunts or a brake that sticks and slips, is told by what its frequency
// follows.
#pragma once

#include <complex>
#include <cstddef>
#include <vector>

#include "holdback/field/log_stand.hpp"
#include "holdback/numerics/fft.hpp"

namespace holdback::field {

/// One stretch of some ten swings.
struct Swing {
  double time{};       // [s] its middle
  double speed{};      // [m/s]
  double radius{};     // [m]; 0: not known
  double deviation{};  // [N] of the tension, its straight trend taken off
  double frequency{};  // [rad/s] of the strongest line, or of its fundamental; 0: none
  double amplitude{};  // [N] of it
  double share{};      // [1] of the variance that it makes
  double second{};     // [1] its second harmonic over it
  double pressure{};   // [Pa] amplitude of the pressure at that frequency
  double roll{};       // [N] amplitude at the roll's own frequency
};

class SwingKeeper {
 public:
  /// `rate` [1/s] of the samples.
  SwingKeeper(const LogStand& stand, double rate);

  /// Angle [rad] and pressure [Pa] may be not-a-number.
  void put(double time, double tension, double angle, double web_run, double pressure);
  void cut() { filled_ = 0; }

  const std::vector<Swing>& swings() const { return kept_; }
  double stretch() const { return static_cast<double>(length_) / rate_; }  // [s]
  static constexpr std::size_t most = 2000;

 private:
  void take();

  double rate_;
  std::size_t length_;
  numerics::Fft fft_;
  std::vector<double> window_, tension_, pressure_, work_;
  std::vector<std::complex<double>> transform_;
  std::size_t filled_{};
  double begin_time_{}, begin_angle_{}, begin_run_{}, end_time_{}, end_angle_{}, end_run_{};
  std::vector<Swing> kept_{};
  std::size_t every_{1};  // stretches for one that is kept
  std::size_t seen_{};
};

}  // namespace holdback::field
