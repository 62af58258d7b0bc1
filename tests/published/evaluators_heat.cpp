// Evaluators of the deeper heat physics: convection, conduction into a face, and lumped nodes.
#include <cmath>
#include <numbers>
#include <vector>

#include "holdback/physics/conduction.hpp"
#include "holdback/physics/convection.hpp"
#include "holdback/physics/thermal.hpp"
#include "published/evaluators.hpp"

namespace holdback::published {

namespace {

using namespace physics;
using std::numbers::pi;
using Q = Quantity;

// Kinds that no stand file has.
constexpr const char* heat_flux = "W/m2";
constexpr const char* coefficient = "W/(m2 K)";
constexpr const char* thermal_conductivity = "W/(m K)";
constexpr const char* thermal_diffusivity = "m2/s";
constexpr const char* thermal_effusivity = "J/(m2 K s0.5)";

constexpr auto disc = static_cast<std::size_t>(ThermalNode::disc);

// ---- convection -----------------------------------------------------------------------------------------------------

/// One side of a vertical plate. The properties are given as a book does, so any density serves.
double plate_convection(Arguments& a) {
  Air air;
  air.density = 1;
  air.viscosity = a("kinematic_viscosity", "m2/s");
  air.conductivity = a("conductivity", thermal_conductivity);
  air.specific_heat = air.conductivity / a("diffusivity", thermal_diffusivity);
  air.prandtl = a("prandtl", Q::number);
  air.temperature = a("film_temperature", Q::temperature);
  const double height = a("height", Q::short_length);
  const double rise = a("rise", Q::temperature_difference);
  return natural_convection_coefficient(height, rise, air) * height * a("width", Q::short_length) * rise;
}

/// One metre of pipe: convection at a coefficient, and radiation to the room.
double pipe_loss(Arguments& a) {
  const double area = pi * a("diameter", Q::short_length);
  const double wall = a("wall", Q::temperature);
  const double room = a("room", Q::temperature);
  return a("coefficient", coefficient) * area * (wall - room) +
         radiated_power(a("emissivity", Q::number), area, wall, room);
}

/// Exponent of speed of the passages' coefficient, between two speeds.
double passage_exponent(Arguments& a) {
  const Passages passages{static_cast<int>(a("count", Q::count)), a("gap", Q::short_length),
                          a("inner_radius", Q::short_length), a("outer_radius", Q::short_length)};
  const Air air = air_at(101325, a("film_temperature", Q::temperature));
  const double slow = a("speed_1", Q::rotational_speed);
  const double fast = a("speed_2", Q::rotational_speed);
  const auto at = [&](double speed) { return passage_coefficient(passages, passage_speed(passages, speed), air); };
  return std::log(at(fast) / at(slow)) / std::log(fast / slow);
}

Evaluators convection_evaluators() {
  return {
      {"laminar_disc_constant",
       {Q::number, [](Arguments& a) { return laminar_disc_constant(a("prandtl", Q::number)); }}},
      {"radiated_power",
       {Q::power,
        [](Arguments& a) {
          return radiated_power(a("emissivity", Q::number), a("area", Q::area), a("temperature", Q::temperature),
                                a("surroundings", Q::temperature));
        }}},
      {"plate_convection", {Q::power, plate_convection}},
      {"pipe_loss", {Q::power, pipe_loss}},
      {"passage_exponent", {Q::number, passage_exponent}},
  };
}

// ---- conduction -----------------------------------------------------------------------------------------------------

double effusivity_of(Arguments& a) {
  if (a.has("effusivity")) return a("effusivity", thermal_effusivity);
  return effusivity(a("conductivity", thermal_conductivity), a("density", Q::density),
                    a("specific_heat", Q::specific_heat));
}

/// The slab of a thickness, told by conductivity, density and specific heat.
double slab_peak(Arguments& a) {
  const double conductivity = a("conductivity", thermal_conductivity);
  const double spread = diffusivity(conductivity, a("density", Q::density), a("specific_heat", Q::specific_heat));
  return slab_stop_peak(a("flux", heat_flux), a("stop_time", Q::duration), conductivity, spread,
                        a("thickness", Q::short_length));
}

Evaluators conduction_evaluators() {
  return {
      {"diffusivity",
       {thermal_diffusivity,
        [](Arguments& a) {
          return diffusivity(a("conductivity", thermal_conductivity), a("density", Q::density),
                             a("specific_heat", Q::specific_heat));
        }}},
      {"fourier_number",
       {Q::number,
        [](Arguments& a) {
          return fourier_number(a("diffusivity", thermal_diffusivity), a("time", Q::duration),
                                a("length", Q::short_length));
        }}},
      {"half_space_step",
       {Q::temperature,
        [](Arguments& a) {
          const double start = a("start", Q::temperature);
          return start + half_space_step(a("surface", Q::temperature) - start, a("depth", Q::short_length),
                                         a("time", Q::duration), a("diffusivity", thermal_diffusivity));
        }}},
      {"half_space_flux",
       {Q::temperature,
        [](Arguments& a) {
          return a("start", Q::temperature) +
                 half_space_flux(a("flux", heat_flux), a("depth", Q::short_length), a("time", Q::duration),
                                 a("conductivity", thermal_conductivity), a("diffusivity", thermal_diffusivity));
        }}},
      {"stop_surface_rise",
       {Q::temperature_difference,
        [](Arguments& a) {
          return stop_surface_rise(a("flux", heat_flux), a("stop_time", Q::duration), a("time", Q::duration),
                                   effusivity_of(a));
        }}},
      {"stop_surface_peak",
       {Q::temperature_difference,
        [](Arguments& a) {
          return stop_surface_peak(a("flux", heat_flux), a("stop_time", Q::duration), effusivity_of(a));
        }}},
      {"slab_stop_peak", {Q::temperature_difference, slab_peak}},
  };
}

// ---- lumped nodes ---------------------------------------------------------------------------------------------------

ThermalNodes lone_disc(double capacity) {
  ThermalNodes nodes;
  nodes.capacity = {capacity, 1, 1, 1};
  return nodes;
}

NodeTemperatures all_at(double temperature) { return {temperature, temperature, temperature, temperature}; }

/// A small ball in a gas, as the one live node.
struct Ball {
  ThermalNodes nodes{};
  double conductance{};
  explicit Ball(Arguments& a) {
    const double diameter = a("diameter", Q::short_length);
    const double volume = pi / 6 * diameter * diameter * diameter;
    nodes = lone_disc(a("density", Q::density) * a("specific_heat", Q::specific_heat) * volume);
    conductance = a("coefficient", coefficient) * pi * diameter * diameter;
  }
};

double ball_cooling_time(Arguments& a) {
  const Ball ball(a);
  NodeTemperatures state = all_at(a("gas", Q::temperature));
  state[disc] = a("start", Q::temperature);
  return time_to_cool(ball.nodes, ball.conductance, state, a("gas", Q::temperature), a("end", Q::temperature));
}

double ball_temperature(Arguments& a) {
  const Ball ball(a);
  const ThermalSegment wait{a("time", Q::duration), 0, 0, ball.conductance};
  return advance(ball.nodes, all_at(a("start", Q::temperature)), wait, a("gas", Q::temperature))[disc];
}

/// A disc that is stopped over and over; the stop lasts a microsecond.
struct Stops {
  ThermalNodes nodes{};
  std::vector<ThermalSegment> segments{};
  explicit Stops(Arguments& a) {
    constexpr double stop = 1e-6;
    nodes = lone_disc(a("mass", Q::mass) * a("specific_heat", Q::specific_heat));
    const double power = a("energy", Q::energy) / stop;
    const double conductance = a("conductance", Q::conductance);
    segments = {{stop, power, power, conductance}, {a("period", Q::duration) - stop, 0, 0, conductance}};
  }
};

constexpr double air = 293.15;  // [K]; only rises are asked for

double rise_after_stop(Arguments& a) {
  const Stops stops(a);
  std::vector<ThermalSegment> run;
  for (int i = 0; i < static_cast<int>(a("stops", Q::count)); ++i)
    run.insert(run.end(), stops.segments.begin(), stops.segments.end());
  run.pop_back();
  return trajectory(stops.nodes, all_at(air), run, air).back()[disc] - air;
}

double steady_rise_after(Arguments& a) {
  const ThermalNodes nodes = lone_disc(a("mass", Q::mass) * a("specific_heat", Q::specific_heat));
  const double power = a("power", Q::power);
  const ThermalSegment run{a("time", Q::duration), power, power, a("conductance", Q::conductance)};
  return advance(nodes, all_at(air), run, air)[disc] - air;
}

/// A disc under constant power that convects and radiates.
struct RadiatingDisc {
  ThermalNodes nodes{};
  std::vector<ThermalSegment> segments{};
  double surroundings{};
  explicit RadiatingDisc(Arguments& a) {
    const double area = a("area", Q::area);
    nodes = lone_disc(a("mass", Q::mass) * a("specific_heat", Q::specific_heat));
    nodes.radiating_area = area;
    nodes.emissivity = a("emissivity", Q::number);
    const double power = a("power", Q::power);
    segments = {{100, power, power, a("coefficient", coefficient) * area}};
    surroundings = a("surroundings", Q::temperature);
  }
  double steady() const { return periodic_state(nodes, segments, surroundings).start[disc]; }
};

double radiated_share(Arguments& a) {
  const RadiatingDisc shown(a);
  const double radiated =
      radiated_power(shown.nodes.emissivity, shown.nodes.radiating_area, shown.steady(), shown.surroundings);
  return radiated / shown.segments[0].power;
}

double radiating_disc_time(Arguments& a) {
  const RadiatingDisc shown(a);
  return time_to_reach_share(shown.nodes, shown.segments, shown.surroundings, a("share", Q::ratio));
}

Evaluators thermal_evaluators() {
  return {
      {"ball_time_constant",
       {Q::duration,
        [](Arguments& a) {
          const Ball ball(a);
          return thermal_time_constant(ball.nodes, ball.conductance, all_at(300));
        }}},
      {"ball_cooling_time", {Q::duration, ball_cooling_time}},
      {"ball_temperature", {Q::temperature, ball_temperature}},
      {"periodic_stop_peak",
       {Q::temperature_difference,
        [](Arguments& a) {
          const Stops stops(a);
          return periodic_state(stops.nodes, stops.segments, air).highest[disc].temperature - air;
        }}},
      {"periodic_stop_trough",
       {Q::temperature_difference,
        [](Arguments& a) {
          const Stops stops(a);
          return periodic_state(stops.nodes, stops.segments, air).lowest[disc].temperature - air;
        }}},
      {"rise_after_stop", {Q::temperature_difference, rise_after_stop}},
      {"steady_rise_after", {Q::temperature_difference, steady_rise_after}},
      {"disc_time_constant",
       {Q::duration,
        [](Arguments& a) {
          const ThermalNodes nodes = lone_disc(a("mass", Q::mass) * a("specific_heat", Q::specific_heat));
          return thermal_time_constant(nodes, a("conductance", Q::conductance), all_at(air));
        }}},
      {"radiating_disc", {Q::temperature, [](Arguments& a) { return RadiatingDisc(a).steady(); }}},
      {"radiated_share", {Q::number, radiated_share}},
      {"radiating_disc_time", {Q::duration, radiating_disc_time}},
  };
}

}  // namespace

Evaluators heat_depth_evaluators() {
  Evaluators all;
  for (const auto topic : {convection_evaluators, conduction_evaluators, thermal_evaluators}) all.merge(topic());
  return all;
}

}  // namespace holdback::published
