// The stand as the limits see it: the pressures that can be set, the air around the disc, the bounds and reserves.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "holdback/model/stand.hpp"
#include "holdback/physics/brake.hpp"
#include "holdback/results/choice.hpp"

namespace holdback::sizing {

/// What every job and every fit of a stand share.
struct Site {
  double drag{};           // [N·m] of the shaft, brakes not included
  double shaft_inertia{};  // [kg·m²]
  double ambient{};        // [K]
  double air_pressure{};   // [Pa] absolute, by altitude
  Guard guard{};
  std::optional<double> guard_factor{};   // [1] where measured
  std::optional<double> guard_opening{};  // [m²] where known
  double air_ceiling{};                   // [Pa] the lower of supply and regulator
  double air_floor{};                     // [Pa] lowest pressure the regulator controls
  double pressure_step{};                 // [Pa] resolution and hysteresis together: how far a setting may be off
  double hysteresis{};                    // [Pa]
  Limits limits{};
  Line line{};
  WebPath path{};
  std::vector<Idler> idlers{};
  std::optional<Shaft> shaft{};
  Uncertainty uncertainty{};
};
Site site_of(const Stand& stand);

class CoolingCurve;

/// One fit to try, with what follows from it alone. Points into a stand, which must outlive it.
struct Candidate {
  const Brake* brake{};
  const Grade* grade{};
  int brakes{1};
  int order{};                                    // of the brake in the file
  physics::TorquePerPressure pair{};              // of one pair, nominal friction, cold
  double friction_radius{};                       // [m]
  std::shared_ptr<const CoolingCurve> cooling{};  // of one disc on the site
};

/// A fit made ready. Without a curve of the same brake on the same site one is made.
Candidate candidate_of(const Brake& brake, const Grade& grade, int brakes, const Site& site, int order = 0,
                       std::shared_ptr<const CoolingCurve> cooling = nullptr);

/// Every fit a stand offers: brake by brake, number by number, grade by grade, as they stand in the file.
std::vector<Candidate> candidates(const Stand& stand, const Site& site);

Fit fit_of(const Candidate& candidate);

/// Highest brake pressure [Pa] of a candidate: the lowest of supply, regulator and the maker's rating.
double pressure_ceiling(const Site& site, const Brake& brake);

/// Lowest dependable brake pressure [Pa]: the regulator's floor, and the threshold plus the hysteresis above which pads
/// surely bite again after a release.
double pressure_floor(const Site& site, const Brake& brake);

}  // namespace holdback::sizing
