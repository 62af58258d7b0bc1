// Live runs in JSON. Nothing thrown.
#include <nlohmann/json.hpp>

#include "holdback/api/live.hpp"
#include "holdback/report/report.hpp"

namespace holdback::api {

namespace {

using Json = nlohmann::json;

Json json_of(const LiveState& s) {
  return {{"time", s.time},
          {"line_speed", s.line_speed},
          {"rim_speed", s.rim_speed},
          {"roll_speed", s.roll_speed},
          {"angle", s.angle},
          {"diameter", s.diameter},
          {"tension", s.tension},
          {"lowest_tension", s.lowest_tension},
          {"highest_tension", s.highest_tension},
          {"measured_tension", s.measured_tension},
          {"setpoint", s.setpoint},
          {"low", s.low},
          {"high", s.high},
          {"slack", s.slack},
          {"highest_slack", s.highest_slack},
          {"pressure", s.pressure},
          {"set_pressure", s.set_pressure},
          {"torque", s.torque},
          {"slip_power", s.slip_power},
          {"disc", s.disc},
          {"pads", s.pads},
          {"dancer", s.dancer},
          {"web_run", s.web_run},
          {"pulled", s.pulled},
          {"slipped", s.slipped},
          {"pad_wear", s.pad_wear},
          {"pairs", s.pairs},
          {"held", s.held},
          {"broken", s.broken},
          {"at_core", s.at_core},
          {"failed", s.failed},
          {"fault", s.fault}};
}

template <class T>
void take(const Json& inputs, const char* key, std::optional<T>& into) {
  if (inputs.contains(key)) into = inputs.at(key).get<T>();
}

LiveInputs inputs_of(const Json& json) {
  static const char* const known[] = {"pairs", "pressure",       "automatic", "setpoint",  "line_speed", "within",
                                      "stop",  "emergency_stop", "splice",    "break_web", "air"};
  LiveInputs inputs;
  for (const auto& [key, value] : json.items())
    if (std::find(std::begin(known), std::end(known), key) == std::end(known))
      throw std::invalid_argument("unknown input " + key);
  take(json, "pairs", inputs.pairs);
  take(json, "pressure", inputs.pressure);
  take(json, "setpoint", inputs.setpoint);
  take(json, "line_speed", inputs.line_speed);
  take(json, "within", inputs.within);
  take(json, "air", inputs.air);
  inputs.automatic = json.value("automatic", false);
  inputs.stop = json.value("stop", false);
  inputs.emergency_stop = json.value("emergency_stop", false);
  inputs.splice = json.value("splice", false);
  inputs.break_web = json.value("break_web", false);
  return inputs;
}

std::string problem(const std::string& what) {
  return Json{{"problem", what}}.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

std::string LiveRuns::open(std::string_view request_json) {
  try {
    auto request = read_request(request_json);
    if (auto* bad = std::get_if<Problem>(&request)) {
      Answer answer;
      answer.outcome = Outcome::bad_input;
      answer.problems.push_back(*bad);
      return report::json(answer);
    }
    std::get<Request>(request).command = "simulate";
    auto opened = LiveRun::open(std::get<Request>(request));
    if (auto* refused = std::get_if<Answer>(&opened)) return report::json(*refused);
    const int run = ++last_;
    runs_[run] = std::get<std::unique_ptr<LiveRun>>(std::move(opened));
    return Json{{"run", run}, {"state", json_of(runs_[run]->state())}}.dump();
  } catch (const std::exception& error) {
    return problem(error.what());
  }
}

std::string LiveRuns::advance(std::string_view json) {
  try {
    const Json asked = Json::parse(json);
    const int run = asked.at("run").get<int>();
    const auto found = runs_.find(run);
    if (found == runs_.end()) return problem("no such run; open one first");
    const LiveInputs inputs = asked.contains("inputs") ? inputs_of(asked.at("inputs")) : LiveInputs{};
    const LiveState& state = found->second->advance(asked.value("for", 0.0), inputs);
    return Json{{"run", run}, {"state", json_of(state)}}.dump(-1, ' ', false, Json::error_handler_t::replace);
  } catch (const std::exception& error) {
    return problem(error.what());
  }
}

}  // namespace holdback::api
