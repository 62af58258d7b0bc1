// What a disc sheds. A cooling map gives power against speed at one temperature rise in free air; guard and altitude
// scale it. Deeper models (rotating-disc correlations, radiation) calibrate themselves to the same map.
#pragma once

#include <vector>

#include "holdback/model/brake.hpp"
#include "holdback/model/stand.hpp"

namespace holdback::physics {

/// Power [W] that a map gives at a speed [rad/s]: monotone between its points [fritsch1984]. Below the first point it
/// falls in proportion to speed, down to nothing at standstill: the safe side, since the convection of a vented rotor
/// goes nearly with n [mcphee2008], that of a plain face in laminar flow only with √n [dorfman1963], and still air and
/// radiation remain. Above the last point it stays, since nothing is known there. Zero without points.
double cooling_power(const std::vector<CoolingPoint>& map, double rotational_speed);

/// Convective cooling behind a guard over that in free air [1]: none 1, mesh with open base 1, partly closed 0.7,
/// closed box 0.4. Common practice, no source; a stand file may state its own.
double default_guard_factor(Guard guard);

/// Convective cooling at an altitude [m] over that at sea level [1]: (ρ/ρ_0)^0.8, the turbulent law Nu ~ Re^0.8
/// [dorfman1963]; densities of the standard atmosphere [iso2533]. Laminar flow would lose less (0.5 in place of 0.8).
/// Valid 0 … 5000 m.
double altitude_factor(double altitude);

/// Conductance of one disc [W/K]: hA(n) = Q_c(n)/ΔΘ_rated · guard · altitude. Taken as the same at every temperature;
/// radiation makes a hot disc shed more, so above the rated rise this is the safe side and below it the other.
double cooling_conductance(const Brake& brake, double rotational_speed, double guard_factor, double altitude_factor);

/// Steady temperature [K] of a disc that takes `power` [W]: Θ = Θ_amb + Q/hA. Ambient without power, infinite without
/// conductance.
double steady_temperature(double ambient, double power, double conductance);

}  // namespace holdback::physics
