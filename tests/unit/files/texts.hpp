// Invented stand files for the tests of the readers, and short ways to read them.
#pragma once

#include <algorithm>
#include <string>

#include "holdback/files/stand_file.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files::test {

/// Every key of a stand file with a sector brake, each at a value that is not its default.
inline std::string full_stand() {
  return R"toml(holdback = 1

[stand]
title = "slitter 2"
currency = "EUR"
drag = "1.5 N*m"
shaft_inertia = "0.04 kg*m2"
guard = "partly closed"
guard_factor = "60 %"
guard_opening = "700 cm2"
ambient = "30 degC"
altitude = "500 m"

[air]
supply_pressure = "7 bar"
lowest_pressure = "0.2 bar"
highest_pressure = "5 bar"
resolution = "0.01 bar"
hysteresis = "0.03 bar"
lag = "0.2 s"
dead_time = "0.05 s"

[line]
top_speed = "300 m/min"
lowest_speed = "12 m/min"
ramp_time = "20 s"
stop_time = "9 s"
emergency_stop_time = "4 s"
changeover_time = "4 min"
hours_per_day = 16
days_per_week = 6
weeks_per_year = 48
uptime = "65 %"

[limits]
tension_tolerance = "9 %"
reserve = "15 %"
stop_tension = "90 %"
emergency_stop_tension = "20 %"
hold_tension = "80 %"
least_pad_life = "600 h"
yield_share = "20 %"
strain_limit = "0.2 %"
touch_temperature = "50 degC"
shaft_safety = 2
whirl_share = "60 %"
least_bearing_life = "30000 h"

[uncertainty]
pressure = "3 %"
drag = "25 %"
tension = "4 %"
caliper = "6 %"
ambient = "8 K"
cooling = "20 %"

[path]
first_span = "0.9 m"
longest_span = "2.5 m"
most_sag = "1 %"

[[idler]]
name = "first idler"
diameter = "100 mm"
wrap = "90 deg"
friction = 0.3
roughness = "4 um"
drag = "0.03 N*m"
inertia = "0.004 kg*m2"
span = "0.7 m"

[shaft]
support = "cantilever"
bearing_span = "400 mm"
roll_centre = "1100 mm"
modulus = "205 GPa"
density = "7800 kg/m3"
tensile_strength = "600 MPa"
notch_factor = 1.8
pull_angle = "20 deg"
bearing_rating = "40 kN"
bearing_kind = "roller"
core_grip = "300 N*m"

[[shaft.section]]
length = "1700 mm"
diameter = "90 mm"
bore = "40 mm"

[[web]]
name = "film"
material = "polyester"
width = "1000 mm"
caliper = "12 um"
basis_weight = "16.8 g/m2"
density = "1400 kg/m3"
modulus = "4.5 GPa"
yield_strength = "100 MPa"
wound_tension = "150 N/m"
loss = "3 %"

[[web.ply]]
material = "polyester"
caliper = "12 um"
basis_weight = "16.8 g/m2"
modulus = "4.5 GPa"
yield_strength = "100 MPa"

[[roll]]
name = "jumbo"
core_diameter = "152 mm"
full_diameter = "800 mm"
core_mass = "4 kg"
runout = "1 mm"
lobes = 2
length = "40000 m"
mass = "680 kg"

[[job]]
name = "slit film"
web = "film"
roll = "jumbo"
speed = "240 m/min"
tension = "90 N"
tension_per_width = "150 N/m"
tension_tolerance = "8 %"
ramp_time = "15 s"
stop_time = "8 s"
emergency_stop_time = "3 s"
share = 2.5
width = "600 mm"

[[brake]]
name = "D300"
pad = "sector"
pad_inner_diameter = "180 mm"
pad_outer_diameter = "290 mm"
pad_angle = "40 deg"
pairs = 4
most_brakes = 2
piston_area = "20 cm2"
actuator_efficiency = "90 %"
threshold_pressure = "0.15 bar"
pad_area = "40 cm2"
usable_pad_depth = "6 mm"
drag = "0.3 N*m"
disc_mass = "12 kg"
disc_inertia = "0.15 kg*m2"
specific_heat = "480 J/(kg*K)"
cooling = [{ speed = "100 rev/min", power = "0.6 kW" }, { speed = "800 rev/min", power = "2.2 kW" }]
cooling_rise = "150 K"
disc_diameter = "300 mm"
disc_bore = "170 mm"
disc_thickness = "36 mm"
vent_gap = "12 mm"
vents = 40
disc_density = "7100 kg/m3"
disc_conductivity = "50 W/(m*K)"
emissivity = "60 %"
caliper_mass = "0.9 kg"
hub_mass = "2 kg"
hub_conductance = "3 W/K"
rated_pressure = "5.5 bar"
rated_torque = "400 N*m"
rated_speed = "1800 rev/min"
rated_temperature = "250 degC"
price = 2400
pad_price = 18.5

[[brake.grade]]
name = "standard"
friction = 0.35
friction_band = "15 %"
static_ratio = 1.1
friction_slope = "-2 %/(m/s)"
fade_start = "180 degC"
fade_rate = "0.1 %/K"
temperature_limit = "220 degC"
wear_rate = "25 mm3/MJ"
wear_knee = "150 degC"
wear_doubling = "40 K"
pressure_speed_limit = "3 MPa*m/s"

[control]
kind = "load cell"
sample_time = "5 ms"
gain = 0.8
integral_time = "0.5 s"
derivative_time = "0.02 s"
schedule = "fixed"
authority = "60 %"
inertia_compensation = "80 %"
output_step = "0.01 bar"

[load_cell]
idler = "first idler"
lag = "30 ms"
resolution = "0.5 N"
noise = "0.3 N"

[dancer]
idler = "first idler"
mass = "6 kg"
travel = "150 mm"
damping = "200 N*s/m"
strands = 1
taper = "5 %"

[diameter_sensor]
method = "turns"
lag = "0.4 s"
resolution = "2 mm"
noise = "0.5 mm"

[[scenario]]
name = "a day"
start_diameter = "700 mm"
start_speed = "60 m/min"
end = "900 s"

[[scenario.event]]
do = "ramp"
at = "5 s"
speed = "240 m/min"
duration = "20 s"

[[scenario.event]]
do = "setpoint"
at_diameter = "600 mm"
tension = "80 N"

[[scenario.event]]
do = "pairs"
pairs = 2

[[scenario.event]]
do = "splice"
mismatch = "3 %"
)toml";
}

/// Only the keys that are required.
inline std::string least_stand() {
  return R"toml([line]
top_speed = "300 m/min"
[[web]]
name = "film"
width = "1000 mm"
caliper = "12 um"
density = "1400 kg/m3"
[[roll]]
name = "jumbo"
core_diameter = "152 mm"
full_diameter = "800 mm"
[[job]]
name = "slit film"
web = "film"
roll = "jumbo"
speed = "240 m/min"
[[brake]]
name = "D300"
pad = "data sheet"
torque_pressure = "5 bar"
effective_diameter = "240 mm"
pairs = 4
pad_area = "35 cm2"
disc_mass = "12 kg"
disc_inertia = "0.15 kg*m2"
cooling = [{ speed = "100 rev/min", power = "0.6 kW" }]
cooling_rise = "150 K"
rated_pressure = "5.5 bar"
rated_torque = "400 N*m"
rated_speed = "1800 rev/min"
rated_temperature = "250 degC"
[[brake.grade]]
name = "standard"
torque_per_pair = "85 N*m"
temperature_limit = "220 degC"
)toml";
}

/// Tables that may be absent, only with the keys that they require. The ply belongs to the last web above it.
inline std::string optional_tables() {
  return R"toml([[idler]]
name = "first idler"
diameter = "100 mm"
wrap = "90 deg"
[shaft]
bearing_span = "1600 mm"
roll_centre = "800 mm"
[[shaft.section]]
length = "1600 mm"
diameter = "76 mm"
[load_cell]
[dancer]
[diameter_sensor]
[[scenario]]
name = "new roll"
[[scenario.event]]
do = "splice"
)toml";
}

/// `text` with the first `from` replaced; a test that changes nothing would prove nothing, so that throws.
inline std::string with(std::string text, const std::string& from, const std::string& to) {
  return text.replace(text.find(from), from.size(), to);  // std::out_of_range when `from` is not in it
}

inline StandFile read(const std::string& text) { return read_stand(text, "stand.toml"); }

inline StandFile read_with_jobs(const std::string& csv) {
  StandFile file = read(least_stand());
  read_jobs(csv, "jobs.csv", file);
  return file;
}

inline std::string told(const Note& note) { return units::fill(note, units::System::si); }

/// All problems, one a line: "3:9 line.top_speed | what | value | accepted".
inline std::string told(const Problems& problems) {
  std::string all;
  for (const Problem& problem : problems)
    all += std::to_string(problem.where.line) + ":" + std::to_string(problem.where.column) + " " + problem.field +
           " | " + told(problem.what) + " | " + problem.value + " | " + told(problem.accepted) + "\n";
  return all;
}

/// The problem at this field; one with an empty sentence when there is none.
inline Problem at(const Problems& problems, const std::string& field) {
  const auto found = std::find_if(problems.begin(), problems.end(), [&](const Problem& p) { return p.field == field; });
  return found == problems.end() ? Problem{} : *found;
}

}  // namespace holdback::files::test
