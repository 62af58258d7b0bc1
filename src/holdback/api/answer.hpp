// The façade: one request, one answer, for every host. The command line calls answer(Request); the page, scripts and
// the fuzzer call the JSON form. Both do the same work.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/api/site_requests.hpp"
#include "holdback/model/stand.hpp"
#include "holdback/results/answer.hpp"
#include "holdback/units/units.hpp"

namespace holdback::api {

inline constexpr int version = 1;

/// Whether idlers and their spans have motions of their own or follow the line.
enum class Idlers { as_needed, each, following };

struct Request {
  std::string command{};         // "check", "size", "plan", "simulate", "tune", "measure", "fit", "diagnose", "history"
  Source stand{};                // TOML; measure and history can do without
  std::optional<Source> jobs{};  // CSV or a sheet, added to the stand's own jobs
  std::string job{};             // one job in depth (size), or alone (plan); needed to simulate and to tune
  bool all{false};               // keep the jobs of every fit tried
  bool brief{false};             // size: what a person waits for while typing; see sizing/choose.hpp
  std::optional<std::string> brake{};  // size and plan: only this brake …
  std::optional<std::string> grade{};  // … this grade …
  std::optional<int> brakes{};         // … so many on the shaft
  std::optional<double> tolerance{};   // [1] plan: ±ε of the hand card; else the job's
  std::string scenario{};              // simulate: of the stand file; empty: the usual one
  std::vector<ControlKind> compare{};  // simulate: these controls side by side; empty: the stand's own
  Idlers idlers{Idlers::as_needed};    // simulate: whether every idler is followed
  std::optional<MeasureRequest> measure{};
  std::optional<FitRequest> fit{};
  std::optional<LogRequest> log{};
  std::optional<HistoryRequest> history{};
  int threads{0};                                                         // 0: as many as the machine has
  std::function<void(const std::string& what, double share)> progress{};  // long work tells how far it is; may be empty
};

/// The control of this name: "hand", "diameter", "dancer", "load cell" (or "loadcell", "load_cell"); none otherwise.
std::optional<ControlKind> control_called(const std::string& name);
inline constexpr const char* control_words = "hand, diameter, dancer, load cell";

/// Does the work. Bad input becomes problems in the answer; broken contracts of ours throw.
Answer answer(const Request& request);

/// A stand as read: none when the answer's problems say why. The answer has problems, defaults and columns.
struct StandRead {
  Answer answer{};
  std::optional<Stand> stand{};
};

/// The stand of a request, read and checked as answer() does it.
StandRead read_stand_for(const Request& request);

/// {"version":1,"command":"size","stand":{"name":…,"text":…},"jobs":{…},"job":…,"all":…} → answer as JSON.
/// Never throws: anything unexpected answers with outcome "internal".
std::string answer(std::string_view request_json);

}  // namespace holdback::api
