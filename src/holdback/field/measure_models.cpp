#include "holdback/field/measure_models.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/physics/measure.hpp"
#include "holdback/physics/span.hpp"

namespace holdback::field {

namespace {

constexpr double hertz = 2 * std::numbers::pi;

Get constant(double value) {
  return [value](const Inputs&) { return value; };
}

// ---- sag

MeasureModel sag_model(const MeasureLines& lines) {
  const Get span = input_of(lines, "span");
  const Get sag = input_of(lines, "sag");
  const Get mass = input_of(lines, "basis_weight");
  const Get width = input_of(lines, "width");
  const auto hanging = [=](const Inputs& x) {
    return physics::catenary_of_sag(physics::web_weight(mass(x), width(x)), span(x), sag(x));
  };
  MeasureModel model;
  model.tension = [=](const Inputs& x) { return hanging(x).end; };
  model.parts = {
      {"lowest_tension", "tension in the middle", Quantity::force, [=](const Inputs& x) { return hanging(x).lowest; }},
      {"span_length", "web in the span", Quantity::short_length, [=](const Inputs& x) { return hanging(x).length; }},
      {"slope", "slope at the rollers", Quantity::angle, [=](const Inputs& x) { return hanging(x).slope; }}};
  model.simple_formula = "w S²/(8 sag)";
  model.simple = [=](const Inputs& x) {
    return physics::sag_tension(physics::web_weight(mass(x), width(x)), span(x), sag(x));
  };
  model.assumptions = {
      {"both rollers of the span are level with each other; the web stands still and nothing blows on it", {}},
      {"the web hangs by its weight alone, without curl or baggy edges", {}}};
  return model;
}

// ---- pluck

MeasureModel pluck_model(const MeasureLines& lines) {
  const Get span = input_of(lines, "span");
  const Get frequency = input_of(lines, "frequency");
  const Get mass = input_of(lines, "basis_weight");
  const Get width = input_of(lines, "width");
  const Get air = input_of(lines, "air");
  const Get density = input_of(lines, "air_density");
  const int partial = std::max(1, static_cast<int>(std::lround(lines.value("partial"))));
  const auto carried = [=](const Inputs& x) {
    return air(x) * physics::carried_air(width(x), span(x) / partial, density(x));
  };
  MeasureModel model;
  model.tension = [=](const Inputs& x) {
    return width(x) * physics::plucked_tension(frequency(x) / hertz, mass(x) + carried(x), span(x), partial);
  };
  model.parts = {{"carried_air", "air that the web carries", Quantity::basis_weight, numerics::Model(carried)}};
  if (lines.value("air") > 0) {
    model.simple_formula = "4 b (S f)² without air";
    model.simple = [=](const Inputs& x) {
      return width(x) * physics::plucked_tension(frequency(x) / hertz, mass(x), span(x), partial);
    };
  }
  model.assumptions = {
      {"the web stands still, swings as a string between its rollers, and is too thin to resist bending", {}}};
  if (lines.value("air") > 0)
    model.assumptions.push_back(
        {"the air around the span is free on both sides; a wall or a frame nearer than the span is long adds to it",
         {}});
  return model;
}

// ---- pull

/// The pulls that were read; those that were not follow physics::ScalePull.
std::function<physics::ScalePull(const Inputs&)> scale_pull(const MeasureLines& lines) {
  const Get forward = input_of(lines, "pull");
  const Get back = input_or(lines, "back", forward);
  const Get released = input_or(lines, "released", input_or(lines, "released_back", constant(0)));
  const Get released_back = input_or(lines, "released_back", released);
  return [=](const Inputs& x) { return physics::ScalePull{forward(x), back(x), released(x), released_back(x)}; };
}

void add_pull_forces(MeasureModel& model, const MeasureLines& lines) {
  const auto pull = scale_pull(lines);
  const auto add = [&](const char* key, const char* name, double physics::PullParts::*part) {
    model.parts.push_back(
        {key, name, Quantity::force, [=](const Inputs& x) { return physics::pull_parts(pull(x)).*part; }});
  };
  if (lines.has("released") || lines.has("released_back")) {
    add("brake_pull", "of it the brake", &physics::PullParts::brake);
    add("drag_pull", "of it bearings, seals and dragging pads", &physics::PullParts::drag);
  }
  if (lines.has("back"))
    add("difference", "half of what both ways differ by, forward", &physics::PullParts::difference);
}

void add_pull_torques(MeasureModel& model, const MeasureLines& lines) {
  if (!lines.has("diameter")) return;
  const auto pull = scale_pull(lines);
  const Get diameter = input_of(lines, "diameter");
  const auto add = [&](const char* key, const char* name, double physics::PullParts::*part) {
    model.parts.push_back({key, name, Quantity::torque,
                           [=](const Inputs& x) { return physics::pull_parts(pull(x)).*part * diameter(x) / 2; }});
  };
  add("torque", "torque of brake and drag", &physics::PullParts::running);
  if (lines.has("released") || lines.has("released_back")) {
    add("brake_torque", "torque of the brake", &physics::PullParts::brake);
    add("drag_torque", "torque of the drag", &physics::PullParts::drag);
  }
}

MeasureModel pull_model(const MeasureLines& lines) {
  const auto pull = scale_pull(lines);
  const bool elsewhere = lines.has("diameter") && lines.has("at_diameter");
  const Get diameter = elsewhere ? input_of(lines, "diameter") : constant(1);
  const Get asked = elsewhere ? input_of(lines, "at_diameter") : constant(1);
  MeasureModel model;
  model.tension = [=](const Inputs& x) { return physics::pull_parts(pull(x)).running * diameter(x) / asked(x); };
  add_pull_forces(model, lines);
  add_pull_torques(model, lines);
  if (lines.has("breakaway")) {
    const Get breakaway = input_of(lines, "breakaway");
    model.parts.push_back({"breakaway_ratio", "to begin turning over to keep turning", Quantity::number,
                           [=](const Inputs& x) { return breakaway(x) / pull(x).forward; }});
  }
  if (lines.has("back")) {
    const Get forward = input_of(lines, "pull");
    model.simple_formula =
        elsewhere ? "the pull forward alone, carried over to that diameter" : "the pull forward alone";
    model.simple = [=](const Inputs& x) { return forward(x) * diameter(x) / asked(x); };
  }
  model.assumptions = {
      {"the scale pulls along the web, square to the axis, and the roll turns slowly and evenly while it is read", {}},
      {"friction is the same slow as at speed; friction that changes with speed or heat changes the running tension",
       {}}};
  if (!lines.has("back"))
    model.assumptions.push_back({"brake and drag are alike both ways; pulling both ways would tell", {}});
  if (!lines.has("released") && !lines.has("released_back"))
    model.assumptions.push_back({"brake and drag are not parted; pull once with the brake off to part them", {}});
  return model;
}

// ---- load cell

/// What the roller puts on the cell without a web: as read, or by its weight, or nothing.
Get tare_of(const MeasureLines& lines) {
  if (lines.has("tare")) return input_of(lines, "tare");
  if (!lines.has("roller_mass") || !lines.has("tilt")) return constant(0);
  const Get mass = input_of(lines, "roller_mass");
  const Get tilt = input_of(lines, "tilt");
  return [=](const Inputs& x) { return physics::roller_tare(mass(x), tilt(x)); };
}

MeasureModel cell_model(const MeasureLines& lines) {
  const Get reading = input_of(lines, "reading");
  const Get wrap = input_of(lines, "wrap");
  const Get axis = input_of(lines, "axis");
  const Get tare = tare_of(lines);
  MeasureModel model;
  const auto tension = [=](const Inputs& x) { return physics::cell_tension(reading(x), tare(x), wrap(x), axis(x)); };
  model.tension = tension;
  model.parts = {{"resultant", "force of the web on the roller", Quantity::force,
                  [=](const Inputs& x) { return physics::cell_resultant(tension(x), wrap(x)); }},
                 {"resultant_angle", "between that force and either run of the web", Quantity::angle,
                  [=](const Inputs& x) { return physics::cell_resultant_angle(wrap(x)); }},
                 {"tare", "of the reading the roller itself", Quantity::force, numerics::Model(tare)}};
  model.simple_formula = "reading/(2 sin(wrap/2)) without tare and axis";
  model.simple = [=](const Inputs& x) { return physics::cell_tension(reading(x), 0, wrap(x), 0); };
  model.assumptions = {{"the reading is the sum of both ends of the roller; its bearings carry no tension away", {}}};
  if (lines.value("axis") == 0)
    model.assumptions.push_back({"the measuring axis lies along the line that halves both runs of the web", {}});
  return model;
}

Note note(const std::string& text, std::vector<Amount> amounts = {}) { return {text, std::move(amounts)}; }

Problem wrong(const std::string& key, Note what) { return reading_problem(Severity::error, key, std::move(what)); }

Problems push_contradictions(const MeasureLines& lines) {
  Problems out;
  const double span = lines.value("span");
  const std::vector<double>& pushes = lines.line("push").all;
  const double push = pushes.empty() ? lines.value("push") : *std::max_element(pushes.begin(), pushes.end());
  if (push >= span)
    out.push_back(wrong("push", note("the push of {0} is not less than the span of {1}",
                                     {{push, Quantity::short_length}, {span, Quantity::short_length}})));
  if (lines.has("place") && lines.value("place") >= span)
    out.push_back(
        wrong("place", note("the place of the push lies at {0}, outside of the span of {1}",
                            {{lines.value("place"), Quantity::short_length}, {span, Quantity::short_length}})));
  if (lines.has("held") && lines.value("held") < span)
    out.push_back(wrong("held", note("the web that is held, {0}, is shorter than the span of {1} in it",
                                     {{lines.value("held"), Quantity::short_length}, {span, Quantity::short_length}})));
  return out;
}

Problems sag_contradictions(const MeasureLines& lines) {
  const double span = lines.value("span");
  const double sag = lines.value("sag");
  if (sag < span) return {};
  return {wrong("sag", note("the sag of {0} is not less than the span of {1}: a web so slack has no tension to measure",
                            {{sag, Quantity::short_length}, {span, Quantity::short_length}}))};
}

Problems pull_contradictions(const MeasureLines& lines) {
  Problems out;
  const double on = (lines.value("pull") + (lines.has("back") ? lines.value("back") : lines.value("pull"))) / 2;
  for (const char* key : {"released", "released_back"})
    if (lines.has(key) && lines.value(key) > on)
      out.push_back(wrong(key, note("with the brake off it took {0}, more than the {1} with the brake on",
                                    {{lines.value(key), Quantity::force}, {on, Quantity::force}})));
  if (lines.has("at_diameter") && !lines.has("diameter"))
    out.push_back(wrong("at_diameter", note("the diameter at which it was pulled is missing")));
  return out;
}

Problems cell_contradictions(const MeasureLines& lines) {
  Problems out;
  if (lines.value("wrap") >= 2 * std::numbers::pi)
    out.push_back(wrong("wrap", note("a wrap of {0} goes round and round", {{lines.value("wrap"), Quantity::angle}})));
  if (std::abs(lines.value("axis")) >= std::numbers::pi / 2)
    out.push_back(wrong("axis", note("a measuring axis at {0} to the web's force feels nothing of it, or the reverse",
                                     {{lines.value("axis"), Quantity::angle}})));
  if (lines.has("roller_mass") != lines.has("tilt") && !lines.has("tare"))
    out.push_back(wrong(lines.has("tilt") ? "roller_mass" : "tilt",
                        note("the weight of the roller needs both roller_mass and tilt")));
  if (lines.has("tare") && lines.has("roller_mass"))
    out.push_back(wrong("roller_mass", note("give the tare or the roller's mass, not both")));
  return out;
}

}  // namespace

Get input_of(const MeasureLines& lines, const std::string& key) {
  return [at = lines.place(key).value()](const Inputs& x) { return x[at]; };
}

Get input_or(const MeasureLines& lines, const std::string& key, Get otherwise) {
  return lines.has(key) ? input_of(lines, key) : otherwise;
}

MeasureModel model_of(const MeasureInput& input, MeasureLines& lines) {
  const MeasureMethod& method = *input.method;
  if (method.key == "push") return push_model(input, lines);
  if (method.key == "sag") return sag_model(lines);
  if (method.key == "pluck") return pluck_model(lines);
  if (method.key == "pull") return pull_model(lines);
  return cell_model(lines);
}

Problems contradictions(const MeasureMethod& method, const MeasureLines& lines) {
  if (method.key == "push") return push_contradictions(lines);
  if (method.key == "sag") return sag_contradictions(lines);
  if (method.key == "pull") return pull_contradictions(lines);
  if (method.key == "cell") return cell_contradictions(lines);
  return {};
}

}  // namespace holdback::field
