// A run that somebody drives: made from a stand and a job, advanced bit by bit with what hands and buttons do, looked
// at after each. What the page draws at sixty frames a second.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "holdback/api/answer.hpp"

namespace holdback::api {

/// What is done at the beginning of an advance; what is left out stays as it is. SI.
struct LiveInputs {
  std::optional<int> pairs{};          // engaged on each brake from now on
  std::optional<double> pressure{};    // [Pa] a hand takes the regulator over and sets this
  bool automatic{};                    // the controller has it again
  std::optional<double> setpoint{};    // [N] > 0
  std::optional<double> line_speed{};  // [m/s] ≥ 0 the line goes to it
  std::optional<double> within{};      // [s] ≥ 0 in this time; else as the job ramps
  bool stop{};                         // normal stop
  bool emergency_stop{};               // emergency stop
  bool splice{};                       // a new full roll, at the line's speed
  bool break_web{};                    // for the rest of the run
  std::optional<bool> air{};           // false: the air fails; true: it is back
};

/// The stand as it is, and what it was between the last look and this one.
struct LiveState {
  double time{};              // [s]
  double line_speed{};        // [m/s]
  double rim_speed{};         // [m/s]
  double roll_speed{};        // [rad/s]
  double angle{};             // [rad]
  double diameter{};          // [m]
  double tension{};           // [N] behind the roll
  double lowest_tension{};    // [N] since the last look
  double highest_tension{};   // [N]
  double measured_tension{};  // [N]
  double setpoint{};          // [N]
  double low{};               // [N] window
  double high{};              // [N]
  double slack{};             // [m]
  double highest_slack{};     // [m] since the last look
  double pressure{};          // [Pa] at the brake
  double set_pressure{};      // [Pa]
  double torque{};            // [N·m] brake and drag
  double slip_power{};        // [W]
  double disc{};              // [K]
  double pads{};              // [K]
  double dancer{};            // [1] −1 … 1
  double web_run{};           // [m]
  double pulled{};            // [J]
  double slipped{};           // [J]
  double pad_wear{};          // [1]
  int pairs{};
  bool held{};          // the brake holds the roll at rest
  bool broken{};        // the web has parted
  bool at_core{};       // no web is left: the run is over
  bool failed{};        // the equations could not be stepped on: the run is over
  std::string fault{};  // what broke it off
};

class LiveRun {
 public:
  /// A stand at standstill with the web at its setpoint, under the first control of `request.compare`, else the stand's
  /// own. Idlers follow the line unless `request.idlers` says each. Bad input answers as answer() does.
  static std::variant<std::unique_ptr<LiveRun>, Answer> open(const Request& request);
  ~LiveRun();

  /// Does what the inputs say and goes on by a time [s], in whole samples; what is left over is kept for the next
  /// advance. A time that is not positive only looks. std::invalid_argument for inputs out of range.
  const LiveState& advance(double duration, const LiveInputs& inputs);
  const LiveState& state() const;

 private:
  class Inside;
  explicit LiveRun(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

/// Live runs behind numbers, in JSON for a host. SI numbers throughout.
/// open:    a request as of answer() with "job" → {"run":1,"state":{…}} or the answer that refuses it.
/// advance: {"run":1,"for":0.0167,"inputs":{"pairs":2,"stop":true,…}} → {"run":1,"state":{…}}.
/// close:   forgets a run. Nothing throws; what is wrong comes as {"problem":"…"}.
class LiveRuns {
 public:
  std::string open(std::string_view request_json);
  std::string advance(std::string_view json);
  void close(int run) { runs_.erase(run); }

 private:
  std::map<int, std::unique_ptr<LiveRun>> runs_{};
  int last_{};
};

/// The request that a JSON text holds, for hosts with other calls than answer(); a problem when it holds none.
std::variant<Request, Problem> read_request(std::string_view request_json);

}  // namespace holdback::api
