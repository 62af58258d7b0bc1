// Heat that the brake makes: while it slips and in a stop.
#pragma once

namespace holdback::physics {

/// Slip power [W]: Q = M_b ω. With M_b ≈ T R and ω = v/R it is T v at every diameter.
inline double slip_power(double torque, double rotational_speed) { return torque * rotational_speed; }

/// Energy into the brake in a stop at constant deceleration [J]: E = M_b ω_0 t/2, the torque constant and the speed
/// falling linearly; equals ½Jω² plus the web's work less the drag's.
inline double stop_energy(double torque, double rotational_speed, double stop_time) {
  return torque * rotational_speed * stop_time / 2;
}

/// Rise of a body that loses nothing [K]: ΔΘ = E/(m c). Infinite without mass or heat capacity. Source: [bhandari],
/// ex. 12.14.
double adiabatic_rise(double energy, double mass, double specific_heat);

}  // namespace holdback::physics
