// Which method would be best here: readings that the usual instruments would give are made up at a tension, and carried
// through as real ones are.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/field/measure.hpp"
#include "holdback/field/measure_foretell.hpp"
#include "holdback/field/measure_models.hpp"

namespace holdback::field {

namespace {

/// What makes most of the uncertainty: "the sag of 1.2 mm, read to 1 mm".
Note limits(const MeasureLines& lines, const numerics::Propagated& result) {
  const auto most = std::max_element(result.contribution.begin(), result.contribution.end());
  const MeasureLine& line = lines.all()[static_cast<std::size_t>(most - result.contribution.begin())];
  if (line.resolution > 0)
    return {"most of it from " + line.name + ", {0} read to {1}",
            {{line.input.value, line.kind}, {line.resolution, line.kind}}};
  if (line.key == "air") return {"most of it from the air that the web carries", {}};
  return {"most of it from " + line.name + ", {0} known to ±{1}",
          {{line.input.value, line.kind}, {numerics::uncertainty_of(line.input) * std::sqrt(3.0), line.kind}}};
}

std::string list(const Problems& problems) {
  std::string keys;
  for (const Problem& problem : problems)
    if (problem.severity == Severity::error) keys += (keys.empty() ? "" : ", ") + problem.field;
  return keys;
}

MethodOutlook outlook(const MeasureInput& input, const MeasureMethod& method, double tension) {
  MethodOutlook out;
  out.method = method.key;
  const Foretold foretold = foretell(input, method, tension);
  if (!foretold.cannot.text.empty()) {
    out.why = foretold.cannot;
    return out;
  }
  Problems problems;
  MeasureLines lines = gather(foretold.input, true, problems);
  if (has_errors(problems)) {
    out.why = {"not known: " + list(problems), {}};
    return out;
  }
  const MeasureModel model = model_of(foretold.input, lines);
  const auto result = numerics::propagate(model.tension, lines.inputs());
  if (!std::isfinite(result.uncertainty)) return out;
  out.possible = true;
  out.uncertainty = result.uncertainty;
  out.share = result.uncertainty / tension;
  out.why = limits(lines, result);
  if (method.key == "cell" && !input.cell_wrap && input.method->key != "cell")
    out.why.text = "where there is such a roller; " + out.why.text;
  return out;
}

}  // namespace

std::vector<MethodOutlook> outlooks(const MeasureInput& input, double tension) {
  std::vector<MethodOutlook> all;
  for (const MeasureMethod& method : measure_methods()) all.push_back(outlook(input, method, tension));
  std::stable_sort(all.begin(), all.end(), [](const MethodOutlook& a, const MethodOutlook& b) {
    return a.possible != b.possible ? a.possible : a.possible && a.uncertainty < b.uncertainty;
  });
  return all;
}

}  // namespace holdback::field
