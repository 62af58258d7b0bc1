// Rows of what stands around the roll: the web's path with its idlers, the shaft, and how far inputs may be off.
#include "holdback/files/field_table.hpp"

namespace holdback::files {

using Q = Quantity;

const std::vector<Field<WebPath>>& path_fields() {
  using F = Field<WebPath>;
  static const std::vector<F> rows{
      F::quantity("first_span", Q::web_length, &WebPath::first_span)
          .from("20 mm")
          .to("100 m")
          .or_else("1.5 m")
          .means("free web from the roll to the first idler, or to the nip"),
      F::quantity("longest_span", Q::web_length, &WebPath::longest_span)
          .from("0.05 m")
          .to("200 m")
          .such_as("2.5 m")
          .means("longest free span of the web that lies level; without it sag is not judged"),
      F::quantity("most_sag", Q::ratio, &WebPath::most_sag)
          .from("0.01 %")
          .to("20 %")
          .or_else("0.5 %")
          .means("sag over span that is accepted"),
  };
  return rows;
}

const std::vector<Field<Idler>>& idler_fields() {
  using F = Field<Idler>;
  static const std::vector<F> rows{
      F::text("name", &Idler::name).required().such_as("first idler").means("answers call the idler by it"),
      F::quantity("diameter", Q::short_length, &Idler::diameter)
          .from("5 mm")
          .to("3 m")
          .required()
          .such_as("100 mm")
          .means("outside"),
      F::quantity("wrap", Q::angle, &Idler::wrap)
          .from("1 deg")
          .to("720 deg")
          .required()
          .such_as("90 deg")
          .means("angle over which the web touches it"),
      F::quantity("friction", Q::number, &Idler::friction)
          .from("0.01")
          .to("2")
          .or_else("0.25")
          .means("web on roller, without air between them"),
      F::quantity("roughness", Q::caliper, &Idler::roughness)
          .from("0.01 um")
          .to("1000 um")
          .or_else("3 um")
          .means("rms roughness of web and roller together: √(web² + roller²)"),
      F::quantity("drag", Q::torque, &Idler::drag)
          .from("0 N*m")
          .to("100 N*m")
          .or_else("0.02 N*m")
          .means("bearings and seals"),
      F::quantity("inertia", Q::inertia, &Idler::inertia)
          .from("0 kg*m2")
          .to("1000 kg*m2")
          .or_else("0.005 kg*m2")
          .means("of the turning part"),
      F::quantity("span", Q::web_length, &Idler::span)
          .from("20 mm")
          .to("100 m")
          .or_else("1 m")
          .means("free web behind it, to the next idler or the nip"),
  };
  return rows;
}

const std::vector<Field<Shaft>>& shaft_fields() {
  using F = Field<Shaft>;
  static const std::vector<F> rows{
      F::word<Support>("support",
                       {{"between bearings", Support::between_bearings}, {"cantilever", Support::cantilever}},
                       &Shaft::support)
          .or_else("between bearings")
          .means("a bearing at each end of the roll, or both on one side of it"),
      F::quantity("bearing_span", Q::short_length, &Shaft::bearing_span)
          .from("10 mm")
          .to("20 m")
          .required()
          .such_as("1600 mm")
          .means("between the middles of the bearings"),
      F::quantity("roll_centre", Q::short_length, &Shaft::roll_centre)
          .from("1 mm")
          .to("20 m")
          .required()
          .such_as("800 mm")
          .means("from the first bearing to the middle of the roll; of a cantilever more than the bearing span"),
      F::quantity("modulus", Q::modulus, &Shaft::modulus)
          .from("1 GPa")
          .to("500 GPa")
          .or_else("206 GPa")
          .means("the default is steel"),
      F::quantity("density", Q::density, &Shaft::density)
          .from("500 kg/m3")
          .to("20000 kg/m3")
          .or_else("7850 kg/m3")
          .means("the default is steel"),
      F::quantity("tensile_strength", Q::stress, &Shaft::tensile_strength)
          .from("50 MPa")
          .to("2500 MPa")
          .or_else("500 MPa")
          .means("ultimate; the default is a plain steel"),
      F::quantity("notch_factor", Q::number, &Shaft::notch_factor)
          .from("1")
          .to("5")
          .or_else("2")
          .means("fatigue stress concentration at the worst place, such as a shoulder or keyway"),
      F::quantity("pull_angle", Q::angle, &Shaft::pull_angle)
          .from("-180 deg")
          .to("180 deg")
          .or_else("0 deg")
          .means("direction in which the web leaves the roll: 0 level, 90 straight up, -90 straight down"),
      F::quantity("bearing_rating", Q::force, &Shaft::bearing_rating)
          .above("0 N")
          .to("10000000 N")
          .such_as("25 kN")
          .means("basic dynamic load rating of one bearing; without it bearing life is not reckoned"),
      F::word<BearingKind>("bearing_kind", {{"ball", BearingKind::ball}, {"roller", BearingKind::roller}},
                           &Shaft::bearing_kind)
          .or_else("ball")
          .means("what carries the load"),
      F::quantity("core_grip", Q::torque, &Shaft::core_grip)
          .above("0 N*m")
          .to("1000000 N*m")
          .such_as("300 N*m")
          .means("torque that the chucks or the expanding shaft pass to the core; without it the grip is not judged"),
  };
  return rows;
}

const std::vector<Field<ShaftSection>>& shaft_section_fields() {
  using F = Field<ShaftSection>;
  static const std::vector<F> rows{
      F::quantity("length", Q::short_length, &ShaftSection::length)
          .from("1 mm")
          .to("20 m")
          .required()
          .such_as("1600 mm")
          .means("along the shaft, from the first bearing or the section before"),
      F::quantity("diameter", Q::short_length, &ShaftSection::diameter)
          .from("2 mm")
          .to("2 m")
          .required()
          .such_as("76 mm")
          .means("outside"),
      F::quantity("bore", Q::short_length, &ShaftSection::bore)
          .from("0 mm")
          .to("2 m")
          .or_else("0 mm")
          .means("of a tube; 0 is solid"),
  };
  return rows;
}

const std::vector<Field<Uncertainty>>& uncertainty_fields() {
  using F = Field<Uncertainty>;
  static const std::vector<F> rows{
      F::quantity("pressure", Q::ratio, &Uncertainty::pressure)
          .from("0 %")
          .to("90 %")
          .or_else("2 %")
          .means("± of the pressure set, beside the regulator's resolution and hysteresis"),
      F::quantity("drag", Q::ratio, &Uncertainty::drag)
          .from("0 %")
          .to("100 %")
          .or_else("30 %")
          .means("± of shaft and brake drag"),
      F::quantity("tension", Q::ratio, &Uncertainty::tension)
          .from("0 %")
          .to("90 %")
          .or_else("3 %")
          .means("± of the tension set, against the one that is meant"),
      F::quantity("caliper", Q::ratio, &Uncertainty::caliper)
          .from("0 %")
          .to("50 %")
          .or_else("5 %")
          .means("± of the web's thickness at the same basis weight"),
      F::quantity("ambient", Q::temperature_difference, &Uncertainty::ambient)
          .from("0 K")
          .to("40 K")
          .or_else("5 K")
          .means("± of the air around the disc"),
      F::quantity("cooling", Q::ratio, &Uncertainty::cooling)
          .from("0 %")
          .to("90 %")
          .or_else("15 %")
          .means("± of what the disc sheds"),
  };
  return rows;
}

}  // namespace holdback::files
