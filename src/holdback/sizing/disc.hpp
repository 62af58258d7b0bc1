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

/// Rise of the disc's face [K] above its bulk temperature for each watt with which a stop of that time [s] begins, at
/// its highest: conduction into the friction ring as deep as heat_path().
double surface_rise_per_watt(const Brake& brake, double stop_time);

}  // namespace holdback::sizing
