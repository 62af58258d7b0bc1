// Temperatures of one brake: four bodies of even temperature, joined in a row, calipers – pads – disc – hub. A brake
// that runs the same jobs over and over comes to a state that repeats; how hot that gets, how long it takes to get
// there and how long to cool down afterwards is what these functions answer.
//
//   C_d dΘ_d/dt = (1 − p) Q + G_pd (Θ_p − Θ_d) + G_hd (Θ_h − Θ_d) − hA (Θ_d − Θ_a) − εσA (Θ_d⁴ − Θ_a⁴)
//   C_p dΘ_p/dt = p Q + G_pd (Θ_d − Θ_p) + G_cp (Θ_c − Θ_p)
//   C_c dΘ_c/dt = G_cp (Θ_p − Θ_c) − G_ca (Θ_c − Θ_a)
//   C_h dΘ_h/dt = G_hd (Θ_d − Θ_h) − G_ha (Θ_h − Θ_a)
//
// Method: SDIRK, order 4, L-stable, stiffly accurate, step size by the embedded order 3 [hairer1996]. Only radiation is
// not linear and only the disc radiates, so each stage is the elimination of a row and one quartic in Θ_d, which has
// exactly one root. Each step keeps its estimated error of any node below 1e-4 K + 1e-7 Θ; the true error is far less,
// and closed forms are met within 2e-5 K (tests).
//
// Below zero every coefficient, capacity, power, duration and temperature counts as zero, and a duration below 1e-12 s;
// capacities are at least 1e-6 J/K; nothing above 1e9 K, 1e12 W/K or 1e15 J/K, W or s is believed.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

namespace holdback::physics {

/// The bodies, in the order of the arrays below.
enum class ThermalNode : std::size_t { disc, pads, calipers, hub };

using NodeTemperatures = std::array<double, 4>;  // [K] by ThermalNode

/// What a brake is to heat. All couplings may be zero: what is not joined is left alone.
struct ThermalNodes {
  std::array<double, 4> capacity{};  // [J/K] by ThermalNode
  double pads_disc{};                // [W/K] between nodes
  double calipers_pads{};            // [W/K]
  double hub_disc{};                 // [W/K]
  double calipers_air{};             // [W/K] to ambient
  double hub_air{};                  // [W/K] to ambient, bearings and shaft
  double pad_share{};                // [1] 0..1 of the friction heat; the rest goes into the disc
  double radiating_area{};           // [m²] of the disc
  double emissivity{};               // [1] 0..1
};

/// A stretch of time with one cooling and a power that changes evenly.
struct ThermalSegment {
  double duration{};     // [s] ≥ 0
  double power{};        // [W] ≥ 0, friction, this brake, at the start
  double power_end{};    // [W] ≥ 0, at the end
  double conductance{};  // [W/K] ≥ 0, disc to ambient by convection, guard included
};

/// A temperature and when it was.
struct TemperatureAt {
  double temperature{};  // [K]
  double time{};         // [s] from the start of the first segment
};

/// A state that comes back after all segments.
struct PeriodicState {
  NodeTemperatures start{};                // [K] at the start of the first segment
  std::array<TemperatureAt, 4> highest{};  // by ThermalNode
  std::array<TemperatureAt, 4> lowest{};   // by ThermalNode
};

/// dΘ/dt of each node [K/s] at a friction power [W] and a conductance disc to ambient [W/K]. Derived; balance above.
NodeTemperatures heat_rates(const ThermalNodes& nodes, const NodeTemperatures& state, double power, double conductance,
                            double ambient);

/// The state after one segment [K]; the state itself for a duration of zero.
NodeTemperatures advance(const ThermalNodes& nodes, const NodeTemperatures& state, const ThermalSegment& segment,
                         double ambient);

/// The states at the end of each segment [K], one after the other.
std::vector<NodeTemperatures> trajectory(const ThermalNodes& nodes, const NodeTemperatures& state,
                                         const std::vector<ThermalSegment>& segments, double ambient);

/// The state that repeats when the segments are run over and over, with the extremes of each node. Newton's method on
/// the map from start to end, its Jacobian carried through the steps; the map is concave and rising, so Newton's method
/// finds its only fixed point from anywhere. To 1e-6 K of the map. A node that has no way to the air and takes part of
/// the power is infinitely hot; one that has neither stays at ambient. Ambient throughout when no segment lasts.
PeriodicState periodic_state(const ThermalNodes& nodes, const std::vector<ThermalSegment>& segments, double ambient);

/// Time constant [s] of the slowest mode of the disc and all that is joined to it, radiation linearised at `state`: the
/// largest τ with det(K − C/τ) = 0. Infinite when none of them has a way to the air. Derived; for one node C/hA
/// [incropera], ex. 5.1.
double thermal_time_constant(const ThermalNodes& nodes, double conductance, const NodeTemperatures& state);

/// Time [s] from cold (all at ambient), running the segments over and over, until the disc first reaches `share` [1] of
/// its highest rise in the periodic state. Zero for a share ≤ 0 or when nothing rises; infinite for a share ≥ 1, which
/// is never quite reached, when there is no periodic state, or when 10 000 runs of the segments are not enough.
double time_to_reach_share(const ThermalNodes& nodes, const std::vector<ThermalSegment>& segments, double ambient,
                           double share);

/// Time [s] at standstill without power, `conductance` [W/K] then, until the hottest node is down to `temperature` [K].
/// Zero when it is already; infinite when ambient is not below `temperature` or a node never gets there (1e9 s).
double time_to_cool(const ThermalNodes& nodes, double conductance, const NodeTemperatures& state, double ambient,
                    double temperature);

}  // namespace holdback::physics
