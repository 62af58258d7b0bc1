// The disc of a brake in numbers that heat needs, from what the file gives and, where it does not, from the pads.
#pragma once

#include "holdback/model/brake.hpp"
#include "holdback/physics/convection.hpp"

namespace holdback::sizing {

/// Ring of a face that the pads rub.
struct RubbedRing {
  double inner_radius{};  // [m]
  double outer_radius{};  // [m]
  double area{};          // [m²] of one face
};
RubbedRing rubbed_ring(const Brake& brake);

/// The disc as the air sees it. Without a diameter of its own a little larger than the ring of the pads; without a bore
/// the ring's inside; without a thickness what its mass makes.
physics::DiscShape disc_shape(const Brake& brake);

/// How deep the heat of one face may go before it meets that of the other [m]: half the plate, or one plate of a vented
/// disc.
double heat_path(const Brake& brake);

/// Friction material, where its own heat matters. Common practice, no source.
struct PadMaterial {
  double conductivity{0.8};    // [W/(m·K)]
  double density{2200};        // [kg/m³]
  double specific_heat{1000};  // [J/(kg·K)]
};
inline constexpr PadMaterial pad_material{};

/// Share of the friction heat that goes into the disc [1], with so many pairs engaged.
double heat_share(const Brake& brake, int pairs);

/// Rise of the disc's face [K] above its bulk temperature for each watt with which a stop of that time [s] begins, at
/// its highest: conduction into the friction ring as deep as heat_path(). One pair leaves most of the heat to the disc,
/// so it is taken for any number: the safe side.
double surface_rise_per_watt(const Brake& brake, double stop_time);

}  // namespace holdback::sizing
