#include "holdback/physics/shaft.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "holdback/physics/beam.hpp"
#include "holdback/physics/gravity.hpp"
#include "holdback/physics/whirl.hpp"

namespace holdback::physics {

namespace {

using std::numbers::pi;
constexpr double infinity = std::numeric_limits<double>::infinity();

/// d⁴ − d_i⁴, factored so that thin walls keep their digits; zero without a wall.
double fourth_powers(double diameter, double bore) {
  const double outside = diameter * diameter, inside = bore * bore;
  return bore < diameter ? (outside - inside) * (outside + inside) : 0;
}

/// Z = π(d⁴ − d_i⁴)/(32 d) [m³]
double section_modulus(double diameter, double bore) {
  const double wall = fourth_powers(diameter, bore);
  return wall > 0 ? pi / 32 * wall / diameter : 0;
}

/// What a load makes per strength: nothing without a load, without bound where there is nothing to bear it.
double share_of(double load, double strength) {
  if (load <= 0) return 0;
  return strength > 0 ? load / strength : infinity;
}

double finite_or_infinite(double value) { return std::isnan(value) ? infinity : value; }

double life_exponent(BearingKind kind) { return kind == BearingKind::ball ? 3 : 10.0 / 3; }

}  // namespace

// ---- sections -------------------------------------------------------------------------------------------------------

// E I, I = π(d⁴ − d_i⁴)/64
double bending_rigidity(double modulus, double diameter, double bore) {
  return finite_or_infinite(modulus * pi / 64 * fourth_powers(diameter, bore));
}

// σ = 32 M d/(π(d⁴ − d_i⁴))
double bending_stress(double moment, double diameter, double bore) {
  return finite_or_infinite(share_of(moment, section_modulus(diameter, bore)));
}

// τ = 16 T d/(π(d⁴ − d_i⁴))
double torsion_stress(double torque, double diameter, double bore) {
  return finite_or_infinite(share_of(std::abs(torque), 2 * section_modulus(diameter, bore)));
}

// φ = 32 T L/(π G(d⁴ − d_i⁴))
double torsion_twist(double torque, double length, double shear_modulus, double diameter, double bore) {
  return finite_or_infinite(
      share_of(32 / pi * std::abs(torque) * length, shear_modulus * fourth_powers(diameter, bore)));
}

// ---- fatigue --------------------------------------------------------------------------------------------------------

// σ' = √(σ² + 3τ²)
double von_mises_stress(double bending, double torsion) { return std::sqrt(bending * bending + 3 * torsion * torsion); }

// S_e = k_a k_b · 0.5 S_ut
double endurance_limit(double tensile_strength, double diameter) {
  if (tensile_strength <= 0) return 0;
  const double specimen = std::min(0.5 * tensile_strength, 700e6);
  const double surface = std::min(1.0, 4.51 * std::pow(tensile_strength / 1e6, -0.265));
  const double millimetres = std::max(2.79, diameter * 1e3);
  const double size = millimetres <= 51 ? std::pow(millimetres / 7.62, -0.107) : 1.51 * std::pow(millimetres, -0.157);
  return surface * size * specimen;
}

// n = 1/(σ_a/S_e + σ_m/S_ut)
double fatigue_safety(double alternating, double steady, double endurance_limit, double tensile_strength) {
  const double used = share_of(alternating, endurance_limit) + share_of(steady, tensile_strength);
  return used > 0 ? 1 / used : infinity;
}

// ---- bearings -------------------------------------------------------------------------------------------------------

// L_10 = 10⁶ (C/P)^p
double bearing_life(double rating, double load, BearingKind kind) {
  if (load <= 0) return infinity;
  return 1e6 * std::pow(std::max(0.0, rating) / load, life_exponent(kind));
}

// t = 2π L/ω
double bearing_running_time(double revolutions, double rotational_speed) {
  if (rotational_speed <= 0) return infinity;
  return 2 * pi * revolutions / rotational_speed;
}

// P_m = (Σ P^p n Δt/Σ n Δt)^(1/p), scaled by the largest load
double equivalent_bearing_load(const std::vector<BearingDuty>& duties, BearingKind kind) {
  const double exponent = life_exponent(kind);
  double largest = 0;
  for (const BearingDuty& duty : duties) largest = std::max(largest, duty.load);
  if (largest <= 0) return 0;
  double damage = 0, turned = 0;
  for (const BearingDuty& duty : duties) {
    const double angle = std::max(0.0, duty.speed) * std::max(0.0, duty.duration);
    damage += std::pow(std::max(0.0, duty.load) / largest, exponent) * angle;
    turned += angle;
  }
  if (turned <= 0) return 0;
  return finite_or_infinite(largest * std::pow(damage / turned, 1 / exponent));
}

// M_g = T R + J_o α
double grip_torque(double tension, double radius, double outside_inertia, double roll_deceleration) {
  return finite_or_infinite(tension * radius + outside_inertia * roll_deceleration);
}

// ---- the whole shaft ------------------------------------------------------------------------------------------------

namespace {

struct Roll {
  double begin{};
  double end{};
};

Roll roll_on(const Shaft& shaft, double width) {
  const double half = std::max(0.0, width) / 2;
  return {shaft.roll_centre - half, shaft.roll_centre + half};
}

/// The shaft, a stretch for each section, from the first bearing, or from the roll's end where that lies before it, to
/// whatever lies last.
Beam beam_of(const Shaft& shaft, const Roll& roll) {
  Beam beam;
  beam.second_bearing = shaft.bearing_span;
  double end = 0;
  for (const ShaftSection& section : shaft.sections) {
    const double area = pi / 4 * (section.diameter - section.bore) * (section.diameter + section.bore);
    beam.stretches.push_back({std::max(0.0, section.length),
                              bending_rigidity(shaft.modulus, section.diameter, section.bore), shaft.density * area});
    end += beam.stretches.back().length;
  }
  if (beam.stretches.empty()) return beam;
  beam.begin = std::min(0.0, roll.begin);
  beam.stretches.front().length -= beam.begin;
  beam.stretches.back().length += std::max({end, shaft.bearing_span, roll.end}) - end;
  return beam;
}

std::vector<BeamLoad> loads_on(const Shaft& shaft, const Beam& beam, const Roll& roll, double roll_mass, double pull) {
  std::vector<BeamLoad> loads;
  double x = beam.begin;
  for (const BeamStretch& stretch : beam.stretches) {
    if (stretch.length > 0) {
      loads.push_back({x, x + stretch.length, {0, -gravity * stretch.mass_per_length * stretch.length}});
    }
    x += stretch.length;
  }
  const Across web{pull * std::cos(shaft.pull_angle), pull * std::sin(shaft.pull_angle)};
  loads.push_back({roll.begin, roll.end, web + Across{0, -gravity * roll_mass}});
  return loads;
}

/// What the shaft bears where a piece bends most.
struct Strain {
  double place{};
  std::size_t section{};
  double moment{};
  double bending{};
  double torsion{};
  double safety{};
};

Strain strain_in(const BentPiece& piece, const Shaft& shaft, double torque) {
  const ShaftSection& section = shaft.sections[piece.stretch];
  Strain strain;
  strain.place = piece.largest_moment_place;
  strain.section = piece.stretch;
  strain.moment = piece.largest_moment;
  strain.bending = bending_stress(piece.largest_moment, section.diameter, section.bore);
  strain.torsion = torsion_stress(torque, section.diameter, section.bore);
  const double limit = endurance_limit(shaft.tensile_strength, section.diameter);
  strain.safety =
      fatigue_safety(shaft.notch_factor * strain.bending, von_mises_stress(0, shaft.notch_factor * strain.torsion),
                     limit, shaft.tensile_strength);
  return strain;
}

/// The place of least safety; of several, the first.
void find_worst(const Shaft& shaft, const BentBeam& bent, double torque, ShaftState& state) {
  std::vector<Strain> strains;
  strains.reserve(bent.pieces.size());
  for (const BentPiece& piece : bent.pieces) strains.push_back(strain_in(piece, shaft, torque));
  const auto weaker = [](const Strain& a, const Strain& b) { return a.safety < b.safety; };
  const Strain worst = *std::min_element(strains.begin(), strains.end(), weaker);
  state.worst_place = worst.place;
  state.worst_section = worst.section;
  state.bending_moment = worst.moment;
  state.bending_stress = worst.bending;
  state.torsion_stress = worst.torsion;
  state.safety = worst.safety;
}

}  // namespace

ShaftState shaft_state(const Shaft& shaft, double roll_mass, double web_width, double web_pull, double torque) {
  const Roll roll = roll_on(shaft, web_width);
  const Beam beam = beam_of(shaft, roll);
  const BentBeam bent = bend_beam(beam, loads_on(shaft, beam, roll, roll_mass, web_pull));
  ShaftState state;
  state.deflection = bent.largest_deflection;
  state.deflection_place = bent.largest_deflection_place;
  state.first_slope = bent.first_slope;
  state.second_slope = bent.second_slope;
  state.first_bearing_load = bent.first_reaction.size();
  state.second_bearing_load = bent.second_reaction.size();
  if (bent.pieces.empty()) {
    state.bending_stress = state.torsion_stress = infinity;
    return state;
  }
  find_worst(shaft, bent, torque, state);
  return state;
}

double first_whirl(const Shaft& shaft, double roll_mass, double web_width) {
  const Roll roll = roll_on(shaft, web_width);
  return beam_whirl(beam_of(shaft, roll), {{roll.begin, roll.end, roll_mass}});
}

}  // namespace holdback::physics
