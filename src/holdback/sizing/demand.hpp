// What a job asks of any brake, over the roll from core to full: computed once a job, then met by every fit.
#pragma once

#include <vector>

#include "holdback/model/job.hpp"
#include "holdback/results/choice.hpp"
#include "holdback/sizing/site.hpp"

namespace holdback::sizing {

/// Radii at which every limit is checked, core and full included.
inline constexpr int radius_count = 65;

/// A job over its roll. Vectors have one entry a radius, from core to full.
struct Demand {
  std::string job{};
  double speed{};  // [m/s]
  TensionTarget tension{};
  double tolerance{};                       // [1]
  double stop_time{};                       // [s] from the job's speed
  double emergency_stop_time{};             // [s] from the job's speed
  double ramp_time{};                       // [s] to the job's speed
  double web_length{};                      // [m]
  double web_mass{};                        // [kg]
  double core_mass{};                       // [kg]
  std::vector<double> radius{};             // [m]
  std::vector<double> rotational_speed{};   // [rad/s] at the job's speed
  std::vector<double> inertia{};            // [kg·m²] without the brakes' discs
  std::vector<double> run_acceleration{};   // [rad/s²] of a thinning roll at constant speed
  std::vector<double> ramp_acceleration{};  // [rad/s²] at the end of the ramp, where thinning adds most
  std::vector<double> share_of_length{};    // [1] web that lies around this radius, over the whole
};

/// Lays a job out over its roll. The job must have passed plausibility: positive speed, tension and build-up.
Demand demand_of(const Job& job, const Site& site, int radii = radius_count);

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
