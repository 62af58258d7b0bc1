#include "holdback/sizing/disc.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/physics/conduction.hpp"

namespace holdback::sizing {

namespace {

using std::numbers::pi;

/// Of the disc's edge outside of the pads, as share of the ring's radius; common practice, no source.
constexpr double edge = 1.03;

RubbedRing ring(double inner, double outer) { return {inner, outer, pi * (outer * outer - inner * inner)}; }

}  // namespace

RubbedRing rubbed_ring(const Brake& brake) {
  if (const auto* sector = std::get_if<SectorPad>(&brake.pad))
    return ring(sector->inner_diameter / 2, sector->outer_diameter / 2);
  if (const auto* round = std::get_if<RoundPad>(&brake.pad))
    return ring((round->centre_diameter - round->pad_diameter) / 2, (round->centre_diameter + round->pad_diameter) / 2);
  // A data sheet gives the face of a pad but not its outline: taken as square.
  const double radius = std::get<DataSheetPad>(brake.pad).effective_diameter / 2;
  const double half = std::min(std::sqrt(brake.pad_area) / 2, 0.5 * radius);
  return ring(radius - half, radius + half);
}

physics::DiscShape disc_shape(const Brake& brake) {
  const RubbedRing pads = rubbed_ring(brake);
  physics::DiscShape shape;
  shape.outer_radius = brake.disc_diameter ? *brake.disc_diameter / 2 : edge * pads.outer_radius;
  shape.inner_radius = brake.disc_bore ? *brake.disc_bore / 2 : std::min(pads.inner_radius, 0.9 * shape.outer_radius);
  const double face = pi * (shape.outer_radius * shape.outer_radius - shape.inner_radius * shape.inner_radius);
  const double gap = brake.vent_gap.value_or(0);
  shape.thickness = brake.disc_thickness.value_or(brake.disc_mass / (brake.disc_density * face) + gap);
  if (brake.vent_gap) shape.passages = {brake.vents, gap, shape.inner_radius, shape.outer_radius};
  shape.emissivity = brake.emissivity;
  return shape;
}

double heat_path(const Brake& brake) { return (disc_shape(brake).thickness - brake.vent_gap.value_or(0)) / 2; }

double heat_share(const Brake& brake, int pairs) {
  const double disc = physics::effusivity(brake.disc_conductivity, brake.disc_density, brake.specific_heat);
  const double pad = physics::effusivity(pad_material.conductivity, pad_material.density, pad_material.specific_heat);
  return physics::disc_heat_share(disc, pad, std::min(1.0, pairs * brake.pad_area / rubbed_ring(brake).area));
}

double surface_rise_per_watt(const Brake& brake, double stop_time) {
  const double flux = heat_share(brake, 1) / (2 * rubbed_ring(brake).area);  // per watt, two faces
  const double spread = physics::diffusivity(brake.disc_conductivity, brake.disc_density, brake.specific_heat);
  return physics::slab_stop_peak(flux, stop_time, brake.disc_conductivity, spread, heat_path(brake));
}

}  // namespace holdback::sizing
