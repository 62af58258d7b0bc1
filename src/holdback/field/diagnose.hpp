// A log judged: rows go in block by block, once, in the order of time; the diagnosis comes out at the end. Memory stays
// below some 50 MB whatever the length.
//
//   rows → buckets of a fraction of a second → phases (log_phases) → tension by phase, stops and ramps (log_changes),
//   friction (friction_track), pressure (plateaus), and in steady run spectra by time, turn and web (orders, swings)
//   → peaks with their sources (log_peaks) → causes (log_causes)
#pragma once

#include <memory>

#include "holdback/field/log_stand.hpp"
#include "holdback/model/log.hpp"
#include "holdback/results/diagnosis.hpp"

namespace holdback::field {

class LogJudge {
 public:
  explicit LogJudge(LogStand stand);
  ~LogJudge();
  LogJudge(const LogJudge&) = delete;
  LogJudge& operator=(const LogJudge&) = delete;

  /// The next rows. Every block must have the channels of the first; `time` and `tension` must be there.
  /// std::invalid_argument else, or when a list is not as long as `rows`.
  void put(const LogBlock& block);

  /// Everything that was found. To be called once, after the last block.
  Diagnosis finish();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace holdback::field
