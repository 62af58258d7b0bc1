// What most discs of tests have in common: cast iron, a light caliper, a steel hub.
#pragma once

#include "holdback/model/brake.hpp"

namespace holdback::test {

inline void make_cast_iron(Brake& brake) {
  brake.disc_density = 7200;
  brake.disc_conductivity = 48;
  brake.emissivity = 0.55;
  brake.caliper_mass = 1;
  brake.hub_mass = 3;
  brake.hub_conductance = 2;
}

}  // namespace holdback::test
