#include <algorithm>

#include "holdback/physics/cooling.hpp"
#include "holdback/physics/heat.hpp"
#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

WorkedTerm convection(const WorkedCase& c, std::size_t i) {
  return {"hA" + c.at_place(i), "convection of one disc (" + c.place(i) + ")", Quantity::conductance,
          c.disc.convection[i]};
}
WorkedTerm radiation(const WorkedCase& c, std::size_t i) {
  return {"k_r" + c.at_place(i), "radiation of one disc, in W/K^4", Quantity::number, c.disc.radiation[i]};
}

double disc_power(const WorkedCase& c, std::size_t i) {
  return physics::slip_power(std::max(c.torques(i).run, 0.0), c.demand.rotational_speed[i]) / c.candidate.brakes;
}

void add_slip(WorkedSteps& steps, const WorkedCase& c) {
  const std::size_t i = c.at(c.survey.slip_power.diameter);
  const bool slips = c.torque(LoadCase::run, i) > 0;
  if (!slips) return;
  add_torque(steps, c, LoadCase::run, i);
  steps.add_at(i, {"slip_power",
                   "slip power of all brakes, highest over the roll",
                   "M_run@ · v / (d@ / 2)",
                   {c.torque_term(LoadCase::run, i), c.speed(), c.diameter(i)},
                   {"Q", "slip power of all brakes", Quantity::power, c.fit.slip_power},
                   "torque times the speed of the roll; near T v at every diameter",
                   "wentzell2007"});
}

/// What the disc sheds at its rated rise, against which its slip power is judged.
void add_rated(WorkedSteps& steps, const WorkedCase& c) {
  const Limit* limit = c.limit(LimitId::slip_power);
  if (limit == nullptr) return;
  const std::size_t i = c.at(limit->diameter);
  add_disc_power(steps, c, i);
  const WorkedTerm shed{"Q_rated", "power that one disc sheds at its rated rise", Quantity::power, limit->bound};
  const bool map = !c.brake.cooling.empty();
  steps.add_at(i,
               {"shed_power",
                "power that one disc sheds at its rated rise (" + c.place(i) + ")",
                "hA@ · dTheta + k_r@ · ((Theta_a + dTheta)^4 − Theta_a^4)",
                {convection(c, i),
                 {"dTheta", "rated rise", Quantity::temperature_difference, c.candidate.cooling->rated_rise()},
                 radiation(c, i),
                 c.ambient()},
                shed,
                map ? "hA and k_r are read at this speed from the cooling map, brought to this guard, air and altitude"
                    : "hA and k_r follow from the disc's dimensions at this speed, behind this guard, in this air",
                "incropera"});
  if (!map) return;
  const double omega = c.demand.rotational_speed[i];
  const double by_map = physics::cooling_power(c.brake.cooling, omega);
  steps.add({"cooling_power",
             "what guard, air and altitude leave of the cooling map (" + c.place(i) + ")",
             "Q_rated / Q_map",
             {shed, {"Q_map", "power of the map at this speed", Quantity::power, by_map}},
             {"s_site", "share of the map's power", Quantity::ratio, limit->bound / by_map},
             omega < c.brake.cooling.front().speed
                 ? "the disc turns slower than the map begins: the map's first point is shown, and below it the curve "
                   "follows the physics of the disc"
                 : "the map is interpolated by monotone cubics; this share checks what was read from it",
             "fritsch1984"});
}

}  // namespace

void add_disc_power(WorkedSteps& steps, const WorkedCase& c, std::size_t i) {
  if (!steps.once("disc power " + std::to_string(i))) return;
  add_torque(steps, c, LoadCase::run, i);
  const WorkedTerm power{"Q_disc@", "slip power of one disc (" + c.place(i) + ")", Quantity::power, disc_power(c, i)};
  if (power.value <= 0) {
    steps.add_at(i, {"slip_power",
                     power.name,
                     "0",
                     {},
                     power,
                     "drag alone makes the tension: the brake stays released",
                     derived_here});
    return;
  }
  steps.add_at(i, {"slip_power",
                   power.name,
                   "M_run@ · v / (d@ / 2) / N",
                   {c.torque_term(LoadCase::run, i), c.speed(), c.diameter(i), c.brakes()},
                   power,
                   "the discs share alike",
                   derived_here});
}

void add_balance(WorkedSteps& steps, const WorkedCase& c, std::size_t i) {
  if (!steps.once("balance " + std::to_string(i))) return;
  add_disc_power(steps, c, i);
  const double rise = c.pass.temperature[i] - c.survey.ambient;
  steps.add_at(
      i, {"steady_temperature",
          "power that one disc sheds at its steady temperature (" + c.place(i) + ")",
          "hA@ · (Theta@ − Theta_a) + k_r@ · (Theta@^4 − Theta_a^4)",
          {convection(c, i), c.temperature(i), c.ambient(), radiation(c, i)},
          {"Q_shed@", "power that the disc sheds", Quantity::power,
           physics::shed_power(c.survey.ambient, rise, c.disc.convection[i], c.disc.radiation[i])},
          "Theta was found by iteration so that the disc sheds what it takes: Q_shed equals Q_disc of this diameter",
          "incropera"});
}

void add_heat(WorkedSteps& steps, const WorkedCase& c) {
  add_slip(steps, c);
  add_rated(steps, c);
  add_balance(steps, c, c.at(c.survey.temperature.diameter));
  if (!c.fit.thermal || c.fit.thermal->disc.empty()) return;
  const ThermalFacts& thermal = *c.fit.thermal;
  steps.add(
      {"periodic_state",
       "change of the disc's temperature from one roll to the next",
       "Theta_after − Theta_before",
       {{"Theta_after", "disc after a roll and its change-over", Quantity::temperature, thermal.disc.back()},
        {"Theta_before", "disc as the roll begins", Quantity::temperature, thermal.disc.front()}},
       {"dTheta_roll", "change over one roll", Quantity::temperature_difference,
        thermal.disc.back() - thermal.disc.front()},
       "closing check of the four bodies that were integrated over rolls: a state that repeats changes by nothing",
       derived_here});
}

}  // namespace holdback::sizing
