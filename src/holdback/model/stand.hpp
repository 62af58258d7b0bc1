// The stand: everything one stand file says.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/model/brake.hpp"
#include "holdback/model/job.hpp"
#include "holdback/model/line.hpp"
#include "holdback/model/problem.hpp"
#include "holdback/model/roll.hpp"
#include "holdback/model/web.hpp"

namespace holdback {

/// How the disc is guarded: an open mesh with an open base lets free air through, a closed box starves the disc.
enum class Guard { none, mesh, partly_closed, closed };

/// Air supply and the regulator that sets the brake pressure. All pressures are gauge.
struct AirSupply {
  double supply_pressure{};   // [Pa] > 0, lowest pressure the plant's air falls to
  double lowest_pressure{};   // [Pa] ≥ 0, lowest pressure the regulator controls
  double highest_pressure{};  // [Pa] > lowest_pressure, top of the regulator's range
  double resolution{};        // [Pa] ≥ 0, smallest step that is set and kept
  double hysteresis{};        // [Pa] ≥ 0, gap between rising and falling setting
  bool operator==(const AirSupply&) const = default;
};

/// What counts as good enough: bounds that are the user's own, and the reserve below which a limit is called tight.
struct Limits {
  double tension_tolerance{};       // [1] accepted ± around the setpoint in steady run
  double reserve{};                 // [1] a limit with less in hand than this is tight
  double stop_tension{};            // [1] share of the setpoint that must remain during a normal stop
  double emergency_stop_tension{};  // [1] share of the setpoint that must remain during an emergency stop
  double hold_tension{};            // [1] share of the setpoint to be held at standstill
  double least_pad_life{};          // [s] running time on one job
  double yield_share{};             // [1] highest share of yield for a recommended tension
  double strain_limit{};            // [1] highest strain for a recommended tension
  bool operator==(const Limits&) const = default;
};

struct Stand {
  std::string title{};
  std::string currency{};
  double drag{};           // [N·m] ≥ 0, bearings and seals of the unwind shaft
  double shaft_inertia{};  // [kg·m²] ≥ 0, shaft with chucks, without core and discs
  Guard guard{Guard::mesh};
  std::optional<double>
      guard_factor{};  // [1] 0..1, convective cooling behind the guard over that in free air; else by kind
  double ambient{};    // [K] air around the disc
  double altitude{};   // [m] above sea level, geometric
  AirSupply air{};
  Line line{};
  std::vector<Web> webs{};
  std::vector<Roll> rolls{};
  std::vector<Job> jobs{};
  std::vector<Brake> brakes{};
  Limits limits{};
  bool operator==(const Stand&) const = default;
};

Problems problems_of(const AirSupply& air);

/// Everything that two fields together show to be wrong, over the whole stand. Single-field domains are checked when
/// the file is read; what needs physics (length against diameter) is sizing's plausibility.
Problems problems_of(const Stand& stand);

}  // namespace holdback
