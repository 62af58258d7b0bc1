#include <algorithm>
#include <cmath>

#include "holdback/physics/brake.hpp"
#include "holdback/physics/torque.hpp"
#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

WorkedTerm highest_radius_term(const WorkedCase& c) {
  return {"r_max", "friction radius, the higher estimate", Quantity::short_length,
          physics::friction_radius(c.brake.pad).highest};
}

void add_radius(WorkedSteps& steps, const WorkedCase& c, const SectorPad& pad) {
  const std::vector<WorkedTerm> terms{
      {"d_in", "inner diameter of the pad", Quantity::short_length, pad.inner_diameter},
      {"d_out", "outer diameter of the pad", Quantity::short_length, pad.outer_diameter}};
  steps.add({"sector_radius_uniform_wear", "friction radius of a pad that has worn in", "(d_in + d_out) / 4", terms,
             c.friction_radius_term(), "the lower estimate, for capacity", "ugural"});
  steps.add({"sector_radius_uniform_pressure", "friction radius of a new pad",
             "(d_out^3 − d_in^3) / (d_out^2 − d_in^2) / 3", terms, highest_radius_term(c),
             "the higher estimate, where too much torque is the danger", "bhandari"});
}

/// The factor of a round pad, read from the table between two of its rows.
void add_round_factor(WorkedSteps& steps, const RoundPad& pad, const WorkedTerm& factor) {
  const double ratio = pad.pad_diameter / pad.centre_diameter;
  const WorkedTerm own{"d_pad", "diameter of the pad", Quantity::short_length, pad.pad_diameter};
  const WorkedTerm circle{"d_c", "diameter of the circle of its centre", Quantity::short_length, pad.centre_diameter};
  if (ratio >= 0.5) {
    steps.add({"round_pad_factor",
               factor.name,
               "0.9375",
               {},
               factor,
               "the last row of the table, kept above it",
               "fazekas1972"});
    return;
  }
  const double left = std::floor(ratio * 10) / 10;
  const double right = left + 0.1;
  steps.add({"round_pad_factor",
             factor.name,
             "delta_a + (d_pad / d_c − x_a) / 0.1 · (delta_b − delta_a)",
             {own,
              circle,
              {"x_a", "row of the table below d_pad/d_c", Quantity::number, left},
              {"delta_a", "factor in that row", Quantity::number, physics::round_pad_factor(left)},
              {"delta_b", "factor in the next row", Quantity::number, physics::round_pad_factor(right)}},
             factor,
             "published table, interpolated linearly",
             "fazekas1972"});
}

void add_radius(WorkedSteps& steps, const WorkedCase& c, const RoundPad& pad) {
  const double ratio = pad.pad_diameter / pad.centre_diameter;
  const WorkedTerm factor{"delta", "friction radius over the radius of the pad's circle", Quantity::number,
                          physics::round_pad_factor(ratio)};
  const WorkedTerm circle{"d_c", "diameter of the circle of its centre", Quantity::short_length, pad.centre_diameter};
  add_round_factor(steps, pad, factor);
  steps.add({"friction_radius",
             "friction radius of a round pad",
             "delta · d_c / 2",
             {factor, circle},
             c.friction_radius_term(),
             "the lower estimate, for capacity",
             "fazekas1972"});
  const char* note = "the higher estimate, of even pressure, where too much torque is the danger";
  constexpr double few_terms = 0.25;  // up to here the series below is right to ten digits
  if (ratio <= few_terms) {
    steps.add({"round_pad_factor_uniform_pressure",
               "friction radius of a round pad, the higher estimate",
               "d_c / 2 · (1 + x^2 / 8 + x^4 / 192 + x^6 / 1024 + 5 · x^8 / 16384)",
               {circle, {"x", "pad over the circle of its centre", Quantity::number, ratio}},
               highest_radius_term(c),
               note,
               derived_here});
    return;
  }
  steps.add(
      {"round_pad_factor_uniform_pressure",
       "friction radius of a round pad, the higher estimate",
       "d_c / 2 · delta_max",
       {circle,
        {"delta_max", "factor of even pressure", Quantity::number, physics::round_pad_factor_uniform_pressure(ratio)}},
       highest_radius_term(c),
       std::string(note) + "; the factor is the sum of a series in the ratio of the diameters",
       derived_here});
}

void add_radius(WorkedSteps& steps, const WorkedCase& c, const DataSheetPad& pad) {
  steps.add({"friction_radius",
             "friction radius of the data sheet",
             "d_e / 2",
             {{"d_e", "effective diameter", Quantity::short_length, pad.effective_diameter}},
             c.friction_radius_term(),
             "serves the sliding speed alone, the torque being known",
             by_definition});
}

std::vector<WorkedTerm> geometry_terms(const WorkedCase& c) {
  return {{"mu", "nominal friction", Quantity::number, c.grade.friction.value_or(0)},
          {"A_p", "piston area of one pair", Quantity::area, c.brake.piston_area},
          {"eta", "efficiency of the actuator", Quantity::ratio, c.brake.actuator_efficiency}};
}

void add_pair(WorkedSteps& steps, const WorkedCase& c) {
  const std::string name = "torque per pressure of one pair";
  if (const auto* sheet = std::get_if<DataSheetPad>(&c.brake.pad)) {
    steps.add(
        {"pair_torque_per_pressure",
         name,
         "M_sheet / (p_sheet − p_0)",
         {{"M_sheet", "torque of one pair by the data sheet", Quantity::torque, c.grade.torque_per_pair.value_or(0)},
          {"p_sheet", "pressure at which it is stated", Quantity::pressure, sheet->torque_pressure},
          c.threshold()},
         c.pair_term(),
         "",
         by_definition});
    return;
  }
  std::vector<WorkedTerm> terms = geometry_terms(c);
  terms.push_back(c.friction_radius_term());
  steps.add({"pair_torque_per_pressure", name, "2 · mu · A_p · eta · r_e", terms, c.pair_term(),
             "a pair grips the disc from both sides: two faces", derived_here});
}

/// Torque per pressure of all engaged pairs at both ends of the friction band.
void add_engaged(WorkedSteps& steps, const WorkedCase& c) {
  const WorkedTerm band{"x_f", "band of the friction, either way", Quantity::ratio, c.grade.friction_band};
  steps.add({"pair_torque_per_pressure",
             "torque per pressure of all engaged pairs, lowest friction",
             "K · N · n · (1 − x_f)",
             {c.pair_term(), c.brakes(), c.pairs(), band},
             c.weakest_term(),
             "for limits where torque may be missing",
             derived_here});
  std::vector<WorkedTerm> terms{c.brakes(), c.pairs(), band};
  std::string pair = "K";
  if (std::holds_alternative<DataSheetPad>(c.brake.pad)) {
    terms.push_back(c.pair_term());
  } else {
    pair = "2 · mu · A_p · eta · r_max";
    for (const WorkedTerm& term : geometry_terms(c)) terms.push_back(term);
    terms.push_back(highest_radius_term(c));
  }
  steps.add({"pair_torque_per_pressure", "torque per pressure of all engaged pairs, highest friction",
             pair + " · N · n · (1 + x_f)", terms, c.strongest_term(), "for limits where torque may be too much",
             derived_here});
}

}  // namespace

void add_fade(WorkedSteps& steps, const WorkedCase& c, std::size_t i) {
  if (c.friction_left(i) >= 1 || !steps.once("fade " + std::to_string(i))) return;
  add_balance(steps, c, i);
  constexpr double least = 0.1;
  const bool kept = c.friction_left(i) <= least;
  std::vector<WorkedTerm> terms;
  if (!kept)
    terms = {
        {"c_f", "share of friction lost per kelvin", Quantity::fade, c.grade.fade_rate},
        c.temperature(i),
        {"Theta_f", "temperature from which friction falls", Quantity::temperature, c.grade.fade_start.value_or(0)}};
  steps.add_at(i, {"fade_factor", "share of friction that heat leaves (" + c.place(i) + ")",
                   kept ? "0.1" : "1 − c_f · (Theta@ − Theta_f)", terms, c.friction_left_term(i),
                   kept ? "not taken below a tenth" : "pads are taken as hot as the disc", by_practice});
}

void add_brake(WorkedSteps& steps, const WorkedCase& c) {
  std::visit([&](const auto& pad) { add_radius(steps, c, pad); }, c.brake.pad);
  add_pair(steps, c);
  add_engaged(steps, c);
}

}  // namespace holdback::sizing
