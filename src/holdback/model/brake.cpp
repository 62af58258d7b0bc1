#include "holdback/model/brake.hpp"

#include <cmath>
#include <numbers>
#include <set>

#include "holdback/model/faults.hpp"

namespace holdback {

namespace {

using std::numbers::pi;

// ---- the pads -------------------------------------------------------------------------------------------------------

/// A warning where the stated face is larger than the pad's outline; slots and chamfers only make it smaller.
void check_pad_area(const Brake& brake, double outline, Faults& faults) {
  if (brake.pad_area <= 1.05 * outline && brake.pad_area >= 0.5 * outline) return;
  faults.warning(
      "pad_area",
      {"The pad's dimensions make a face of {0}, but its area is given as {1}.",
       {{outline, Quantity::area}, {brake.pad_area, Quantity::area}}},
      {"{0} to {1}, less for slots and chamfers", {{0.5 * outline, Quantity::area}, {outline, Quantity::area}}});
}

/// All pairs sit side by side on one disc.
void check_room(int pairs, double angle, const std::string& field, Faults& faults) {
  if (pairs * angle <= 2 * pi * (1 + 1e-12)) return;
  faults.error(field,
               {"{0} pads of {1} do not fit side by side on one disc.",
                {{static_cast<double>(pairs), Quantity::count}, {angle, Quantity::angle}}},
               {"at most {0} for each pad, or fewer pairs", {{2 * pi / pairs, Quantity::angle}}});
}

void check_piston(const Brake& brake, Faults& faults) {
  if (brake.piston_area > 0) return;
  faults.error("piston_area", {"A brake given by its pad's dimensions needs the piston area of one pair's actuator."},
               {"an area above zero"});
}

void check_pad(const Brake& brake, const SectorPad& pad, Faults& faults) {
  check_piston(brake, faults);
  if (pad.inner_diameter >= pad.outer_diameter) {
    faults.error("pad_inner_diameter",
                 {"The pad's inner diameter, {0}, is not smaller than its outer diameter, {1}.",
                  {{pad.inner_diameter, Quantity::short_length}, {pad.outer_diameter, Quantity::short_length}}},
                 {"a diameter below {0}", {{pad.outer_diameter, Quantity::short_length}}});
    return;
  }
  if (pad.angle >= 2 * pi) {
    faults.error("pad_angle", {"A pad that covers {0} is a ring, not a sector.", {{pad.angle, Quantity::angle}}},
                 {"an angle below {0}", {{2 * pi, Quantity::angle}}});
    return;
  }
  check_room(brake.pairs, pad.angle, "pad_angle", faults);
  const double ring = (pad.outer_diameter * pad.outer_diameter - pad.inner_diameter * pad.inner_diameter) / 4;
  check_pad_area(brake, pad.angle / 2 * ring, faults);
}

void check_pad(const Brake& brake, const RoundPad& pad, Faults& faults) {
  check_piston(brake, faults);
  if (pad.pad_diameter >= pad.centre_diameter) {
    faults.error("pad_diameter",
                 {"A round pad of {0} on a centre circle of {1} covers the shaft.",
                  {{pad.pad_diameter, Quantity::short_length}, {pad.centre_diameter, Quantity::short_length}}},
                 {"a diameter below {0}", {{pad.centre_diameter, Quantity::short_length}}});
    return;
  }
  const double ratio = pad.pad_diameter / pad.centre_diameter;
  if (ratio > 0.5) {
    faults.warning(
        "pad_diameter",
        {"The pad is {0} of its centre circle; the published table of round pads ends at {1}, so its torque is "
         "taken somewhat too high.",
         {{ratio, Quantity::ratio}, {0.5, Quantity::ratio}}},
        {"at most {0}", {{0.5 * pad.centre_diameter, Quantity::short_length}}});
  }
  check_room(brake.pairs, 2 * std::asin(ratio), "pad_diameter", faults);
  check_pad_area(brake, pi / 4 * pad.pad_diameter * pad.pad_diameter, faults);
}

void check_pad(const Brake& brake, const DataSheetPad& pad, Faults& faults) {
  if (pad.torque_pressure <= brake.threshold_pressure) {
    faults.error("torque_pressure",
                 {"The torque is stated at {0}, where the pads do not yet grip: the threshold is {1}.",
                  {{pad.torque_pressure, Quantity::pressure}, {brake.threshold_pressure, Quantity::pressure}}},
                 {"a pressure above {0}", {{brake.threshold_pressure, Quantity::pressure}}});
  }
  if (pad.torque_pressure > brake.rated_pressure) {
    faults.warning("torque_pressure",
                   {"The torque is stated at {0}, above the brake's rated pressure, {1}.",
                    {{pad.torque_pressure, Quantity::pressure}, {brake.rated_pressure, Quantity::pressure}}},
                   {"at most {0}", {{brake.rated_pressure, Quantity::pressure}}});
  }
}

// ---- the rest of the brake ------------------------------------------------------------------------------------------

void check_threshold(const Brake& brake, Faults& faults) {
  if (brake.threshold_pressure < brake.rated_pressure) return;
  faults.error("threshold_pressure",
               {"The pads grip from {0}, not below the brake's rated pressure, {1}: it could never be used.",
                {{brake.threshold_pressure, Quantity::pressure}, {brake.rated_pressure, Quantity::pressure}}},
               {"a pressure below {0}", {{brake.rated_pressure, Quantity::pressure}}});
}

void check_map_or_disc(const Brake& brake, Faults& faults) {
  if (brake.cooling.empty() && !brake.disc_diameter)
    faults.error("cooling", {"Nothing says how the disc cools: there is neither a cooling map nor a disc_diameter."},
                 {"a cooling map with its cooling_rise, or the disc's diameter"});
  if (!brake.cooling.empty() && brake.cooling_rise == 0)
    faults.error("cooling_rise", {"A cooling map means nothing without the temperature rise at which it was taken."},
                 {"the rise of the disc over the air"});
}

void check_disc(const Brake& brake, Faults& faults) {
  if (brake.disc_diameter && brake.disc_bore && *brake.disc_bore >= *brake.disc_diameter)
    faults.error("disc_bore",
                 {"The disc's bore, {0}, is not smaller than its diameter, {1}.",
                  {{*brake.disc_bore, Quantity::short_length}, {*brake.disc_diameter, Quantity::short_length}}},
                 {"a diameter below {0}", {{*brake.disc_diameter, Quantity::short_length}}});
  if (brake.vent_gap && brake.disc_thickness && *brake.vent_gap >= *brake.disc_thickness)
    faults.error("vent_gap",
                 {"The gap of the vents, {0}, leaves no metal in a disc of {1}.",
                  {{*brake.vent_gap, Quantity::short_length}, {*brake.disc_thickness, Quantity::short_length}}},
                 {"less than {0}", {{*brake.disc_thickness, Quantity::short_length}}});
}

void check_cooling(const Brake& brake, Faults& faults) {
  for (std::size_t i = 1; i < brake.cooling.size(); ++i) {
    const CoolingPoint& before = brake.cooling[i - 1];
    const CoolingPoint& point = brake.cooling[i];
    if (point.speed <= before.speed) {
      faults.error("cooling",
                   {"The cooling map's speeds do not rise: {0} follows {1}.",
                    {{point.speed, Quantity::rotational_speed}, {before.speed, Quantity::rotational_speed}}},
                   {"points by rising speed, each speed once"});
    } else if (point.power < before.power) {
      faults.warning("cooling",
                     {"The cooling map falls from {0} to {1} although the disc turns faster.",
                      {{before.power, Quantity::power}, {point.power, Quantity::power}}},
                     {"a power that does not fall with speed"});
    }
  }
}

// ---- its grades -----------------------------------------------------------------------------------------------------

void check_route(const Brake& brake, const Grade& grade, Faults& faults) {
  const bool by_sheet = std::holds_alternative<DataSheetPad>(brake.pad);
  if (by_sheet && !grade.torque_per_pair) {
    faults.error("torque_per_pair", {"This brake is given by its data sheet, so each grade needs its torque per pair."},
                 {"the torque of one pair at the brake's torque_pressure"});
  }
  if (!by_sheet && !grade.friction) {
    faults.error("friction", {"This brake is given by its pad's dimensions, so each grade needs its friction."},
                 {"the nominal coefficient of friction"});
  }
}

void check_friction(const Grade& grade, Faults& faults) {
  if (!grade.friction || (*grade.friction >= 0.1 && *grade.friction <= 0.7)) return;
  faults.warning(
      "friction",
      {"A coefficient of friction of {0} is outside {1} to {2}; dry brake materials on iron or steel lie between "
       "{3} and {4} [juvinall].",
       {{*grade.friction, Quantity::number},
        {0.1, Quantity::number},
        {0.7, Quantity::number},
        {0.15, Quantity::number},
        {0.5, Quantity::number}}},
      {"{0} to {1}", {{0.1, Quantity::number}, {0.7, Quantity::number}}});
}

void check_start(const std::optional<double>& start, double limit, const std::string& field, const std::string& change,
                 Faults& faults) {
  if (!start || *start <= limit) return;
  faults.warning(field,
                 {change + " starts at {0}, above the grade's temperature limit, {1}, so it never shows.",
                  {{*start, Quantity::temperature}, {limit, Quantity::temperature}}},
                 {"at most {0}", {{limit, Quantity::temperature}}});
}

void check_grades(const Brake& brake, const std::string& path, Faults& faults) {
  if (brake.grades.empty()) faults.error("grade", {"The brake has no friction grade."}, {"at least one grade"});
  std::set<std::string> names;
  for (std::size_t i = 0; i < brake.grades.size(); ++i) {
    const Grade& grade = brake.grades[i];
    Faults own(path + ".grade[" + std::to_string(i) + "]");
    if (!names.insert(grade.name).second) {
      own.error("name", {"Two grades of this brake have the same name."}, {"a name of its own for each grade"});
    }
    check_route(brake, grade, own);
    check_friction(grade, own);
    check_start(grade.fade_start, grade.temperature_limit, "fade_start", "Fade", own);
    check_start(grade.wear_knee, grade.temperature_limit, "wear_knee", "Faster wear", own);
    faults.append(own.take());
  }
}

}  // namespace

Problems problems_of(const Brake& brake, const std::string& path) {
  Faults faults(path);
  std::visit([&](const auto& pad) { check_pad(brake, pad, faults); }, brake.pad);
  check_threshold(brake, faults);
  check_map_or_disc(brake, faults);
  check_disc(brake, faults);
  check_cooling(brake, faults);
  check_grades(brake, path, faults);
  return faults.take();
}

}  // namespace holdback
