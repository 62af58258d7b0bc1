#include "holdback/field/measure.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/field/measure_models.hpp"
#include "holdback/physics/tension.hpp"

namespace holdback::field {

namespace {

constexpr double confidence = 0.95;
constexpr double sure = 0.95;  // probability from which "inside" is said plainly

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
    if (std::isfinite(result.value) && std::isfinite(result.uncertainty))
      parts.push_back({part.key, part.name, {result.value, part.kind}, {result.uncertainty, part.kind}});
  }
  return parts;
}

/// The same by draws. One digit of the uncertainty is meant ([jcgm101], 7.9.2 and 8.1).
std::optional<DrawnCheck> drawn_check(const MeasureModel& model, const std::vector<numerics::UnsureInput>& inputs,
                                      const numerics::Propagated& result, double expanded) {
  const auto drawn = numerics::draw(model.tension, inputs, confidence, measure_draws, measure_seed);
  if (drawn.count == 0 || !(result.uncertainty > 0)) return std::nullopt;
  DrawnCheck check;
  check.draws = drawn.count;
  check.points = drawn.even ? "quasi-random (Sobol)" : "pseudo-random (Mersenne twister)";
  check.seed = static_cast<int>(measure_seed);
  check.mean = drawn.mean;
  check.uncertainty = drawn.uncertainty;
  check.low = drawn.low;
  check.high = drawn.high;
  check.tolerance = numerics::numerical_tolerance(result.uncertainty, 1);
  check.agrees = drawn.lost == 0 && std::abs(result.value - expanded - drawn.low) <= check.tolerance &&
                 std::abs(result.value + expanded - drawn.high) <= check.tolerance;
  return check;
}

MeasuredWindow window_of(const MeasureInput& input, const numerics::Propagated& result) {
  const TensionTarget& target = *input.target;
  MeasuredWindow window;
  window.job = input.job;
  window.low = target.low;
  window.high = target.high;
  window.setpoint = target.setpoint;
  window.probability =
      numerics::probability_between(result.value, result.uncertainty, result.freedom, target.low, target.high);
  const bool inside = window.probability >= sure;
  const bool outside = window.probability <= 1 - sure;
  window.state = inside ? "inside" : outside ? "outside" : "may be outside";
  const bool above = result.value > (target.low + target.high) / 2;
  const std::string side = above ? "above" : "below";
  // No one counts on the far tails of a distribution: beyond a thousandth they are told as such.
  const double told = std::clamp(window.probability, 1e-3, 1 - 1e-3);
  const std::string likely = told > window.probability   ? "less than {0}"
                             : told < window.probability ? "more than {0}"
                                                         : "{0}";
  window.verdict.amounts = {{told, Quantity::ratio}, {target.low, Quantity::force}, {target.high, Quantity::force}};
  if (inside)
    window.verdict.text = "The tension lies inside the window of {1} to {2}; " + likely + " likely by these readings.";
  else if (outside)
    window.verdict.text = "The tension lies " + side + " the window of {1} to {2}; inside is " + likely + " likely.";
  else
    window.verdict.text =
        "The readings do not tell whether the tension lies inside the window of {1} to {2}; {0} likely, else " + side +
        " it.";
  return window;
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
  const double rough = numerics::resolution_doubt(line.resolution).uncertainty;
  for (auto& doubt : better.input.doubts)
    if (doubt.uncertainty == rough) {
      doubt.uncertainty /= 10;
      break;
    }
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

void warn_read_once(const MeasureInput& input, const MeasureLines& lines, Problems& problems) {
  std::string once;
  for (const ReadingKey& key : input.method->keys) {
    if (key.due != Due::always || !key.by_digits || !lines.has(std::string(key.key))) continue;
    const MeasureLine& line = lines.all()[*lines.place(std::string(key.key))];
    if (line.readings != 1 || (key.key == "frequency" && input.sound)) continue;
    once += (once.empty() ? "" : ", ") + line.key;
  }
  if (!once.empty())
    problems.push_back(reading_problem(
        Severity::warning, once,
        {"one reading only: nothing tells how well it repeats, so only its resolution counts; read it three times or "
         "more",
         {}}));
}

void warn_read_twice(const MeasureLines& lines, Problems& problems) {
  for (const MeasureLine& line : lines.all())
    if (line.all.size() == 2)
      problems.push_back(
          reading_problem(Severity::warning, line.key,
                          {"two readings of " + line.name +
                               " tell their spread so poorly that it counts many times over; read it three "
                               "times or more",
                           {}}));
}

void warn_coarse(const MeasureLines& lines, Problems& problems) {
  for (const MeasureLine& line : lines.all())
    if (line.resolution > 0 && line.resolution >= 0.5 * std::abs(line.input.value) && line.input.value != 0)
      problems.push_back(reading_problem(Severity::warning, line.key,
                                         {line.name + " is {0} and was read to {1}: too coarse to tell much",
                                          {{line.input.value, line.kind}, {line.resolution, line.kind}}}));
}

void warn_push(const MeasureInput& input, const MeasureLines& lines, const std::vector<MeasuredPart>& parts,
               Measurement& out, Problems& problems) {
  if (input.method->key != "push") return;
  if (lines.has("stretch"))
    problems.push_back(reading_problem(
        Severity::warning, "modulus",
        {"modulus, caliper and width of the web are not all known: the simple reading stands, which is the tension "
         "while pushed, too high by up to {0}",
         lines.all()[*lines.place("stretch")].origin.amounts}));
  if (!input.web) return;
  const auto yield = physics::web_yield(*input.web);
  const auto pushed =
      std::find_if(parts.begin(), parts.end(), [](const MeasuredPart& part) { return part.key == "pushed_tension"; });
  if (!yield || pushed == parts.end() || pushed->value.value < *yield * input.web->width) return;
  problems.push_back(reading_problem(Severity::warning, "push",
                                     {"the push strained the web to {0}, past its yield at {1}",
                                      {pushed->value, {*yield * input.web->width, Quantity::force}}}));
  out.cautions.push_back(
      {"The push stretched the web for good: cut that piece out, and push less far the next time.", {}});
}

void warn_cell(const MeasureInput& input, const MeasureLines& lines, Problems& problems) {
  if (input.method->key != "cell" || lines.has("tare") || lines.has("roller_mass")) return;
  problems.push_back(reading_problem(Severity::warning, "tare",
                                     {"no tare: the whole reading counts as the web's; read it without a web, or give "
                                      "roller_mass and tilt",
                                      {}}));
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

void fill(Measurement& out, const MeasureInput& input, const MeasureModel& model, const MeasureLines& lines,
          const numerics::Propagated& result) {
  const auto inputs = lines.inputs();
  out.tension = result.value;
  out.uncertainty = result.uncertainty;
  if (lines.has("width")) out.per_width = result.value / lines.value("width");
  if (std::isfinite(result.freedom)) out.freedom = result.freedom;
  out.coverage = numerics::coverage_factor(result.freedom, confidence);
  out.expanded = *out.coverage * result.uncertainty;
  out.budget = budget_of(lines, result);
  out.drawn = drawn_check(model, inputs, result, *out.expanded);
  if (input.target && input.target->setpoint > 0) out.window = window_of(input, result);
  if (!model.simple_formula.empty()) out.simple = simple_of(model, inputs, result.value);
  out.better = better_of(model, lines, result.uncertainty);
  out.methods = outlooks(input, result.value);
  out.assumptions = model.assumptions;
  out.assumptions.push_back(
      {"the readings are independent of each other; what is off in the same way in all of them, "
       "such as a gauge out of calibration, is not in the uncertainty",
       {}});
}

void add_cautions(Measurement& out) {
  if (out.drawn && !out.drawn->agrees)
    out.cautions.push_back(
        {"The linear uncertainty is not as good as its digits here: take the interval of the draws, {0} to {1}.",
         {{out.drawn->low, Quantity::force}, {out.drawn->high, Quantity::force}}});
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
  const MeasureModel model = model_of(*input.method, lines);
  const auto result = numerics::propagate(model.tension, lines.inputs());
  if (!std::isfinite(result.value) || !std::isfinite(result.uncertainty) || result.value <= 0) {
    problems.push_back(no_tension(input));
    return std::nullopt;
  }
  Measurement out = blank(input);
  fill(out, input, model, lines, result);
  out.parts = parts_of(model, lines.inputs());
  warn_read_once(input, lines, problems);
  warn_read_twice(lines, problems);
  warn_coarse(lines, problems);
  warn_push(input, lines, out.parts, out, problems);
  warn_cell(input, lines, problems);
  add_cautions(out);
  return out;
}

Measurement instruct(const MeasureInput& input) {
  Measurement out = blank(input);
  if (input.target && input.target->setpoint > 0) out.methods = outlooks(input, input.target->setpoint);
  out.cautions = out.instruction.cautions;
  return out;
}

}  // namespace holdback::field
