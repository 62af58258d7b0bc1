// One stand under one drive, stepped through sticking and slipping, slack and the dancer's stops.
//
// Two methods, chosen by what a sample costs: explicit steps (Dormand–Prince 5) follow every swing and need about the
// time of the fastest of them; stiff steps (RODAS, order 4, exact Jacobian) cost several times as much each, but damp
// swings that are too fast to matter. Two models: one span with idlers that follow the line, or every span and idler.
#pragma once

#include <cstddef>
#include <memory>
#include <string>

#include "holdback/dynamics/motion.hpp"

namespace holdback::dynamics {

/// How the equations are stepped.
enum class Steps { explicit_steps, stiff_steps };

/// What one can see of a stand.
struct Sight {
  double time{};             // [s]
  double roll_speed{};       // [rad/s]
  double angle{};            // [rad] turned
  double radius{};           // [m]
  double rim_speed{};        // [m/s] at which web leaves the roll
  double out_of_round{};     // [m] that the surface stands out where the web leaves
  double pressure{};         // [Pa] at the brake
  double tension{};          // [N] behind the roll
  double lowest_tension{};   // [N] behind the roll, at the steps since the drive before
  double highest_tension{};  // [N]
  double cell_tension{};     // [N] that a load cell would weigh
  double nip_tension{};      // [N]
  double slack{};            // [m] of all spans
  double dancer_place{};     // [1] −1 … 1 between the stops
  double torque{};           // [N·m] of brake and drag; what holds at standstill
  double slip_work{};        // [J]
  double pull_work{};        // [J]
  Motion motion{};
};

/// Goes on in time. Keeps a reference to the plant.
class Mover {
 public:
  Mover() = default;
  Mover(const Mover&) = delete;
  Mover& operator=(const Mover&) = delete;
  virtual ~Mover() = default;

  /// Goes on to a time [s] under a drive. False when the steps failed; then `fault` says where and why.
  virtual bool advance(const Drive& drive, double to) = 0;
  virtual const Sight& sight() const = 0;
  virtual double stored() const = 0;  // [J] in roll, spans, idlers and dancer

  /// Another roll on the shaft: radius [m] and surface speed [m/s], as it was else.
  virtual void change_roll(double new_radius, double surface_speed) = 0;

  virtual std::size_t steps() const = 0;    // accepted
  virtual double stick_events() const = 0;  // how often the brake caught or let go
  virtual double dancer_hits() const = 0;   // how often the dancer met a stop
  virtual std::string fault() const = 0;    // the variable that is not finite, or what else failed
};

/// Where a stand starts.
struct Start {
  double line_speed{};    // [m/s]
  double tension{};       // [N] in the first span
  double radius{};        // [m]
  double brake_share{1};  // [1] that the first drive has
};

/// How a mover is made.
struct MoverOptions {
  double relative{1e-5};  // [1] accuracy of a step
  Steps steps{Steps::explicit_steps};
};

/// Most spans that are followed one by one; a longer path is first made shorter, see with_fewer_idlers().
inline constexpr std::size_t most_spans = 8;

/// A stand in steady running or at standstill. A plant with one span takes the small model. std::invalid_argument for a
/// plant without spans, with more than most_spans, or without stiffness.
std::unique_ptr<Mover> make_mover(const Plant& plant, const Start& start, const MoverOptions& options);

/// The plant with at most most_spans spans: idlers nearest to the nip are joined with their neighbours.
Plant with_fewer_idlers(const Plant& plant);

/// The cheaper method for samples of a period [s]: explicit unless the fastest swing turns by more than `stiff_turn`
/// within one.
struct MethodChoice {
  Steps steps{};
  double fastest{};  // [rad/s]
};
inline constexpr double stiff_turn = 22;  // [rad] where both cost the same (bench/run_stiff.cpp)
MethodChoice choose_method(const Plant& plant, double period);

}  // namespace holdback::dynamics
