// The stand: the drawing to scale, and what the file says of line, air, brake, guard, path, control and limits.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/draw/elevation.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

std::string maybe(const std::optional<double>& value, Quantity kind, units::System system) {
  return value ? given(*value, kind, system) : std::string{};
}

std::string in_words(Guard guard) {
  if (guard == Guard::none) return "none";
  if (guard == Guard::mesh) return "open mesh";
  return guard == Guard::partly_closed ? "partly closed" : "closed box";
}

/// The job of the drawing: the first in depth, else the first of the mix.
const Job* drawn_job(const Dossier& dossier) {
  const auto& jobs = dossier.stand.jobs;
  if (jobs.empty()) return nullptr;
  const auto deep = in_depth(dossier);
  if (deep.empty()) return &jobs.front();
  const auto found =
      std::find_if(jobs.begin(), jobs.end(), [&](const Job& job) { return job.name == deep.front()->job->job; });
  return found == jobs.end() ? &jobs.front() : &*found;
}

void drawing(Chapter& chapter, const Dossier& dossier) {
  const auto* job = drawn_job(dossier);
  if (job == nullptr) return;
  const auto* best = recommended(dossier);
  chapter.figure(draw::elevation_figure(dossier.stand, *job, best == nullptr ? nullptr : &best->fit, chapter.system()));
}

void line(Chapter& chapter, const Line& line) {
  const auto show = [&](double si, Quantity kind) { return given(si, kind, chapter.system()); };
  chapter.heading("Line");
  chapter.facts(
      {{"top speed", show(line.top_speed, Quantity::speed)},
       {"lowest speed with tension", show(line.lowest_speed, Quantity::speed)},
       {"ramp to top speed", show(line.ramp_time, Quantity::duration)},
       {"normal stop from top speed", show(line.stop_time, Quantity::duration)},
       {"emergency stop from top speed", show(line.emergency_stop_time, Quantity::duration)},
       {"standstill between rolls", show(line.changeover_time, Quantity::duration)},
       {"runs", fmt::format("{} h a day, {} days a week, {} weeks a year", show(line.hours_per_day, Quantity::number),
                            show(line.days_per_week, Quantity::number), show(line.weeks_per_year, Quantity::number))},
       {"web runs for", show(line.uptime, Quantity::ratio) + " of the shift"}});
}

void air_and_guard(Chapter& chapter, const Stand& stand) {
  const auto system = chapter.system();
  const auto show = [&](double si, Quantity kind) { return given(si, kind, system); };
  chapter.heading("Air, shaft, guard");
  chapter.facts({{"air supply, lowest", show(stand.air.supply_pressure, Quantity::pressure)},
                 {"regulator controls", show(stand.air.lowest_pressure, Quantity::pressure) + " to " +
                                            show(stand.air.highest_pressure, Quantity::pressure)},
                 {"smallest step", show(stand.air.resolution, Quantity::pressure)},
                 {"hysteresis", show(stand.air.hysteresis, Quantity::pressure)},
                 {"lag of the air", show(stand.air.lag, Quantity::duration)},
                 {"dead time of the air", show(stand.air.dead_time, Quantity::duration)},
                 {"drag of bearings and seals", show(stand.drag, Quantity::torque)},
                 {"inertia of the shaft", show(stand.shaft_inertia, Quantity::inertia)},
                 {"guard", in_words(stand.guard)},
                 {"guard leaves of free-air cooling", maybe(stand.guard_factor, Quantity::ratio, system)},
                 {"free area of the guard", maybe(stand.guard_opening, Quantity::area, system)},
                 {"air around the disc", show(stand.ambient, Quantity::temperature)},
                 {"above sea level", show(stand.altitude, Quantity::web_length)}});
}

std::string pad_in_words(const Pad& pad, units::System system) {
  const auto length = [system](double si) { return given(si, Quantity::short_length, system); };
  if (const auto* sector = std::get_if<SectorPad>(&pad))
    return fmt::format("sector of {}, Ø {} to {}", given(sector->angle, Quantity::angle, system),
                       length(sector->inner_diameter), length(sector->outer_diameter));
  if (const auto* round = std::get_if<RoundPad>(&pad))
    return fmt::format("round, Ø {} on a circle of Ø {}", length(round->pad_diameter), length(round->centre_diameter));
  const auto& sheet = std::get<DataSheetPad>(pad);
  return fmt::format("by data sheet at {}, effective Ø {}", given(sheet.torque_pressure, Quantity::pressure, system),
                     length(sheet.effective_diameter));
}

void brakes(Chapter& chapter, const Stand& stand) {
  if (stand.brakes.empty()) return;
  const auto system = chapter.system();
  chapter.heading("Brakes to choose from");
  Rows<Brake> rows(stand.brakes, system);
  rows.text("brake", &Brake::name)
      .text("pads", [=](const Brake& brake) { return pad_in_words(brake.pad, system); })
      .input("pairs", Quantity::count, &Brake::pairs)
      .input("most on the shaft", Quantity::count, &Brake::most_brakes)
      .input("rated torque", Quantity::torque, &Brake::rated_torque)
      .input("rated pressure", Quantity::pressure, &Brake::rated_pressure)
      .input("rated speed", Quantity::rotational_speed, &Brake::rated_speed)
      .input("rated disc", Quantity::temperature, &Brake::rated_temperature)
      .input("price", Quantity::price, &Brake::price);
  chapter.table(rows.under("Candidates; ratings are the makers', as the stand file gives them"));
}

/// A friction grade with the brake that it is offered for.
struct Offered {
  const Brake* brake{};
  const Grade* grade{};
};

void grades(Chapter& chapter, const Stand& stand) {
  std::vector<Offered> offered;
  for (const auto& brake : stand.brakes)
    for (const auto& grade : brake.grades) offered.push_back({&brake, &grade});
  Rows<Offered> rows(offered, chapter.system());
  rows.text("brake", [](const Offered& each) { return each.brake->name; })
      .text("grade", [](const Offered& each) { return each.grade->name; })
      .input("friction", Quantity::number, [](const Offered& each) { return each.grade->friction; })
      .input("torque per pair", Quantity::torque, [](const Offered& each) { return each.grade->torque_per_pair; })
      .input("band ±", Quantity::ratio, [](const Offered& each) { return each.grade->friction_band; })
      .input("static over kinetic", Quantity::number, [](const Offered& each) { return each.grade->static_ratio; })
      .input("fades from", Quantity::temperature, [](const Offered& each) { return each.grade->fade_start; })
      .input("limit", Quantity::temperature, [](const Offered& each) { return each.grade->temperature_limit; })
      .input("wear rate", Quantity::wear_rate, [](const Offered& each) { return each.grade->wear_rate; })
      .input("wear rises from", Quantity::temperature, [](const Offered& each) { return each.grade->wear_knee; });
  chapter.table(rows.under("Friction grades"));
}

const Brake* fitted(const Dossier& dossier) {
  const auto* best = recommended(dossier);
  if (best == nullptr) return nullptr;
  const auto& brakes = dossier.stand.brakes;
  const auto found =
      std::find_if(brakes.begin(), brakes.end(), [&](const Brake& brake) { return brake.name == best->fit.brake; });
  return found == brakes.end() ? nullptr : &*found;
}

std::string cooling_in_words(const Brake& brake, units::System system) {
  if (brake.cooling.empty()) return "from the disc's dimensions";
  std::string out;
  for (const auto& point : brake.cooling)
    out += (out.empty() ? "" : ", ") + given(point.power, Quantity::power, system) + " at " +
           given(point.speed, Quantity::rotational_speed, system);
  return out + "; at a rise of " + given(brake.cooling_rise, Quantity::temperature_difference, system);
}

void fitted_brake(Chapter& chapter, const Brake& brake) {
  const auto system = chapter.system();
  const auto show = [&](double si, Quantity kind) { return given(si, kind, system); };
  const auto some = [&](double si, Quantity kind) { return si > 0 ? show(si, kind) : std::string{}; };
  chapter.heading("Brake " + report::named(brake.name) + ", as fitted");
  chapter.facts(
      {{"piston area of a pair", some(brake.piston_area, Quantity::area)},
       {"efficiency of the actuator", show(brake.actuator_efficiency, Quantity::ratio)},
       {"threshold pressure", show(brake.threshold_pressure, Quantity::pressure)},
       {"friction face of a pad", brake.pad_area > 0 ? meant(brake.pad_area, Quantity::area, system) : std::string{}},
       {"depth of a pad that may wear", show(brake.usable_pad_depth, Quantity::short_length)},
       {"drag, pads released", show(brake.drag, Quantity::torque)},
       {"disc, mass", show(brake.disc_mass, Quantity::mass)},
       {"disc, inertia", show(brake.disc_inertia, Quantity::inertia)},
       {"disc, outside", maybe(brake.disc_diameter, Quantity::short_length, system)},
       {"disc, thickness", maybe(brake.disc_thickness, Quantity::short_length, system)},
       {"disc, gap of its vents", maybe(brake.vent_gap, Quantity::short_length, system)},
       {"specific heat", show(brake.specific_heat, Quantity::specific_heat)},
       {"price of a pad", maybe(brake.pad_price, Quantity::price, system)}});
  chapter.facts({{"cooling in free air", cooling_in_words(brake, system)}}, 1);
}

void path(Chapter& chapter, const Stand& stand) {
  const auto system = chapter.system();
  const auto show = [&](double si, Quantity kind) { return given(si, kind, system); };
  chapter.heading("Path of the web");
  chapter.facts({{"first free span", show(stand.path.first_span, Quantity::short_length)},
                 {"longest level span", maybe(stand.path.longest_span, Quantity::short_length, system)},
                 {"sag accepted, of the span", show(stand.path.most_sag, Quantity::ratio)}});
  Rows<Idler> rows(stand.idlers, system);
  rows.text("idler", &Idler::name)
      .input("Ø", Quantity::short_length, &Idler::diameter)
      .input("wrap", Quantity::angle, &Idler::wrap)
      .input("friction", Quantity::number, &Idler::friction)
      .input("roughness", Quantity::caliper, &Idler::roughness)
      .input("drag", Quantity::torque, &Idler::drag)
      .input("inertia", Quantity::inertia, &Idler::inertia)
      .input("span behind it", Quantity::short_length, &Idler::span);
  chapter.table(rows.under("Idlers, from the roll on"));
}

std::string in_words(const LoadCell& cell, units::System system) {
  return fmt::format("on {}; lag {}, resolution {}, noise {}",
                     cell.idler.empty() ? "the last idler" : report::named(cell.idler),
                     given(cell.lag, Quantity::duration, system), given(cell.resolution, Quantity::force, system),
                     given(cell.noise, Quantity::force, system));
}

std::string in_words(const Dancer& dancer, units::System system) {
  return fmt::format("moving mass {}, travel {}, damping {}", given(dancer.mass, Quantity::mass, system),
                     given(dancer.travel, Quantity::short_length, system),
                     given(dancer.damping, Quantity::damping, system));
}

std::string in_words(const DiameterSensor& sensor, units::System system) {
  return fmt::format("{}; lag {}, resolution {}, noise {}",
                     sensor.method == DiameterMethod::ultrasonic ? "by sound" : "from speed over turns",
                     given(sensor.lag, Quantity::duration, system),
                     given(sensor.resolution, Quantity::short_length, system),
                     given(sensor.noise, Quantity::short_length, system));
}

void control_facts(Chapter& chapter, const Stand& stand) {
  const auto system = chapter.system();
  const auto words = [system](const auto& sensor) { return sensor ? in_words(*sensor, system) : std::string{}; };
  chapter.heading("Control");
  chapter.facts({{"pressure is set by", std::string(key_of(stand.control.kind))},
                 {"load cell", words(stand.load_cell)},
                 {"dancer", words(stand.dancer)},
                 {"diameter sensor", words(stand.diameter_sensor)},
                 {"inertia made good for", given(stand.control.inertia_compensation, Quantity::ratio, system)}},
                1);
}

void asked(Chapter& chapter, const Limits& limits) {
  const auto show = [&](double si, Quantity kind) { return given(si, kind, chapter.system()); };
  chapter.heading("What counts as good enough");
  chapter.facts({{"tension in steady run, ±", show(limits.tension_tolerance, Quantity::ratio)},
                 {"reserve: less in hand is tight", show(limits.reserve, Quantity::ratio)},
                 {"tension kept in a normal stop", show(limits.stop_tension, Quantity::ratio)},
                 {"tension kept in an emergency stop", show(limits.emergency_stop_tension, Quantity::ratio)},
                 {"tension held at standstill", show(limits.hold_tension, Quantity::ratio)},
                 {"least life of the pads", show(limits.least_pad_life, Quantity::running_time)},
                 {"share of yield, at most", show(limits.yield_share, Quantity::ratio)},
                 {"strain, at most", show(limits.strain_limit, Quantity::ratio)},
                 {"guard may be opened below", show(limits.touch_temperature, Quantity::temperature)},
                 {"shaft's safety, at least", show(limits.shaft_safety, Quantity::number)},
                 {"share of the whirl speed, at most", show(limits.whirl_share, Quantity::ratio)},
                 {"least life of the bearings", show(limits.least_bearing_life, Quantity::running_time)}});
}

}  // namespace

void stand(Chapter& chapter, const Dossier& dossier) {
  const auto& stand = dossier.stand;
  drawing(chapter, dossier);
  line(chapter, stand.line);
  air_and_guard(chapter, stand);
  brakes(chapter, stand);
  grades(chapter, stand);
  if (const auto* brake = fitted(dossier)) fitted_brake(chapter, *brake);
  path(chapter, stand);
  control_facts(chapter, stand);
  asked(chapter, stand.limits);
}

}  // namespace holdback::papers::selection
