// Evaluators of the tension measured on site: push, sag, pluck, load cell.
#include <cmath>
#include <numbers>

#include "holdback/physics/measure.hpp"
#include "published/evaluators.hpp"

namespace holdback::published {

using namespace physics;
using Q = Quantity;

namespace {

PushedSpan span_of(Arguments& a) {
  const double span = a("span", Q::short_length);
  return {span, span / 2, span};
}

double in_turns(double per_second) { return 2 * std::numbers::pi * per_second; }

}  // namespace

Evaluators measure_evaluators() {
  return {
      {"tension_before_push",
       {Q::force,
        [](Arguments& a) {
          return tension_before_push(span_of(a), a("push", Q::short_length), a("force", Q::force),
                                     a("stiffness", Q::force));
        }}},
      {"pushed_tension",
       {Q::force,
        [](Arguments& a) { return pushed_tension(span_of(a), a("push", Q::short_length), a("force", Q::force)); }}},
      {"simple_push_tension",
       {Q::force,
        [](Arguments& a) {
          return simple_push_tension(span_of(a), a("push", Q::short_length), a("force", Q::force));
        }}},
      {"catenary_end",
       {Q::force,
        [](Arguments& a) {
          return catenary_of_sag(a("weight", Q::tension_per_width), a("span", Q::web_length), a("sag", Q::short_length))
              .end;
        }}},
      {"catenary_length",
       {Q::web_length,
        [](Arguments& a) {
          return catenary_of_sag(a("weight", Q::tension_per_width), a("span", Q::web_length), a("sag", Q::short_length))
              .length;
        }}},
      {"catenary_slope",
       {Q::angle,
        [](Arguments& a) {
          return catenary_of_sag(a("weight", Q::tension_per_width), a("span", Q::web_length), a("sag", Q::short_length))
              .slope;
        }}},
      {"span_frequency",
       {Q::frequency,
        [](Arguments& a) {
          return in_turns(span_frequency(a("tension_per_width", Q::tension_per_width), a("mass", Q::basis_weight),
                                         a("span", Q::short_length)));
        }}},
      {"cell_resultant",
       {Q::force, [](Arguments& a) { return cell_resultant(a("tension", Q::force), a("wrap", Q::angle)); }}},
  };
}

}  // namespace holdback::published
