// Groups of causes, each looking at one part of the evidence; log_causes.cpp puts them in order.
#pragma once

#include <vector>

#include "holdback/field/log_facts.hpp"

namespace holdback::field {

/// What every group sees.
struct Evidence {
  const LogStand& stand;
  const LogFacts& facts;
  const SwingVerdict& swing;
  const Diagnosis& diagnosis;
};

using Causes = std::vector<LikelyCause>;

void causes_of_peaks(const Evidence& evidence, Causes& causes);     // runout, off centre, idler, hum
void causes_of_swings(const Evidence& evidence, Causes& causes);    // hunting, stick-slip
void causes_of_friction(const Evidence& evidence, Causes& causes);  // pairs, grade, glaze, fade, gauge
void causes_of_setting(const Evidence& evidence, Causes& causes);   // regulator, card, sensors, loop too loose

inline Amount force(double value) { return {value, Quantity::force}; }
inline Amount ratio(double value) { return {value, Quantity::ratio}; }
inline Amount frequency(double value) { return {value, Quantity::frequency}; }
inline Amount length(double value) { return {value, Quantity::short_length}; }
inline Amount duration(double value) { return {value, Quantity::duration}; }
inline Amount pressure(double value) { return {value, Quantity::pressure}; }
inline Amount speed(double value) { return {value, Quantity::speed}; }
inline Amount count(double value) { return {value, Quantity::count}; }
inline Amount number(double value) { return {value, Quantity::number}; }
inline Amount temperature(double value) { return {value, Quantity::temperature}; }
inline Amount temperature_difference(double value) { return {value, Quantity::temperature_difference}; }

/// 0 at `from`, 1 at `full`.
inline double rises(double value, double from, double full) {
  return std::clamp((value - from) / (full - from), 0.0, 1.0);
}

}  // namespace holdback::field
