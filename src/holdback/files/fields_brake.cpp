// Rows of the candidates: brakes, their friction grades, their cooling maps.
#include "holdback/files/field_table.hpp"

namespace holdback::files {

using Q = Quantity;

const std::vector<Field<BrakeDraft>>& brake_fields() {
  using F = Field<BrakeDraft>;
  static const std::vector<F> rows{
      F::text("name", &Brake::name).required().such_as("D300").means("answers call the brake by it"),
      F::word<PadForm>("pad",
                       {{"sector", PadForm::sector}, {"round", PadForm::round}, {"data sheet", PadForm::data_sheet}},
                       &BrakeDraft::form)
          .required()
          .such_as("sector")
          .means("how the pads are known: by geometry, or by torque at a pressure"),
      F::quantity("pad_inner_diameter", Q::short_length, &BrakeDraft::pad_inner_diameter)
          .from("5 mm")
          .to("5 m")
          .such_as("180 mm")
          .only_for({"sector"})
          .needed_for({"sector"})
          .means("inside of the pad's ring"),
      F::quantity("pad_outer_diameter", Q::short_length, &BrakeDraft::pad_outer_diameter)
          .from("5 mm")
          .to("5 m")
          .such_as("290 mm")
          .only_for({"sector"})
          .needed_for({"sector"})
          .means("outside of the pad's ring"),
      F::quantity("pad_angle", Q::angle, &BrakeDraft::pad_angle)
          .above("0 deg")
          .to("360 deg")
          .such_as("40 deg")
          .only_for({"sector"})
          .needed_for({"sector"})
          .means("included angle of one pad"),
      F::quantity("pad_diameter", Q::short_length, &BrakeDraft::pad_diameter)
          .from("2 mm")
          .to("1 m")
          .such_as("50 mm")
          .only_for({"round"})
          .needed_for({"round"})
          .means("diameter of one pad"),
      F::quantity("pad_centre_diameter", Q::short_length, &BrakeDraft::pad_centre_diameter)
          .from("5 mm")
          .to("5 m")
          .such_as("240 mm")
          .only_for({"round"})
          .needed_for({"round"})
          .means("circle on which the pad's centre runs"),
      F::quantity("torque_pressure", Q::pressure, &BrakeDraft::torque_pressure)
          .above("0 bar")
          .to("50 bar")
          .such_as("5.5 bar")
          .only_for({"data sheet"})
          .needed_for({"data sheet"})
          .means("pressure at which the grades' torque_per_pair is stated"),
      F::quantity("effective_diameter", Q::short_length, &BrakeDraft::effective_diameter)
          .from("10 mm")
          .to("5 m")
          .such_as("240 mm")
          .only_for({"data sheet"})
          .needed_for({"data sheet"})
          .means("circle on which the friction acts"),
      F::count("pairs", &Brake::pairs).from("1").to("24").required().such_as("4").means("pad pairs fitted to one disc"),
      F::count("most_brakes", &Brake::most_brakes)
          .from("1")
          .to("12")
          .or_else("1")
          .means("how many such brakes the shaft takes"),
      F::quantity("piston_area", Q::area, &BrakeDraft::given_piston_area)
          .from("0.1 cm2")
          .to("1 m2")
          .such_as("20 cm2")
          .needed_for({"sector", "round"})
          .means("actuator of one pair; without it a data-sheet brake's pad pressure is not known"),
      F::quantity("actuator_efficiency", Q::ratio, &Brake::actuator_efficiency)
          .from("10 %")
          .to("100 %")
          .or_else("95 %")
          .means("clamping force over pressure times piston area"),
      F::quantity("threshold_pressure", Q::pressure, &Brake::threshold_pressure)
          .from("0 bar")
          .to("10 bar")
          .or_else("0.1 bar")
          .means("below it the pads give no torque"),
      F::quantity("pad_area", Q::area, &BrakeDraft::given_pad_area)
          .from("0.1 cm2")
          .to("1 m2")
          .such_as("35 cm2")
          .needed_for({"data sheet"})
          .means("friction face of one pad; from the geometry when not given"),
      F::quantity("usable_pad_depth", Q::short_length, &Brake::usable_pad_depth)
          .from("0.1 mm")
          .to("100 mm")
          .or_else("5 mm")
          .means("thickness that may wear away"),
      F::quantity("drag", Q::torque, &Brake::drag)
          .from("0 N*m")
          .to("1000 N*m")
          .or_else("0.2 N*m")
          .means("torque of one brake with its pads released"),
      F::quantity("disc_mass", Q::mass, &Brake::disc_mass)
          .from("0.05 kg")
          .to("5000 kg")
          .required()
          .such_as("12 kg")
          .means("what stores the heat of a stop"),
      F::quantity("disc_inertia", Q::inertia, &Brake::disc_inertia)
          .from("0 kg*m2")
          .to("5000 kg*m2")
          .required()
          .such_as("0.15 kg*m2")
          .means("disc with its hub"),
      F::quantity("specific_heat", Q::specific_heat, &Brake::specific_heat)
          .from("100 J/(kg*K)")
          .to("5000 J/(kg*K)")
          .or_else("500 J/(kg*K)")
          .means("of the disc; the default is cast iron"),
      F::points("cooling").means(
          "cooling map: power shed at a speed, by rising speed; without it cooling follows from the disc's dimensions"),
      F::quantity("cooling_rise", Q::temperature_difference, &Brake::cooling_rise)
          .from("1 K")
          .to("1000 K")
          .such_as("150 K")
          .means("disc over air when the cooling map was taken; needed with a map"),
      F::quantity("disc_diameter", Q::short_length, &Brake::disc_diameter)
          .from("20 mm")
          .to("5 m")
          .such_as("300 mm")
          .means("outside of the disc; needed without a cooling map, else taken from the pads"),
      F::quantity("disc_bore", Q::short_length, &Brake::disc_bore)
          .from("5 mm")
          .to("5 m")
          .such_as("150 mm")
          .means("inside of the friction ring; without it, taken from the pads"),
      F::quantity("disc_thickness", Q::short_length, &Brake::disc_thickness)
          .from("1 mm")
          .to("500 mm")
          .such_as("24 mm")
          .means("over all; without it, from the disc's mass and diameters"),
      F::quantity("vent_gap", Q::short_length, &Brake::vent_gap)
          .from("1 mm")
          .to("200 mm")
          .such_as("10 mm")
          .means("between the plates of a vented disc; without it the disc is solid"),
      F::count("vents", &Brake::vents)
          .from("1")
          .to("1000")
          .such_as("36")
          .means("radial passages of a vented disc; 30 without it"),
      F::quantity("disc_density", Q::density, &Brake::disc_density)
          .from("1000 kg/m3")
          .to("20000 kg/m3")
          .or_else("7200 kg/m3")
          .means("the default is cast iron"),
      F::quantity("disc_conductivity", Q::thermal_conductivity, &Brake::disc_conductivity)
          .from("1 W/(m*K)")
          .to("500 W/(m*K)")
          .or_else("48 W/(m*K)")
          .means("the default is cast iron"),
      F::quantity("emissivity", Q::ratio, &Brake::emissivity)
          .from("1 %")
          .to("100 %")
          .or_else("55 %")
          .means("heat radiation of the disc in use over that of a black body"),
      F::quantity("caliper_mass", Q::mass, &Brake::caliper_mass)
          .from("0.01 kg")
          .to("1000 kg")
          .or_else("1 kg")
          .means("caliper of one pad pair; what its pads heat"),
      F::quantity("hub_mass", Q::mass, &Brake::hub_mass)
          .from("0.01 kg")
          .to("5000 kg")
          .or_else("3 kg")
          .means("what the disc is bolted to, and heats"),
      F::quantity("hub_conductance", Q::conductance, &Brake::hub_conductance)
          .from("0 W/K")
          .to("1000 W/K")
          .or_else("2 W/K")
          .means("heat from disc to hub by kelvin between them"),
      F::quantity("rated_pressure", Q::pressure, &Brake::rated_pressure)
          .above("0 bar")
          .to("50 bar")
          .required()
          .such_as("5.5 bar")
          .means("maker's rating"),
      F::quantity("rated_torque", Q::torque, &Brake::rated_torque)
          .above("0 N*m")
          .to("1000000 N*m")
          .required()
          .such_as("400 N*m")
          .means("maker's rating of one brake"),
      F::quantity("rated_speed", Q::rotational_speed, &Brake::rated_speed)
          .above("0 rev/min")
          .to("30000 rev/min")
          .required()
          .such_as("1800 rev/min")
          .means("maker's rating"),
      F::quantity("rated_temperature", Q::temperature, &Brake::rated_temperature)
          .from("20 degC")
          .to("1000 degC")
          .required()
          .such_as("250 degC")
          .means("maker's rating of the disc"),
      F::quantity("price", Q::price, &Brake::price).from("0").to("100000000").such_as("2400").means("one brake"),
      F::quantity("pad_price", Q::price, &Brake::pad_price).from("0").to("1000000").such_as("18").means("one pad"),
  };
  return rows;
}

const std::vector<Field<Grade>>& grade_fields() {
  using F = Field<Grade>;
  static const std::vector<F> rows{
      F::text("name", &Grade::name).required().such_as("standard").means("answers call the grade by it"),
      F::quantity("friction", Q::number, &Grade::friction)
          .above("0")
          .to("1.5")
          .such_as("0.35")
          .needed_for({"sector", "round"})
          .means("nominal sliding coefficient of friction"),
      F::quantity("torque_per_pair", Q::torque, &Grade::torque_per_pair)
          .above("0 N*m")
          .to("100000 N*m")
          .such_as("85 N*m")
          .only_for({"data sheet"})
          .needed_for({"data sheet"})
          .means("of one pair at the brake's torque_pressure"),
      F::quantity("friction_band", Q::ratio, &Grade::friction_band)
          .from("0 %")
          .to("90 %")
          .or_else("20 %")
          .means("± around the nominal friction"),
      F::quantity("static_ratio", Q::number, &Grade::static_ratio)
          .from("0.5")
          .to("3")
          .or_else("1")
          .means("static over sliding friction"),
      F::quantity("friction_slope", Q::friction_slope, &Grade::friction_slope)
          .from("-50 %/(m/s)")
          .to("50 %/(m/s)")
          .or_else("0 %/(m/s)")
          .means("share of friction gained for each m/s of sliding; below zero it falls, and invites stick-slip"),
      F::quantity("fade_start", Q::temperature, &Grade::fade_start)
          .from("-40 degC")
          .to("1000 degC")
          .such_as("180 degC")
          .means("friction falls above it; without it there is no fade"),
      F::quantity("fade_rate", Q::fade, &Grade::fade_rate)
          .from("0 %/K")
          .to("10 %/K")
          .or_else("0 %/K")
          .means("share of friction lost per kelvin above fade_start"),
      F::quantity("temperature_limit", Q::temperature, &Grade::temperature_limit)
          .from("20 degC")
          .to("1000 degC")
          .required()
          .such_as("220 degC")
          .means("hottest that the pad may run"),
      F::quantity("wear_rate", Q::wear_rate, &Grade::wear_rate)
          .from("0.01 mm3/MJ")
          .to("100000 mm3/MJ")
          .or_else("30 mm3/MJ")
          .means("worn volume per friction energy"),
      F::quantity("wear_knee", Q::temperature, &Grade::wear_knee)
          .from("-40 degC")
          .to("1000 degC")
          .such_as("150 degC")
          .means("wear rises above it; without it the rate is constant"),
      F::quantity("wear_doubling", Q::temperature_difference, &Grade::wear_doubling)
          .from("1 K")
          .to("1000 K")
          .or_else("50 K")
          .means("rise above wear_knee that doubles the wear rate"),
      F::quantity("pressure_speed_limit", Q::pressure_speed, &Grade::pressure_speed_limit)
          .above("0 MPa*m/s")
          .to("1000 MPa*m/s")
          .such_as("3 MPa*m/s")
          .means("highest pad pressure times sliding speed"),
  };
  return rows;
}

const std::vector<Field<CoolingPoint>>& cooling_fields() {
  using F = Field<CoolingPoint>;
  static const std::vector<F> rows{
      F::quantity("speed", Q::rotational_speed, &CoolingPoint::speed)
          .above("0 rev/min")
          .to("30000 rev/min")
          .required()
          .such_as("200 rev/min")
          .means("of the disc"),
      F::quantity("power", Q::power, &CoolingPoint::power)
          .above("0 W")
          .to("1000000 W")
          .required()
          .such_as("750 W")
          .means("shed by one disc"),
  };
  return rows;
}

}  // namespace holdback::files
