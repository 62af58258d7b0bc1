// What `size` answers: the fit that covers the mix, each job on it, what falls out, and what would bring it in.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/quantity.hpp"
#include "holdback/results/likelihood.hpp"
#include "holdback/results/limit.hpp"
#include "holdback/results/shaft.hpp"
#include "holdback/results/thermal.hpp"
#include "holdback/results/window.hpp"

namespace holdback {

/// One way to equip the stand: so many brakes of a model, all with one friction grade.
struct Fit {
  std::string brake{};
  std::string grade{};
  int brakes{1};  // on the shaft
  int pairs{1};   // fitted to each brake
  bool operator==(const Fit&) const = default;
};

/// Where the tension of a job comes from, and the window around it. All tensions are for the whole width [N].
struct TensionTarget {
  double setpoint{};          // [N]
  double low{};               // [N] low end of the window
  double high{};              // [N] high end of the window
  bool asked{};               // the job states its tension; otherwise it is the recommended one
  double recommended{};       // [N] 0 when nothing is known to recommend from
  double recommended_low{};   // [N]
  double recommended_high{};  // [N]
  std::string governed_by{};  // of the recommended one: "strength", "strain" or "table"; empty when there is none
  double web_strength{};      // [N] tension at yield; 0 when unknown
};

/// The roll as computed.
struct RollFacts {
  double length{};        // [m] web on the full roll
  double mass{};          // [kg] web and core, full
  double inertia_full{};  // [kg·m²] all that turns, discs included
  double inertia_core{};  // [kg·m²]
  double running_time{};  // [s] one roll at the job's speed
};

/// One kind of stop, at the diameter where it is hardest.
struct StopFacts {
  double time{};                 // [s] asked for, from the job's speed
  double torque_needed{};        // [N·m]
  double torque_available{};     // [N·m] at the lowest friction and the highest pressure
  double diameter{};             // [m] where the two come closest
  double energy{};               // [J] into all discs, highest over the roll
  double bulk_temperature{};     // [K] of the disc after a stop from the steady state
  double surface_temperature{};  // [K] of the disc's face, highest in the stop
  double slack{};                // [m] web that is thrown when the brake cannot hold the roll back; 0 when it can
  double slack_diameter{};       // [m] where it is thrown; 0 without slack
  double shortest_taut_stop{};   // [s] from the job's speed with the web just taut over the whole roll
  double shortest_stop{};        // [s] with the asked share of the setpoint kept; infinity is given as 0 with `never`
  bool never{};                  // the brake cannot keep the asked tension even without a stop
  bool runs_away{};              // nothing stops the roll at some diameter: no slack and no taut stop can be given
};

/// A web break at running speed, at the diameter where the roll coasts longest.
struct WebBreakFacts {
  double turns{};     // [rad]
  double time{};      // [s]
  double diameter{};  // [m]
  bool runs_away{};   // nothing stops the roll; the three above are then 0
};

/// Wear of the pads by one job run alone.
struct WearFacts {
  double life{};                          // [s] running time until the pads are worn
  double web_length{};                    // [m]
  double rolls{};                         // [1]
  double weeks{};                         // [s] calendar time at the line's shifts
  double pads_per_year{};                 // [1] all pads that wear, at the line's shifts
  std::optional<double> cost_per_year{};  // in the stand's currency
};

/// One job on one fit, with the pairs to engage.
struct JobFit {
  std::string job{};
  int pairs{};                  // to engage on each brake
  State state{State::holds};    // worst of the limits
  std::vector<Limit> limits{};  // in the order of LimitId
  LimitId binding{};            // limit with the least in hand beyond its reserve
  double margin{};              // [1] of the binding limit
  double pressure_full{};       // [Pa] nominal friction, full roll
  double pressure_core{};       // [Pa] nominal friction, at the core
  double lowest_tension{};      // [N] that can be reached at the core
  double slip_power{};          // [W] all brakes, steady run, highest over the roll
  double hottest{};             // [K] steady disc temperature
  double hottest_diameter{};    // [m]
  TensionTarget tension{};
  RollFacts roll{};
  StopFacts stop{};
  StopFacts emergency_stop{};
  WebBreakFacts web_break{};
  WearFacts wear{};
  TensionWindow window{};
  std::optional<ThermalFacts> thermal{};   // of the recommended fit
  std::optional<ShaftFacts> shaft{};       // when the stand describes its shaft
  std::optional<Likelihood> likelihood{};  // of the recommended fit
  std::vector<Note> notes{};               // assumptions met and cautions, of this job
};

/// Where one job stands on one fit, in a line.
struct Standing {
  State state{};
  LimitId binding{};
  int pairs{};      // to engage on each brake
  double margin{};  // [1] of the binding limit
};

/// A fit with what it does for the mix.
struct FitResult {
  Fit fit{};
  int covered{};          // jobs without a failing limit
  int tight{};            // covered jobs with a tight limit
  double worst_margin{};  // [1] over the covered jobs
  LimitId worst_limit{};
  std::string worst_job{};
  double failing_margin{};  // [1] mean margin of the jobs that fail; 0 when none does
  double pads_per_year{};   // [1] the mix by its shares
  std::optional<double> price{};
  std::optional<double> pad_cost_per_year{};
  std::vector<JobFit> jobs{};         // in the order of the mix
  std::vector<Standing> standings{};  // in the order of the mix; when the choice is made in brief
};

enum class RemedyKind {
  slower_stop,
  slower_ramp,
  slower_speed,
  regulator,
  guard,
  more_pairs,
  other_grade,
  second_brake,
  other_brake,
  combined,  // two of the above together; tried only when none is enough alone
};

std::string_view key_of(RemedyKind kind);  // "slower_stop"
inline constexpr RemedyKind last_remedy_kind = RemedyKind::combined;

/// A change that was computed to bring a failing job in.
struct Remedy {
  RemedyKind kind{};
  Note what{};    // "stop in {0} instead of {1}"
  State state{};  // of the job after the change
  LimitId binding{};
  double margin{};                       // [1] after the change
  std::vector<std::string> jobs_lost{};  // jobs of the mix that would fall out by it
  std::vector<std::string> jobs_won{};   // other jobs that would come in by it
};

/// A job that the recommended fit does not cover.
struct Uncovered {
  std::string job{};
  Note why{};  // the binding limit in words
  std::vector<Limit> failing{};
  std::vector<Remedy> remedies{};  // least change first; empty: no single change of those tried is enough
};

/// The torque a job asks for and what the fit gives, over the roll. One entry a diameter, from core to full.
struct Envelope {
  std::string job{};
  std::vector<double> diameter{};          // [m]
  std::vector<double> run{};               // [N·m] brake torque in steady run
  std::vector<double> ramp{};              // [N·m] in a ramp up; never below zero
  std::vector<double> stop{};              // [N·m]
  std::vector<double> emergency_stop{};    // [N·m]
  std::vector<double> hold{};              // [N·m] at standstill
  std::vector<double> capacity_low{};      // [N·m] highest pressure, lowest friction
  std::vector<double> capacity_nominal{};  // [N·m]
  std::vector<double> floor{};             // [N·m] lowest pressure, highest friction
  std::vector<double> pressure{};          // [Pa] nominal friction
  std::vector<double> temperature{};       // [K] steady disc temperature
  std::vector<double> rotational_speed{};  // [rad/s]
};

/// The answer to `size`.
struct Choice {
  std::string title{};
  std::string currency{};  // of every price and cost below; empty when the stand names none
  int fits_tried{};
  bool brief{};                            // depths and remedies were left for later
  std::optional<FitResult> recommended{};  // none when the stand has no candidate
  std::optional<FitResult> next{};         // the fit it was preferred to
  Note why{};                              // why the first and not the second
  std::vector<Uncovered> uncovered{};
  std::vector<FitResult> all{};               // every fit tried, best first; jobs only when asked for
  std::optional<JobFit> job{};                // the job asked for in depth; none: the mix was asked for
  std::optional<Envelope> envelope{};         // of that job, or of the one with least in hand
  std::optional<MixLikelihood> likelihood{};  // of the mix on the recommended fit
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
