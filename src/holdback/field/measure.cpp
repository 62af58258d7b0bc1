#include "holdback/field/measure.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/field/measure_models.hpp"
#include "holdback/field/measure_verdict.hpp"
#include "holdback/field/measure_warnings.hpp"

namespace holdback::field {

namespace {

constexpr double most_freedom = 1000;  // degrees of freedom that are told: more are as good as without end

std::vector<BudgetLine> budget_of(const MeasureLines& lines, const numerics::Propagated& result) {
  const double variance = result.uncertainty * result.uncertainty;
  std::vector<BudgetLine> budget;
  for (std::size_t i = 0; i < lines.all().size(); ++i) {
    const MeasureLine& line = lines.all()[i];
    BudgetLine out;
    out.key = line.key;
    out.name = line.name;
    out.value = {line.input.value, line.kind};
    // A difference of the kind: a standard uncertainty has no zero point of its own.
    out.uncertainty = {numerics::uncertainty_of(line.input), line.kind};
    out.sensitivity = result.sensitivity[i];
    out.contribution = result.contribution[i];
    out.share = variance > 0 ? result.contribution[i] * result.contribution[i] / variance : 0;
    out.readings = line.readings;
    out.origin = line.origin;
    budget.push_back(std::move(out));
  }
  std::stable_sort(budget.begin(), budget.end(),
                   [](const BudgetLine& a, const BudgetLine& b) { return a.contribution > b.contribution; });
  return budget;
}

std::vector<MeasuredPart> parts_of(const MeasureModel& model, const std::vector<numerics::UnsureInput>& inputs) {
  std::vector<MeasuredPart> parts;
  for (const PartModel& part : model.parts) {
    const auto result = numerics::propagate(part.model, inputs);
    const double uncertainty = std::hypot(result.uncertainty, part.scatter);
    if (std::isfinite(result.value) && std::isfinite(uncertainty))
      parts.push_back({part.key, part.name, {result.value, part.kind}, {uncertainty, part.kind}});
  }
  return parts;
}

SimpleFormula simple_of(const MeasureModel& model, const std::vector<numerics::UnsureInput>& inputs, double tension) {
  std::vector<double> at;
  for (const auto& input : inputs) at.push_back(input.value);
  const double simple = model.simple(at);
  return {model.simple_formula, simple, simple - tension, tension != 0 ? (simple - tension) / tension : 0};
}

/// An input as it would be with better readings, and what that takes.
struct Improved {
  numerics::UnsureInput input{};
  Note how{};
};

std::optional<Improved> finer(const MeasureLine& line) {
  if (line.resolution <= 0) return std::nullopt;
  Improved better{line.input, {"read " + line.name + " to {0} instead of {1}", {}}};
  better.input.doubts.at(line.rounding).uncertainty /= 10;
  better.how.amounts = {{line.resolution / 10, line.kind}, {line.resolution, line.kind}};
  return better;
}

std::optional<Improved> more_often(const MeasureLine& line) {
  if (line.all.size() < 2) return std::nullopt;
  const auto n = static_cast<double>(line.all.size());
  const double times = std::max(10.0, 2 * n);
  Improved better{line.input, {"read " + line.name + " " + std::to_string(static_cast<int>(times)) + " times", {}}};
  for (auto& doubt : better.input.doubts)
    if (doubt.shape == numerics::Shape::student) {
      doubt.uncertainty *= std::sqrt(n / times);
      doubt.freedom = times - 1;
    }
  return better;
}

std::optional<Improved> known_better(const MeasureLine& line) {
  if (line.resolution > 0 || line.all.size() > 1 || !(numerics::uncertainty_of(line.input) > 0)) return std::nullopt;
  Improved better{line.input, {"know " + line.name + " half as far off", {}}};
  if (line.key == "stretch") better.how.text = "give modulus, caliper and width of the web";
  if (line.key == "stretch") better.input.doubts.clear();
  for (auto& doubt : better.input.doubts) doubt.uncertainty /= 2;
  return better;
}

/// The one better reading that leaves the least uncertainty; none when nothing helps by a twentieth.
std::optional<BetterReading> better_of(const MeasureModel& model, const MeasureLines& lines, double uncertainty) {
  std::optional<BetterReading> best;
  const auto inputs = lines.inputs();
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    for (const auto improve : {finer, more_often, known_better}) {
      const auto improved = improve(lines.all()[i]);
      if (!improved) continue;
      auto changed = inputs;
      changed[i] = improved->input;
      const double then = numerics::propagate(model.tension, changed).uncertainty;
      if (then < 0.95 * uncertainty && (!best || then < best->uncertainty))
        best = BetterReading{lines.all()[i].key, improved->how, then};
    }
  }
  return best;
}

/// Why a tension below zero came out, by method.
Problem no_tension(const MeasureInput& input) {
  const auto wrong = [](const std::string& key, const std::string& what) {
    return reading_problem(Severity::error, key, {what, {}});
  };
  if (input.method->key == "push")
    return wrong("force",
                 "a slack web of this stiffness would ask for more force than was read; push, span, modulus or caliper "
                 "is not right, or the ends of the span do not hold the web (give held)");
  if (input.method->key == "cell")
    return wrong("reading", "the reading is not above the tare: no web pulls the roller that way");
  return wrong("", "these readings give no tension");
}

Measurement blank(const MeasureInput& input) {
  Measurement out;
  out.method = input.method->key;
  out.job = input.job;
  out.sound = input.sound;
  out.instruction = instruction_of(input);
  return out;
}

void fill_sureness(Measurement& out, const MeasureInput& input, const Sureness& sure) {
  const auto& linear = sure.linear();
  out.tension = linear.value;
  out.uncertainty = linear.uncertainty;
  out.by_draws = sure.by_draws();
  if (linear.freedom <= most_freedom && !out.by_draws) out.freedom = linear.freedom;
  out.low = sure.low();
  out.high = sure.high();
  out.expanded = (*out.high - *out.low) / 2;
  out.coverage =
      linear.uncertainty > 0 ? *out.expanded / linear.uncertainty : numerics::coverage_factor(linear.freedom, 0.95);
  out.drawn = sure.check();
  if (input.target && input.target->setpoint > 0) out.window = window_of(input, sure);
}

void fill(Measurement& out, const MeasureInput& input, const MeasureModel& model, const MeasureLines& lines,
          const Sureness& sure) {
  const auto inputs = lines.inputs();
  fill_sureness(out, input, sure);
  const auto& linear = sure.linear();
  if (lines.has("width")) out.per_width = linear.value / lines.value("width");
  out.budget = budget_of(lines, linear);
  out.parts = parts_of(model, inputs);
  if (!model.simple_formula.empty()) out.simple = simple_of(model, inputs, linear.value);
  out.better = better_of(model, lines, linear.uncertainty);
  out.methods = outlooks(input, linear.value);
  out.assumptions = model.assumptions;
  out.assumptions.push_back(
      {"the readings are independent of each other; what is off in the same way in all of them, "
       "such as a gauge out of calibration, is not in the uncertainty",
       {}});
  if (out.by_draws)
    out.assumptions.push_back(
        {"the draws show the linear interval, {0} to {1}, not to be as good as its digits: "
         "interval, probability and state are those of the draws",
         {{out.drawn->linear_low, Quantity::force}, {out.drawn->linear_high, Quantity::force}}});
}

void add_cautions(Measurement& out, const MeasureInput& input, const Sureness& sure) {
  if (const auto caution = yield_caution(input, out)) out.cautions.push_back(*caution);
  if (sure.lost() > 0)
    out.cautions.push_back(
        {"The readings are so unsure that {0} of the draws give no tension at all; the interval is "
         "that of the others.",
         {{static_cast<double>(sure.lost()) / measure_draws, Quantity::ratio}}});
  const auto& more = out.instruction.cautions;
  out.cautions.insert(out.cautions.end(), more.begin(), more.end());
}

}  // namespace

std::optional<Measurement> measure(const MeasureInput& input, Problems& problems) {
  MeasureLines lines = gather(input, false, problems);
  if (has_errors(problems)) return std::nullopt;
  const Problems against = contradictions(*input.method, lines);
  problems.insert(problems.end(), against.begin(), against.end());
  if (has_errors(problems)) return std::nullopt;
  const MeasureModel model = model_of(input, lines);
  const Sureness sure(model, lines.inputs());
  const auto& linear = sure.linear();
  if (!std::isfinite(linear.value) || !std::isfinite(linear.uncertainty) || linear.value <= 0) {
    problems.push_back(no_tension(input));
    return std::nullopt;
  }
  Measurement out = blank(input);
  fill(out, input, model, lines, sure);
  warn_of_readings(input, lines, out, problems);
  add_cautions(out, input, sure);
  return out;
}

Measurement instruct(const MeasureInput& input) {
  Measurement out = blank(input);
  if (input.target && input.target->setpoint > 0) out.methods = outlooks(input, input.target->setpoint);
  out.cautions = out.instruction.cautions;
  return out;
}

}  // namespace holdback::field
