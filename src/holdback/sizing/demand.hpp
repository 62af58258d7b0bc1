// What a job asks of any brake, over the roll from core to full: computed once a job, then met by every fit.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "holdback/model/job.hpp"
#include "holdback/results/choice.hpp"
#include "holdback/sizing/site.hpp"

namespace holdback::sizing {

/// Radii at which every limit is checked, core and full included. A multiple of eight, so that a pass over the roll
/// fills wide registers.
inline constexpr int radius_count = 64;

/// One number a radius, from core to full.
using OverRoll = std::array<double, radius_count>;

/// Torque put through the innermost layer of the roll, where it comes closest to what the roll was wound to carry.
struct Cinching {
  double arm{};             // [m] torque for each newton of tension
  double inertia_torque{};  // [N·m] to stop the web outside of the core
  double wound_torque{};    // [N·m] that the roll carries
  double diameter{};        // [m]
  LoadCase load_case{};
};

/// A job over its roll.
struct Demand {
  std::string job{};
  double speed{};  // [m/s]
  TensionTarget tension{};
  double tolerance{};                  // [1]
  double stop_time{};                  // [s] from the job's speed
  double emergency_stop_time{};        // [s] from the job's speed
  double ramp_time{};                  // [s] to the job's speed
  double web_length{};                 // [m]
  double web_mass{};                   // [kg]
  double core_mass{};                  // [kg]
  OverRoll radius{};                   // [m]
  OverRoll inverse_radius{};           // [1/m]
  OverRoll rotational_speed{};         // [rad/s] at the job's speed
  OverRoll inertia{};                  // [kg·m²] without the brakes' discs
  OverRoll web_inertia{};              // [kg·m²] of the web alone
  OverRoll run_acceleration{};         // [rad/s²] of a thinning roll at constant speed
  OverRoll ramp_acceleration{};        // [rad/s²] at the end of the ramp, where thinning adds most
  OverRoll share_of_length{};          // [1] web that lies around this radius, over the whole
  std::vector<WindowBound> bounds{};   // of the tension, each where it binds hardest
  std::optional<Cinching> cinching{};  // when the tension it was wound with is known
  std::optional<ShaftFacts> shaft{};   // when the stand describes its shaft
};

/// Lays a job out over its roll. The job must have passed plausibility: positive speed, tension and build-up.
Demand demand_of(const Job& job, const Site& site);

/// Brake torque [N·m] of every case at radius index `i`, with all inertia [kg·m²] and drag [N·m] on the shaft.
/// Stops leave out the thinning term: it eases them and is gone at their end.
struct CaseTorques {
  double run{};
  double ramp{};
  double stop{};
  double emergency_stop{};
  double hold{};
};
CaseTorques case_torques(const Demand& demand, const Limits& limits, std::size_t i, double inertia, double drag);

}  // namespace holdback::sizing
