// From what was read, and what the stand knows of the web, to inputs with all that makes them unsure.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/measure_method.hpp"
#include "holdback/model/problem.hpp"
#include "holdback/model/web.hpp"
#include "holdback/numerics/gum.hpp"
#include "holdback/results/choice.hpp"
#include "holdback/results/measurement.hpp"

namespace holdback::field {

/// A question: the method, what was read, and what is known beside it.
struct MeasureInput {
  const MeasureMethod* method{};
  std::vector<KeyReadings> readings{};
  std::optional<PluckSound> sound{};      // stands in for the frequency
  std::optional<Web> web{};               // of the stand's job
  std::string job{};                      // its name
  double caliper_share{};                 // [1] ± of the web's caliper; 0: the usual one
  std::optional<TensionTarget> target{};  // of the job
  std::optional<double> air_density{};    // [kg/m³] of the stand's site
  std::optional<double> span{};           // [m] free span of the stand, for foretelling
  std::optional<double> cell_wrap{};      // [rad] of the stand's weighing idler, for foretelling
};

/// One input of the tension.
struct MeasureLine {
  std::string key{};
  std::string name{};
  Quantity kind{};
  numerics::UnsureInput input{};
  int readings{};             // 0: not read here
  double resolution{};        // [SI] that is in the doubts; 0: none is
  std::size_t rounding{};     // place of the doubt that it makes, where there is one
  std::vector<double> all{};  // [SI] every reading
  Note origin{};
};

/// The inputs of one question, in the order of the method's keys.
class MeasureLines {
 public:
  void add(MeasureLine line) { lines_.push_back(std::move(line)); }
  const std::vector<MeasureLine>& all() const { return lines_; }
  /// Place of a key; none when it is not there.
  std::optional<std::size_t> place(const std::string& key) const;
  bool has(const std::string& key) const { return place(key).has_value(); }
  /// Value of a key that is there.
  double value(const std::string& key) const { return lines_.at(place(key).value()).input.value; }
  std::vector<numerics::UnsureInput> inputs() const;
  /// The line of a key that is there.
  MeasureLine& line(const std::string& key) { return lines_.at(place(key).value()); }
  const MeasureLine& line(const std::string& key) const { return lines_.at(place(key).value()); }

 private:
  std::vector<MeasureLine> lines_{};
};

/// What a web itself tells of a key [SI]; none where it does not.
std::optional<double> web_value(const Web& web, std::string_view key);

/// Readings → inputs. `foretelling` counts what usual care makes of each reading beside its resolution. What is missing
/// or out of range is added to `problems`.
MeasureLines gather(const MeasureInput& input, bool foretelling, Problems& problems);

/// A problem of one reading.
Problem reading_problem(Severity severity, const std::string& key, Note what, const std::string& text = {});

}  // namespace holdback::field
