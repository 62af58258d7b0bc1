#include "holdback/draw/loop_words.hpp"

#include <algorithm>
#include <cmath>

namespace holdback::draw {

std::string name_of_loop(const Tuning& tuning, std::size_t loop) {
  if (loop >= tuning.loops.size()) return {};
  const std::string schedule = tuning.loops[loop].schedule == GainSchedule::fixed ? "fixed" : "scheduled";
  return (tuning.from_file && loop + 1 == tuning.loops.size() ? "stand file, " : "") + schedule;
}

std::string joined(const std::string& head, const std::string& sentence) {
  if (sentence.empty()) return head;
  return head + (sentence[0] >= 'A' && sentence[0] <= 'Z' ? ". " : ": ") + sentence;
}

double decibels(double factor) { return factor > 0 ? 20 * std::log10(factor) : 0; }

WindowEnds window_at(const TensionTarget& tension, double setpoint) {
  if (!(tension.setpoint > 0)) return {tension.low, tension.high};
  return {tension.low * (setpoint / tension.setpoint), tension.high * (setpoint / tension.setpoint)};
}

bool setpoint_moves(const RunTrace& trace) {
  const auto& all = trace.setpoint;
  return std::any_of(all.begin(), all.end(),
                     [&](double each) { return std::abs(each - all.front()) > 1e-9 * std::abs(all.front()); });
}

}  // namespace holdback::draw
