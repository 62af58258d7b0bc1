#include "holdback/field/measure_models.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/physics/measure.hpp"
#include "holdback/physics/span.hpp"

namespace holdback::field {

namespace {

using physics::PushedSpan;
using Inputs = std::vector<double>;
using Get = std::function<double(const Inputs&)>;

constexpr double stiffest_usual = 10e9;  // [Pa] of plain films and papers; common practice, no source
constexpr double hertz = 2 * std::numbers::pi;

/// Reads one input by its key.
Get get(const MeasureLines& lines, const std::string& key) {
  const std::size_t at = lines.place(key).value();
  return [at](const Inputs& x) { return x[at]; };
}

Get get_or(const MeasureLines& lines, const std::string& key, Get otherwise) {
  return lines.has(key) ? get(lines, key) : otherwise;
}

Get constant(double value) {
  return [value](const Inputs&) { return value; };
}

// ---- push

std::function<PushedSpan(const Inputs&)> pushed_span(const MeasureLines& lines) {
  const Get span = get(lines, "span");
  const Get place = get_or(lines, "place", [span](const Inputs& x) { return span(x) / 2; });
  const Get held = get_or(lines, "held", span);
  return [=](const Inputs& x) { return PushedSpan{span(x), place(x), held(x)}; };
}

bool stiffness_known(const MeasureLines& lines) {
  return lines.has("modulus") && lines.has("caliper") && lines.has("width");
}

/// Without a modulus only a bound is known: an input of its own, nothing at best, at most what a stiff web would do.
void add_unknown_stretch(MeasureLines& lines) {
  Inputs at;
  for (const MeasureLine& line : lines.all()) at.push_back(line.input.value);
  const PushedSpan span = pushed_span(lines)(at);
  const double push = lines.value("push");
  const double tension = physics::pushed_tension(span, push, lines.value("force"));
  double most = tension;
  if (lines.has("caliper") && lines.has("width")) {
    const double stiffness = stiffest_usual * lines.value("caliper") * lines.value("width");
    most =
        std::clamp(tension - physics::tension_before_push(span, push, lines.value("force"), stiffness), 0.0, tension);
  }
  MeasureLine line;
  line.key = "stretch";
  line.name = "stretch by the push, modulus not known";
  line.kind = Quantity::force;
  line.input.doubts.push_back(numerics::limit_doubt(most));
  line.origin = {"not known; at most {0}, taken as ± so much", {{most, Quantity::force}}};
  lines.add(line);
}

MeasureModel push_model(MeasureLines& lines) {
  const bool stiff = stiffness_known(lines);
  if (!stiff) add_unknown_stretch(lines);
  const auto span = pushed_span(lines);
  const Get push = get(lines, "push");
  const Get force = get(lines, "force");
  MeasureModel model;
  const auto pushed = [=](const Inputs& x) { return physics::pushed_tension(span(x), push(x), force(x)); };
  if (stiff) {
    const Get modulus = get(lines, "modulus");
    const Get caliper = get(lines, "caliper");
    const Get width = get(lines, "width");
    model.tension = [=](const Inputs& x) {
      return physics::tension_before_push(span(x), push(x), force(x), modulus(x) * caliper(x) * width(x));
    };
    model.parts.push_back({"pushed_stress", "stress while pushed", Quantity::stress,
                           [=](const Inputs& x) { return pushed(x) / (caliper(x) * width(x)); }});
  } else {
    const Get stretch = get(lines, "stretch");
    model.tension = [=](const Inputs& x) { return pushed(x) - stretch(x); };
  }
  model.parts.insert(model.parts.begin(),
                     {"pushed_tension", "tension while pushed", Quantity::force, numerics::Model(pushed)});
  model.parts.push_back({"added_strain", "strain that the push adds", Quantity::ratio,
                         [=](const Inputs& x) { return physics::push_lengthening(span(x), push(x)) / span(x).held; }});
  model.simple_formula = lines.has("place") ? "F/(push/a + push/b)" : "F S/(4 push)";
  model.simple = [=](const Inputs& x) { return physics::simple_push_tension(span(x), push(x), force(x)); };
  model.assumptions = {
      {"the bar reaches over the whole width and slides along the web; the force is square to the web at rest", {}},
      {lines.has("held")
           ? "the web is held fast at both ends of the length given as held, and slides freely between"
           : "the web stands still and both ends of the span hold it; where idlers turn freely give held, "
             "the web between the places that do hold it",
       {}}};
  return model;
}

// ---- sag

MeasureModel sag_model(const MeasureLines& lines) {
  const Get span = get(lines, "span");
  const Get sag = get(lines, "sag");
  const Get mass = get(lines, "basis_weight");
  const Get width = get(lines, "width");
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
  const Get span = get(lines, "span");
  const Get frequency = get(lines, "frequency");
  const Get mass = get(lines, "basis_weight");
  const Get width = get(lines, "width");
  const Get air = get(lines, "air");
  const Get density = get(lines, "air_density");
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
  const Get forward = get(lines, "pull");
  const Get back = get_or(lines, "back", forward);
  const Get released = get_or(lines, "released", get_or(lines, "released_back", constant(0)));
  const Get released_back = get_or(lines, "released_back", released);
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
  if (lines.has("back")) add("unbalance", "pull of the roll's own weight, forward", &physics::PullParts::unbalance);
}

void add_pull_torques(MeasureModel& model, const MeasureLines& lines) {
  if (!lines.has("diameter")) return;
  const auto pull = scale_pull(lines);
  const Get diameter = get(lines, "diameter");
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
  const Get one = constant(1);
  const Get diameter = get_or(lines, "diameter", one);
  const Get asked = lines.has("diameter") ? get_or(lines, "at_diameter", diameter) : one;
  MeasureModel model;
  model.tension = [=](const Inputs& x) { return physics::pull_parts(pull(x)).running * diameter(x) / asked(x); };
  add_pull_forces(model, lines);
  add_pull_torques(model, lines);
  if (lines.has("breakaway")) {
    const Get breakaway = get(lines, "breakaway");
    model.parts.push_back({"breakaway_ratio", "to begin turning over to keep turning", Quantity::number,
                           [=](const Inputs& x) { return breakaway(x) / pull(x).forward; }});
  }
  if (lines.has("back") || lines.has("at_diameter")) {
    const Get forward = get(lines, "pull");
    model.simple_formula = "the pull forward alone";
    model.simple = [=](const Inputs& x) { return forward(x); };
  }
  model.assumptions = {
      {"the scale pulls along the web, square to the axis, and the roll turns slowly and evenly while it is read", {}},
      {"friction is the same slow as at speed; friction that changes with speed or heat changes the running tension",
       {}}};
  if (!lines.has("back")) model.assumptions.push_back({"the roll is in balance; pulling both ways would tell", {}});
  if (!lines.has("released") && !lines.has("released_back"))
    model.assumptions.push_back({"brake and drag are not parted; pull once with the brake off to part them", {}});
  return model;
}

// ---- load cell

/// What the roller puts on the cell without a web: as read, or by its weight, or nothing.
Get tare_of(const MeasureLines& lines) {
  if (lines.has("tare")) return get(lines, "tare");
  if (!lines.has("roller_mass") || !lines.has("tilt")) return constant(0);
  const Get mass = get(lines, "roller_mass");
  const Get tilt = get(lines, "tilt");
  return [=](const Inputs& x) { return physics::roller_tare(mass(x), tilt(x)); };
}

MeasureModel cell_model(const MeasureLines& lines) {
  const Get reading = get(lines, "reading");
  const Get wrap = get(lines, "wrap");
  const Get axis = get(lines, "axis");
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
  const double push = lines.value("push");
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

MeasureModel model_of(const MeasureMethod& method, MeasureLines& lines) {
  if (method.key == "push") return push_model(lines);
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
