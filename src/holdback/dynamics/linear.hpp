// The stand as a linear system at one diameter: the exact derivative of the equations of motion at steady running, its
// modes, and the loop that a controller closes over it with dead time, sampling and filters.
#pragma once

#include <complex>
#include <vector>

#include "holdback/dynamics/control.hpp"
#include "holdback/dynamics/plant.hpp"
#include "holdback/numerics/frequency.hpp"
#include "holdback/numerics/linear.hpp"

namespace holdback::dynamics {

using numerics::Complex;

/// Small changes about steady running at one radius: dx/dt = A x + b p_set + r e, x the speeds, the pressure at the
/// brake, the web of each span and the dancer; e the runout, which turns with the roll. The slow drift of radius, heat
/// and wear is left out.
struct LinearStand {
  numerics::SquareMatrix a{};
  std::vector<double> by_pressure{};    // b
  std::vector<Complex> by_runout{};     // r, at the runout's frequency
  std::vector<double> tension{};        // row that gives the tension of the first span [N]
  std::vector<double> cell{};           // row that gives what a load cell weighs [N]
  std::vector<double> place{};          // row that gives the dancer's place [1]; empty without one
  Complex tension_by_runout{};          // [N/m] the part that e makes at once, through the first span's length
  Complex cell_by_runout{};             // [N/m]
  double runout_frequency{};            // [rad/s] n ω
  double speed{};                       // [m/s]
  double radius{};                      // [m]
  std::vector<numerics::Mode> modes{};  // by rising frequency
};

/// The stand at a line speed [m/s] > 0, a tension [N] > 0 and a radius [m], with a share of its brake [1].
LinearStand linear_stand(const Plant& plant, double line_speed, double tension, double radius, double brake_share);

/// Of all that swing, the slowest; the mode nearest to the roll's own where nothing swings.
numerics::Mode slowest_swing(const LinearStand& stand);

/// Change of tension by set pressure [N/Pa], of the cell's reading, and of the dancer's place [1/Pa], at s [rad/s].
Complex tension_response(const LinearStand& stand, Complex s);
Complex cell_response(const LinearStand& stand, Complex s);
Complex place_response(const LinearStand& stand, Complex s);

/// What a loop has beside stand and controller.
struct LoopDelays {
  double dead_time{};    // [s] of the air, and of computing
  double sample_time{};  // [s]
  double cell_lag{};     // [s] filter of the measurement; a dancer has none
};

/// What the controller is at s: change of pressure [Pa] by the error of what it holds ([N] of tension or [1] of the
/// dancer's place). `setpoint` [N] and the torque per pressure [N·m/Pa] as the controller believes them, at a radius
/// [m].
Complex controller_response(Held held, const LoopSettings& settings, const Believed& believed, double setpoint,
                            double radius, Complex s);

/// The whole loop at s, for negative feedback.
numerics::Response loop_of(const LinearStand& stand, Held held, const LoopSettings& settings, const LoopDelays& delays,
                           const Believed& believed, double setpoint);

/// Margins of that loop, with its modes minded.
numerics::LoopMargins margins_of(const LinearStand& stand, Held held, const LoopSettings& settings,
                                 const LoopDelays& delays, const Believed& believed, double setpoint);

/// Tension in the first span per metre of runout [N/m] with the loop closed; null settings: open.
double runout_tension_of(const LinearStand& stand, Held held, const LoopSettings* settings, const LoopDelays& delays,
                         const Believed& believed, double setpoint);

}  // namespace holdback::dynamics
