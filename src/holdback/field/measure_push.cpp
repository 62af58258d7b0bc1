// The model of a span that is pushed sideways.
#include <algorithm>
#include <cmath>

#include "holdback/field/measure_models.hpp"
#include "holdback/physics/measure.hpp"

namespace holdback::field {

namespace {

using physics::PushedSpan;

/// The stiffest that webs of a material are met along the machine [Pa]: common practice, no source. Nothing known:
/// foil.
double stiffest(Material material) {
  switch (material) {
    case Material::polyester:
      return 7e9;
    case Material::polypropylene:
      return 4e9;
    case Material::polyethylene:
      return 3e9;
    case Material::cellophane:
      return 6e9;
    case Material::paper:
      return 12e9;
    case Material::board:
      return 10e9;
    case Material::aluminium_foil:
    case Material::laminate:
    case Material::other:
      break;
  }
  return 70e9;
}

/// Of a laminate the mean of its plies by caliper, where they make up the web.
double stiffest_of(const std::optional<Web>& web) {
  if (!web) return stiffest(Material::other);
  if (web->plies.empty()) return stiffest(web->material);
  double stiffness = 0;
  double caliper = 0;
  for (const Ply& ply : web->plies) {
    stiffness += ply.modulus.value_or(stiffest(ply.material)) * ply.caliper;
    caliper += ply.caliper;
  }
  return caliper > 0 ? stiffness / caliper : stiffest(web->material);
}

Inputs values_of(const MeasureLines& lines) {
  Inputs at;
  for (const MeasureLine& line : lines.all()) at.push_back(line.input.value);
  return at;
}

std::function<PushedSpan(const Inputs&)> pushed_span(const MeasureLines& lines) {
  const Get span = input_of(lines, "span");
  const Get place = input_or(lines, "place", [span](const Inputs& x) { return span(x) / 2; });
  const Get held = input_or(lines, "held", span);
  return [=](const Inputs& x) { return PushedSpan{span(x), place(x), held(x)}; };
}

bool stiffness_known(const MeasureLines& lines) {
  return lines.has("modulus") && lines.has("caliper") && lines.has("width");
}

/// Without a modulus only bounds of what the push adds are known: an input of its own, from nothing to what the
/// stiffest web of the material would do, no value between more likely than another ([jcgm100], 4.3.7).
void add_unknown_stretch(const MeasureInput& input, MeasureLines& lines) {
  const PushedSpan span = pushed_span(lines)(values_of(lines));
  const double push = lines.value("push");
  const double force = lines.value("force");
  const double tension = physics::pushed_tension(span, push, force);
  const double modulus = stiffest_of(input.web);
  const bool section = lines.has("caliper") && lines.has("width");
  double most = tension;
  if (section) {
    const double stiffness = modulus * lines.value("caliper") * lines.value("width");
    most = std::clamp(tension - physics::tension_before_push(span, push, force, stiffness), 0.0, tension);
  }
  MeasureLine line;
  line.key = "stretch";
  line.name = "stretch by the push, modulus not known";
  line.kind = Quantity::force;
  line.input.value = most / 2;
  line.input.doubts.push_back(numerics::limit_doubt(most / 2));
  line.origin = {"not known; anything from nothing to {0}", {{most, Quantity::force}}};
  if (section) line.origin.text += ", which a modulus of {1} would make";
  if (section) line.origin.amounts.push_back({modulus, Quantity::modulus});
  lines.add(line);
}

/// Push and force that were read equally often: each push with its own force.
struct Pairs {
  std::size_t push_at{};
  std::size_t force_at{};
  std::vector<double> pushes{};
  std::vector<double> forces{};
  bool any() const { return pushes.size() > 1 && pushes.size() == forces.size(); }
};

Pairs pairs_of(const MeasureLines& lines) {
  return {*lines.place("push"), *lines.place("force"), lines.line("push").all, lines.line("force").all};
}

/// Mean of what the pairs give, as a function of all inputs: what moves push or force moves that of every pair.
numerics::Model mean_of_pairs(const Pairs& pairs, numerics::Model model) {
  if (!pairs.any()) return model;
  const double push = numerics::mean_of(pairs.pushes);
  const double force = numerics::mean_of(pairs.forces);
  return [=](const Inputs& x) {
    Inputs at = x;
    double sum = 0;
    for (std::size_t i = 0; i < pairs.pushes.size(); ++i) {
      at[pairs.push_at] = x[pairs.push_at] + (pairs.pushes[i] - push);
      at[pairs.force_at] = x[pairs.force_at] + (pairs.forces[i] - force);
      sum += model(at);
    }
    return sum / static_cast<double>(pairs.pushes.size());
  };
}

/// What each pair gives.
std::vector<double> results_of(const Pairs& pairs, const numerics::Model& model, Inputs at) {
  std::vector<double> results;
  for (std::size_t i = 0; i < pairs.pushes.size(); ++i) {
    at[pairs.push_at] = pairs.pushes[i];
    at[pairs.force_at] = pairs.forces[i];
    results.push_back(model(at));
  }
  return results;
}

/// A deeper push takes more force: their scatter is not independent, that of the tensions they give counts instead
/// ([jcgm100], 4.1.4, note, and H.2, the second approach).
void use_pairs(MeasureModel& model, MeasureLines& lines) {
  const Pairs pairs = pairs_of(lines);
  if (!pairs.any()) return;
  const Inputs at = values_of(lines);
  MeasureLine line;
  line.key = "pairs";
  line.name = "push and force in pairs";
  line.kind = Quantity::force;
  line.all = results_of(pairs, model.tension, at);
  line.readings = static_cast<int>(line.all.size());
  line.input.doubts.push_back(numerics::repeat_doubt(line.all));
  line.origin = {"scatter of the tensions that the " + std::to_string(line.readings) + " pairs give", {}};
  for (PartModel& part : model.parts) {
    part.scatter = numerics::repeat_doubt(results_of(pairs, part.model, at)).uncertainty;
    part.model = mean_of_pairs(pairs, part.model);
  }
  const Get scatter = [place = lines.all().size()](const Inputs& x) { return x[place]; };
  model.tension = [mean = mean_of_pairs(pairs, model.tension), scatter](const Inputs& x) {
    return mean(x) + scatter(x);
  };
  model.simple = mean_of_pairs(pairs, model.simple);
  for (const char* key : {"push", "force"}) {
    MeasureLine& own = lines.line(key);
    own.all.clear();
    own.origin.text += "; its scatter counts in the pairs";
    std::erase_if(own.input.doubts, [](const auto& doubt) { return doubt.shape == numerics::Shape::student; });
  }
  lines.add(line);
}

std::vector<Note> assumptions_of(const MeasureLines& lines) {
  std::vector<Note> out{
      {"the bar reaches over the whole width and slides along the web; the force is square to the web at rest", {}},
      {lines.has("held")
           ? "the web is held fast at both ends of the length given as held, and slides freely between"
           : "the web stands still and both ends of the span hold it; where idlers turn freely give held, the web "
             "between the places that do hold it; a dancer or a slipping brake lets it give, and the push adds less",
       {}}};
  if (pairs_of(lines).any())
    out.push_back(
        {"push and force were read equally often: the first of one belongs to the first of the other, and so "
         "on; the tension is the mean of what the pairs give",
         {}});
  return out;
}

}  // namespace

MeasureModel push_model(const MeasureInput& input, MeasureLines& lines) {
  const bool stiff = stiffness_known(lines);
  if (!stiff) add_unknown_stretch(input, lines);
  const auto span = pushed_span(lines);
  const Get push = input_of(lines, "push");
  const Get force = input_of(lines, "force");
  MeasureModel model;
  const numerics::Model pushed = [=](const Inputs& x) { return physics::pushed_tension(span(x), push(x), force(x)); };
  model.parts.push_back({"pushed_tension", "tension while pushed", Quantity::force, pushed});
  if (stiff) {
    const Get modulus = input_of(lines, "modulus");
    const Get caliper = input_of(lines, "caliper");
    const Get width = input_of(lines, "width");
    model.tension = [=](const Inputs& x) {
      return physics::tension_before_push(span(x), push(x), force(x), modulus(x) * caliper(x) * width(x));
    };
    model.parts.push_back({"added_tension", "of it the push adds", Quantity::force,
                           [=, before = model.tension](const Inputs& x) { return pushed(x) - before(x); }});
    model.parts.push_back({"pushed_stress", "stress while pushed", Quantity::stress,
                           [=](const Inputs& x) { return pushed(x) / (caliper(x) * width(x)); }});
  } else {
    const Get stretch = input_of(lines, "stretch");
    model.tension = [=](const Inputs& x) { return pushed(x) - stretch(x); };
  }
  model.parts.push_back({"added_strain", "strain that the push adds", Quantity::ratio,
                         [=](const Inputs& x) { return physics::push_lengthening(span(x), push(x)) / span(x).held; }});
  model.simple_formula = lines.has("place") ? "F/(push/a + push/b)" : "F S/(4 push)";
  model.simple = [=](const Inputs& x) { return physics::simple_push_tension(span(x), push(x), force(x)); };
  model.assumptions = assumptions_of(lines);
  use_pairs(model, lines);
  return model;
}

}  // namespace holdback::field
