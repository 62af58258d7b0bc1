// Words and numbers of control loops that pictures and texts share.
#pragma once

#include <string>

#include "holdback/results/answer.hpp"

namespace holdback::draw {

/// What a loop of the answer is called: "scheduled", "fixed", of the stand file "stand file, fixed".
std::string name_of_loop(const Tuning& tuning, std::size_t loop);

/// A head with the sentence that says more: "holds: it stays" or, when the sentence starts with a capital, "holds. It
/// stays."; the head alone when there is none.
std::string joined(const std::string& head, const std::string& sentence);

/// A factor in decibels: 20 log10. 0 when the factor is not above zero.
double decibels(double factor);

/// The window at a setpoint [N]: its ends keep their share of the setpoint when the scenario asks for another tension.
struct WindowEnds {
  double low{};
  double high{};
};
WindowEnds window_at(const TensionTarget& tension, double setpoint);

/// Whether the tension that is asked for changes within a run.
bool setpoint_moves(const RunTrace& trace);

}  // namespace holdback::draw
