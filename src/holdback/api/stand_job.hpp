// A job of a stand on its fit, made ready to move: what sizing chose becomes what dynamics runs.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "holdback/api/answer.hpp"
#include "holdback/dynamics/run.hpp"
#include "holdback/dynamics/tune.hpp"
#include "holdback/sizing/choose.hpp"
#include "holdback/sizing/plan.hpp"

namespace holdback::api {

/// What stands in the way of moving this job: a web without stiffness, a scenario that is not there or asks for what
/// the job's roll or the fit does not have, a control without its sensor.
Problems unmovable(const Stand& stand, const Request& request);

class StandJob {
 public:
  /// Chooses the fit as `size` does. Keeps a reference to the stand, which must be free of errors.
  /// std::invalid_argument when no candidate is left.
  StandJob(const Stand& stand, const Request& request);

  const Job& job() const { return *job_; }
  const Fit& fit() const { return fit_; }
  int pairs() const { return facts_.pairs; }
  const JobFit& facts() const { return facts_; }
  const TensionTarget& tension() const { return facts_.tension; }
  const std::vector<Note>& assumptions() const { return assumptions_; }
  const std::vector<Note>& cautions() const { return cautions_; }

  /// The plant under a control: a dancer hangs in the web only where it controls. `each` follows every idler.
  dynamics::Plant plant(ControlKind kind, bool each) const;

  /// Whether the idlers' swings are slow enough to be followed one by one.
  bool idlers_matter(ControlKind kind) const;

  /// The loop's settings: those of the stand file where it gives them, else tuned; none for a hand and for following
  /// the diameter.
  std::optional<dynamics::LoopSettings> settings(ControlKind kind) const;
  std::optional<dynamics::LoopSettings> settings_in_file(ControlKind kind) const;
  dynamics::TuneRequest tune_request(ControlKind kind) const;

  /// Makes a controller of that kind each time it is called.
  std::function<std::unique_ptr<dynamics::Controller>()> controller(
      ControlKind kind, const std::optional<dynamics::LoopSettings>& settings) const;

  dynamics::RigSetup rig(ControlKind kind, bool each) const;
  dynamics::RunBounds bounds() const;
  dynamics::LineHabits habits() const;
  Scenario scenario(const std::string& name) const;  // by its name; empty: the usual one
  dynamics::RunRequest run_request(ControlKind kind, const Scenario& scenario, bool each) const;

 private:
  dynamics::HeatPlant heat() const;
  dynamics::Believed believed() const;
  double retardation(const dynamics::Plant& plant) const;  // [s] of the web
  double friction_left() const;                            // mean over the roll, in the state that repeats
  std::size_t idler_called(const std::string& name, std::size_t otherwise) const;

  const Stand& stand_;
  const Job* job_{};
  sizing::Site site_{};
  sizing::Candidate candidate_{};
  sizing::Demand demand_{};
  Fit fit_{};
  JobFit facts_{};
  JobPlan card_{};
  std::vector<Note> assumptions_{};
  std::vector<Note> cautions_{};
};

/// Values that a sensor has in a stand file with an empty table.
LoadCell usual_load_cell();
Dancer usual_dancer();
DiameterSensor usual_diameter_sensor();

}  // namespace holdback::api
