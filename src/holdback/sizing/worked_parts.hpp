// What the topics of a worked job share: the case, the terms that come back again and again, and the steps that several
// topics lean on, each written down once.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "holdback/results/worked.hpp"
#include "holdback/sizing/cooling_curve.hpp"
#include "holdback/sizing/survey.hpp"

namespace holdback::sizing {

inline constexpr const char* by_definition = "by definition";
inline constexpr const char* derived_here = "derived";
inline constexpr const char* by_practice = "common practice, no source";

/// One job on one fit, with all that its check went through. Points into the stand and the fit.
struct WorkedCase {
  WorkedCase(const Stand& stand, const Job& a_job, const JobFit& a_fit, const Candidate& a_candidate);

  const Job& job;
  const JobFit& fit;
  Site site;
  Candidate candidate;
  const Brake& brake;
  const Grade& grade;
  Demand demand;
  DiscOverRoll disc;
  Pass pass;
  Survey survey;
  double engaged;    // [1] pairs on all brakes
  double weakest;    // [N·m/Pa] all engaged pairs, lowest friction, cold
  double strongest;  // [N·m/Pa] all engaged pairs, highest friction, cold

  static constexpr std::size_t core = 0;
  static constexpr std::size_t full = radius_count - 1;

  /// The limit, or nothing when it was not judged.
  const Limit* limit(LimitId id) const;
  /// Index of the radius of a diameter that the check gave [m].
  std::size_t at(double diameter) const;
  CaseTorques torques(std::size_t i) const;
  double torque(LoadCase load_case, std::size_t i) const;
  double inertia(std::size_t i) const { return demand.inertia[i] + survey.disc_inertia; }
  double friction_left(std::size_t i) const;
  /// "full roll", "core", or "in between".
  static std::string place(std::size_t i);
  /// What a symbol carries that belongs to this place: "_full", "_core", "_31".
  static std::string at_place(std::size_t i);

  // Terms.
  WorkedTerm tension() const;
  WorkedTerm speed() const;
  WorkedTerm width() const;
  WorkedTerm caliper() const;
  WorkedTerm basis_weight() const;
  WorkedTerm full_diameter() const;
  WorkedTerm core_diameter() const;
  WorkedTerm diameter(std::size_t i) const;
  WorkedTerm drag() const;
  WorkedTerm inertia_term(std::size_t i) const;
  WorkedTerm torque_term(LoadCase load_case, std::size_t i) const;
  WorkedTerm brakes() const;
  WorkedTerm pairs() const;
  WorkedTerm threshold() const;
  WorkedTerm ambient() const;
  WorkedTerm temperature(std::size_t i) const;
  WorkedTerm friction_left_term(std::size_t i) const;
  WorkedTerm weakest_term() const;
  WorkedTerm strongest_term() const;
  WorkedTerm capacity() const;
  WorkedTerm emergency_stop_time() const;
  WorkedTerm friction_radius_term() const;
  WorkedTerm pair_term() const;
};

/// Steps in the order in which they were added, none of them twice.
class WorkedSteps {
 public:
  void add(WorkedStep step) { steps_.push_back(std::move(step)); }
  /// The same, every @ of formula and result filled with what symbols of this place carry.
  void add_at(std::size_t i, WorkedStep step);
  /// True when this is asked with the key for the first time.
  bool once(const std::string& key) { return known_.insert(key).second; }
  std::vector<WorkedStep> take() { return std::move(steps_); }

 private:
  std::vector<WorkedStep> steps_{};
  std::set<std::string> known_{};
};

/// Symbol of the torque available in a stop or at rest.
inline std::string available_symbol(LoadCase load_case) {
  if (load_case == LoadCase::hold) return "M_av_hold";
  return load_case == LoadCase::stop ? "M_av_stop" : "M_av_es";
}

// Steps on which others lean; a second call with the same place adds nothing.
void add_inertia(WorkedSteps& steps, const WorkedCase& c, std::size_t i);
void add_torque(WorkedSteps& steps, const WorkedCase& c, LoadCase load_case, std::size_t i);
void add_disc_power(WorkedSteps& steps, const WorkedCase& c, std::size_t i);
void add_balance(WorkedSteps& steps, const WorkedCase& c, std::size_t i);
void add_fade(WorkedSteps& steps, const WorkedCase& c, std::size_t i);

// Bounds of the window that web path and roll set, and what cinching compares.
void add_path_bound(WorkedSteps& steps, const WorkedCase& c, const WindowBound& bound);
void add_cinching(WorkedSteps& steps, const WorkedCase& c);

// The topics.
void add_roll(WorkedSteps& steps, const WorkedCase& c);
void add_target(WorkedSteps& steps, const WorkedCase& c);
void add_window(WorkedSteps& steps, const WorkedCase& c);
void add_torques(WorkedSteps& steps, const WorkedCase& c);
void add_heat(WorkedSteps& steps, const WorkedCase& c);
void add_brake(WorkedSteps& steps, const WorkedCase& c);
void add_pressures(WorkedSteps& steps, const WorkedCase& c);
void add_stops(WorkedSteps& steps, const WorkedCase& c);
void add_wear(WorkedSteps& steps, const WorkedCase& c);
void add_shaft(WorkedSteps& steps, const WorkedCase& c);
void add_margins(WorkedSteps& steps, const WorkedCase& c);

}  // namespace holdback::sizing
