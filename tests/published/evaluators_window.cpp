// Evaluators of the tension window: traction, air film, sag.
#include <cmath>

#include "holdback/physics/span.hpp"
#include "holdback/physics/traction.hpp"
#include "published/evaluators.hpp"

namespace holdback::published {

using namespace physics;
using Q = Quantity;

namespace {

double wrap_of(Arguments& a) {
  const std::string text = a.text("wrap");
  return read_quantity(text, text.find("turn") == std::string::npos ? Q::angle : Q::turns);
}

double sag(Arguments& a) {
  return sag_tension(a("weight", Q::tension_per_width), a("span", Q::web_length), a("sag", Q::short_length));
}

/// At the supports of a parabola the weight of half the span pulls down beside the level pull.
double sag_end(Arguments& a) {
  return std::hypot(sag(a), a("weight", Q::tension_per_width) * a("span", Q::web_length) / 2);
}

}  // namespace

Evaluators window_evaluators() {
  return {
      {"capstan_tension",
       {Q::force,
        [](Arguments& a) { return a("slack", Q::force) * capstan_ratio(a("friction", Q::number), wrap_of(a)); }}},
      {"traction_torque",
       {Q::torque,
        [](Arguments& a) {
          return traction_torque(a("tension", Q::force), a("radius", Q::short_length), a("friction", Q::number),
                                 wrap_of(a));
        }}},
      {"air_film",
       {Q::caliper,
        [](Arguments& a) {
          return air_film(a("radius", Q::short_length), a("viscosity", "Pa s"), a("speed", Q::speed),
                          a("tension_per_width", Q::tension_per_width));
        }}},
      {"sag_tension", {Q::force, sag}},
      {"sag_end_tension", {Q::force, sag_end}},
  };
}

}  // namespace holdback::published
