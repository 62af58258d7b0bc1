// The roll's diameter and angle over a log, and the tension taken at equal steps of that angle and of web run, so that
// a shake which belongs to the roll or to a roller stays one sharp line however speed and diameter change.
//
//   diameter  D² = a − 4 t L/π, L the web run (physics/roll.hpp: L = π(R² − r²)/t): a is followed slowly, the rest is
//             known, so that noise of the sensor is smoothed over half a minute without lagging behind
//   angle     dθ = v dt/R, or the turns as counted
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "holdback/field/log_rows.hpp"
#include "holdback/field/log_stand.hpp"
#include "holdback/field/swings.hpp"
#include "holdback/numerics/resample.hpp"
#include "holdback/numerics/spectrum.hpp"

namespace holdback::field {

/// Follows the diameter, bucket by bucket.
class DiameterTrack {
 public:
  /// `has_diameter`, `has_turns`: what the log has. With neither the roll is taken to be full at the first row.
  DiameterTrack(const LogStand& stand, bool has_diameter, bool has_turns);

  /// A bucket of rows, with the web run [m] at its end filled in; `run` [m] is the web that ran in it.
  void put(const LogBucket& bucket, double run);

  double radius() const { return radius_at(web_run_); }  // [m]; 0: not known
  DiameterSource source() const { return source_; }
  double web_run() const { return web_run_; }
  double first_diameter() const { return first_; }
  bool new_roll() const { return new_roll_; }  // the last bucket brought one

 private:
  double radius_at(double web_run) const;
  void follow(double square, double run);
  void by_turns(const LogBucket& bucket);

  const LogStand& stand_;
  DiameterSource source_;
  double thinning_;  // [m] 4 t/π: loss of D² a metre
  double web_run_{};
  double square_{};  // [m²] a
  double weight_{};  // [m] of web behind a
  double first_{};
  bool new_roll_{};
  double odd_run_{};  // [m] of web whose readings were far off
  double odd_square_{};
  double turns_begin_{no_reading};
  double turned_run_{};
};

/// Several lengths of segment at once; the longest that was averaged often enough is used.
class WelchLadder {
 public:
  WelchLadder(double rate, std::vector<std::size_t> lengths);
  void put(double value) {
    for (auto& stream : streams_) stream.put(value);
  }
  void cut() {
    for (auto& stream : streams_) stream.cut();
  }
  numerics::Spectrum best() const;  // empty when nothing filled a segment

 private:
  std::vector<numerics::WelchStream> streams_{};  // short to long
};

/// Tension in steady run, by time, by angle of the roll and by web run.
class LogSpectra {
 public:
  /// `rate` [1/s] of the rows.
  LogSpectra(const LogStand& stand, double rate);
  LogSpectra(const LogSpectra&) = delete;
  LogSpectra& operator=(const LogSpectra&) = delete;

  /// A row's tension [N] with the angle of the roll [rad] and the pressure [Pa] (not-a-number: unknown), and the web
  /// run [m].
  void put(double time, double tension, double angle, double web_run, double pressure);
  void cut();

  double rate() const { return rate_; }  // [1/s] behind the decimation
  numerics::Spectrum by_time() const { return time_.best(); }
  numerics::Spectrum by_order() const { return order_.best(); }
  numerics::Spectrum by_web() const { return web_.best(); }
  const SwingKeeper& swings() const { return swings_; }

  static constexpr double points_a_turn = 32;

 private:
  struct Sample {
    double time, tension, angle, run, pressure;
  };
  void even(const Sample& sample);
  void put_even(const Sample& sample);

  double interval_;
  double rate_;
  numerics::Decimator decimator_;
  std::vector<Sample> late_{};  // samples of the decimator's delay
  std::size_t late_at_{};
  std::size_t late_filled_{};
  bool has_last_{};
  Sample last_{};
  double grid_{};
  WelchLadder time_, order_, web_;
  SwingKeeper swings_;
  numerics::EvenSteps by_angle_, by_run_;
};

}  // namespace holdback::field
