// Stops and ramps of a log: found from the phases, judged by the job's window and the stand's limits.
#pragma once

#include <vector>

#include "holdback/field/log_rows.hpp"
#include "holdback/field/log_stand.hpp"

namespace holdback::field {

/// Share of the setpoint below which the web counts as slack.
inline constexpr double slack_share = 0.03;

class ChangeFinder {
 public:
  explicit ChangeFinder(const LogStand& stand) : stand_(stand) {}

  void put(const LogBucket& bucket);
  void finish();

  const std::vector<LogChange>& changes() const { return kept_; }
  double found() const { return found_; }
  static constexpr std::size_t most = 500;

 private:
  void begin(const LogBucket& bucket);
  void look_at(const LogBucket& bucket);
  void settle(const LogBucket& bucket);
  void close();
  void judge(LogChange& change) const;

  const LogStand& stand_;
  std::vector<LogChange> kept_{};
  double found_{};
  LogChange now_{};
  bool open_{};      // the speed changes
  bool settling_{};  // it has changed, the tension may not be back yet
  double last_outside_{};
  double looked_until_{};
  double speed_before_{};
  double sure_low_{};  // [N] lowest mean of a bucket, which a single odd reading does not make
};

}  // namespace holdback::field
