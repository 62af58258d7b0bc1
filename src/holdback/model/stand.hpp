// The stand: everything one stand file says.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/model/brake.hpp"
#include "holdback/model/control.hpp"
#include "holdback/model/job.hpp"
#include "holdback/model/line.hpp"
#include "holdback/model/path.hpp"
#include "holdback/model/problem.hpp"
#include "holdback/model/roll.hpp"
#include "holdback/model/scenario.hpp"
#include "holdback/model/shaft.hpp"
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
  double lag{};               // [s] ≥ 0, time constant of the pressure at the brake behind a step of the setting
  double dead_time{};         // [s] ≥ 0, before anything of the step arrives
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
  double touch_temperature{};       // [K] of the disc below which the guard may be opened
  double shaft_safety{};            // [1] least safety of the shaft against fatigue
  double whirl_share{};             // [1] highest share of the first whirl speed at which the shaft may turn
  double least_bearing_life{};      // [s] running time that the shaft's bearings must last
  bool operator==(const Limits&) const = default;
};

/// How far an input may lie from its value, ± around it, every value between as likely as another (JCGM 100, 4.3.7).
/// Friction goes by the band of its grade.
struct Uncertainty {
  double pressure{};  // [1] of the pressure set, beside the regulator's own resolution and hysteresis
  double drag{};      // [1]
  double tension{};   // [1] of the setpoint
  double caliper{};   // [1]
  double ambient{};   // [K]
  double cooling{};   // [1]
  bool operator==(const Uncertainty&) const = default;
};

struct Stand {
  std::string title{};
  std::string currency{};
  double drag{};           // [N·m] ≥ 0, bearings and seals of the unwind shaft
  double shaft_inertia{};  // [kg·m²] ≥ 0, shaft with chucks, without core and discs
  Guard guard{Guard::mesh};
  std::optional<double>
      guard_factor{};  // [1] 0..1, convective cooling behind the guard over that in free air; else by its openings
  std::optional<double> guard_opening{};  // [m²] free area of the guard's openings; else by kind
  double ambient{};                       // [K] air around the disc
  double altitude{};                      // [m] above sea level, geometric
  AirSupply air{};
  Line line{};
  WebPath path{};
  std::vector<Idler> idlers{};
  std::optional<Shaft> shaft{};
  Control control{};
  std::optional<LoadCell> load_cell{};
  std::optional<Dancer> dancer{};
  std::optional<DiameterSensor> diameter_sensor{};
  std::vector<Scenario> scenarios{};
  Uncertainty uncertainty{};
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
