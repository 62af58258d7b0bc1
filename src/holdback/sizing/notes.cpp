#include "holdback/sizing/notes.hpp"

#include <algorithm>

#include "holdback/physics/roll.hpp"

namespace holdback::sizing {

namespace {

double heaviest_roll(const Stand& stand) {
  double heaviest = 0;
  for (const Job& job : stand.jobs) {
    const double length = physics::roll_length(job.roll.core_radius(), job.roll.full_radius(), job.web.caliper);
    const double mass = physics::web_mass(job.web.basis_weight, job.web.width, length) + job.roll.core_mass;
    heaviest = std::max(heaviest, mass);
  }
  return heaviest;
}

double hottest_rating(const Stand& stand) {
  double hottest = 0;
  for (const Brake& brake : stand.brakes) hottest = std::max(hottest, brake.rated_temperature);
  return hottest;
}

}  // namespace

std::vector<Note> assumptions(const Stand& stand, const Site& site) {
  std::vector<Note> notes;
  notes.push_back(
      {"friction lies anywhere in its grade's band: torque is judged at the low end on hot pads, control of low "
       "tension at the high end on cold pads"});
  notes.push_back(
      {"the web is wound at its caliper, without air between the layers; the roll is round and the tension uniform"});
  notes.push_back({"the disc is at one temperature, steady at each diameter; pads are taken as hot as the disc"});
  if (site.guard_factor)
    notes.push_back(
        {"the guard leaves {0} of free-air convection, as measured", {{*site.guard_factor, Quantity::ratio}}});
  if (!site.guard_factor && site.guard != Guard::none)
    notes.push_back({stand.guard_opening ? "the guard cools by what its openings of {0} let through"
                                         : "the guard cools by what the openings usual for its kind let through "
                                           "(common practice, no source): state guard_opening where it is known",
                     {{stand.guard_opening.value_or(0), Quantity::area}}});
  if (stand.altitude > 0)
    notes.push_back({"the air at {0} is thinner and cools less, by the standard atmosphere",
                     {{stand.altitude, Quantity::web_length}}});
  if (std::any_of(stand.brakes.begin(), stand.brakes.end(), [](const Brake& b) { return b.cooling.empty(); }))
    notes.push_back(
        {"without a cooling map a disc sheds what its dimensions give: correlations of turning discs, good to a fifth "
         "or so; a measured map is better"});
  if (std::any_of(stand.jobs.begin(), stand.jobs.end(), [](const Job& job) { return !job.tension; }))
    notes.push_back(
        {"recommended tensions come from tables of common practice (no source), cut by strength and strain: run "
         "what the customer measures to be good instead, where that is known"});
  notes.push_back({"stops brake at a constant rate; in an emergency stop {0} of the tension is to remain",
                   {{site.limits.emergency_stop_tension, Quantity::ratio}}});
  return notes;
}

std::vector<Note> cautions(const Stand& stand, const Site& site) {
  std::vector<Note> notes;
  notes.push_back(
      {"Rolls weigh up to {0}: lift and chuck them only with gear rated for it, and never stand under or before "
       "a roll that may run.",
       {{heaviest_roll(stand), Quantity::mass}}});
  if (hottest_rating(stand) > 0)
    notes.push_back(
        {"Discs and pads may reach {0}: keep the guard on, let them cool before touching, keep paper dust and "
         "solvent away.",
         {{hottest_rating(stand), Quantity::temperature}}});
  notes.push_back(
      {"Vent and lock out the air before hands go near pads; a brake that needs air to hold lets go when air "
       "fails: hold the roll by other means. Supply reckoned with: {0}.",
       {{site.air_ceiling, Quantity::pressure}}});
  notes.push_back(
      {"In-running nips and a web under tension pull in and cut: guard them, and measure standing still where you "
       "can."});
  notes.push_back(
      {"This is a calculation from the values given. Makers' ratings, local codes and a licensed engineer's "
       "judgement come before it."});
  return notes;
}

}  // namespace holdback::sizing
