// Rows of the single tables: file head, stand, air, line, limits.
#include "holdback/files/field_table.hpp"

namespace holdback::files {

using Q = Quantity;

const std::vector<Field<FileHead>>& head_fields() {
  using F = Field<FileHead>;
  static const std::vector<F> rows{
      F::count("holdback", &FileHead::format).from("1").to("1").or_else("1").means("version of this file format"),
  };
  return rows;
}

const std::vector<Field<Stand>>& stand_fields() {
  using F = Field<Stand>;
  static const std::vector<F> rows{
      F::text("title", &Stand::title).or_else("untitled stand").such_as("slitter 2").means("heads every answer"),
      F::text("currency", &Stand::currency).such_as("EUR").means("what prices are in; no conversion is made"),
      F::quantity("drag", Q::torque, &Stand::drag)
          .from("0 N*m")
          .to("1000 N*m")
          .or_else("0.5 N*m")
          .means("bearings and seals of the unwind shaft"),
      F::quantity("shaft_inertia", Q::inertia, &Stand::shaft_inertia)
          .from("0 kg*m2")
          .to("10000 kg*m2")
          .or_else("0.05 kg*m2")
          .means("shaft with chucks, without core and discs"),
      F::word<Guard>("guard",
                     {{"none", Guard::none},
                      {"mesh", Guard::mesh},
                      {"partly closed", Guard::partly_closed},
                      {"closed", Guard::closed}},
                     &Stand::guard)
          .or_else("mesh")
          .means("how the disc is guarded: a closed box starves it of air"),
      F::quantity("guard_factor", Q::ratio, &Stand::guard_factor)
          .above("0 %")
          .to("100 %")
          .such_as("80 %")
          .means("cooling behind the guard over that in free air, where measured"),
      F::quantity("guard_opening", Q::area, &Stand::guard_opening)
          .from("0 cm2")
          .to("100 m2")
          .such_as("600 cm2")
          .means("free area of the guard's openings; without it, by the kind of guard"),
      F::quantity("ambient", Q::temperature, &Stand::ambient)
          .from("-40 degC")
          .to("80 degC")
          .or_else("25 degC")
          .means("air around the disc"),
      F::quantity("altitude", Q::web_length, &Stand::altitude)
          .from("-500 m")
          .to("6000 m")
          .or_else("0 m")
          .means("above sea level; thin air cools less"),
  };
  return rows;
}

const std::vector<Field<AirSupply>>& air_fields() {
  using F = Field<AirSupply>;
  static const std::vector<F> rows{
      F::quantity("supply_pressure", Q::pressure, &AirSupply::supply_pressure)
          .above("0 bar")
          .to("50 bar")
          .or_else("6 bar")
          .means("lowest pressure that the plant's air falls to"),
      F::quantity("lowest_pressure", Q::pressure, &AirSupply::lowest_pressure)
          .from("0 bar")
          .to("50 bar")
          .or_else("0.1 bar")
          .means("lowest pressure that the regulator controls"),
      F::quantity("highest_pressure", Q::pressure, &AirSupply::highest_pressure)
          .above("0 bar")
          .to("50 bar")
          .or_else("6 bar")
          .means("top of the regulator's range"),
      F::quantity("resolution", Q::pressure, &AirSupply::resolution)
          .from("0 bar")
          .to("5 bar")
          .or_else("0.02 bar")
          .means("smallest step that is set and kept"),
      F::quantity("hysteresis", Q::pressure, &AirSupply::hysteresis)
          .from("0 bar")
          .to("5 bar")
          .or_else("0.02 bar")
          .means("gap between rising and falling setting"),
      F::quantity("lag", Q::duration, &AirSupply::lag)
          .from("0 s")
          .to("60 s")
          .or_else("0.12 s")
          .means("time constant of the pressure at the brake behind a step of the setting"),
      F::quantity("dead_time", Q::duration, &AirSupply::dead_time)
          .from("0 s")
          .to("10 s")
          .or_else("0.03 s")
          .means("before anything of such a step arrives"),
  };
  return rows;
}

const std::vector<Field<Line>>& line_fields() {
  using F = Field<Line>;
  static const std::vector<F> rows{
      F::quantity("top_speed", Q::speed, &Line::top_speed)
          .above("0 m/min")
          .to("3000 m/min")
          .required()
          .such_as("300 m/min")
          .means("highest web speed"),
      F::quantity("lowest_speed", Q::speed, &Line::lowest_speed)
          .from("0 m/min")
          .to("3000 m/min")
          .or_else("10 m/min")
          .means("slowest speed at which tension must be held"),
      F::quantity("ramp_time", Q::duration, &Line::ramp_time)
          .from("0.1 s")
          .to("3600 s")
          .or_else("30 s")
          .means("standstill to top speed"),
      F::quantity("stop_time", Q::duration, &Line::stop_time)
          .from("0.1 s")
          .to("3600 s")
          .or_else("10 s")
          .means("top speed to standstill, normal stop"),
      F::quantity("emergency_stop_time", Q::duration, &Line::emergency_stop_time)
          .from("0.1 s")
          .to("3600 s")
          .or_else("5 s")
          .means("top speed to standstill, emergency stop"),
      F::quantity("changeover_time", Q::duration, &Line::changeover_time)
          .from("1 s")
          .to("1 d")
          .or_else("5 min")
          .means("standstill between two rolls, in which the brake cools"),
      F::quantity("hours_per_day", Q::number, &Line::hours_per_day).above("0").to("24").or_else("8").means("shifts"),
      F::quantity("days_per_week", Q::number, &Line::days_per_week).above("0").to("7").or_else("5").means("shifts"),
      F::quantity("weeks_per_year", Q::number, &Line::weeks_per_year).above("0").to("53").or_else("50").means("shifts"),
      F::quantity("uptime", Q::ratio, &Line::uptime)
          .above("0 %")
          .to("100 %")
          .or_else("70 %")
          .means("share of the shift in which web runs"),
  };
  return rows;
}

const std::vector<Field<Limits>>& limits_fields() {
  using F = Field<Limits>;
  static const std::vector<F> rows{
      F::quantity("tension_tolerance", Q::ratio, &Limits::tension_tolerance)
          .from("0.1 %")
          .to("90 %")
          .or_else("10 %")
          .means("accepted ± around the setpoint in steady run"),
      F::quantity("reserve", Q::ratio, &Limits::reserve)
          .from("0 %")
          .to("100 %")
          .or_else("10 %")
          .means("a limit with less than this in hand is called tight"),
      F::quantity("stop_tension", Q::ratio, &Limits::stop_tension)
          .from("0 %")
          .to("100 %")
          .or_else("100 %")
          .means("share of the setpoint that must remain in a normal stop"),
      F::quantity("emergency_stop_tension", Q::ratio, &Limits::emergency_stop_tension)
          .from("0 %")
          .to("100 %")
          .or_else("25 %")
          .means("share of the setpoint that must remain in an emergency stop"),
      F::quantity("hold_tension", Q::ratio, &Limits::hold_tension)
          .from("0 %")
          .to("100 %")
          .or_else("100 %")
          .means("share of the setpoint that is held at standstill"),
      F::quantity("least_pad_life", Q::running_time, &Limits::least_pad_life)
          .from("0 h")
          .to("100000 h")
          .or_else("500 h")
          .means("running time that a set of pads must last"),
      F::quantity("yield_share", Q::ratio, &Limits::yield_share)
          .from("0.1 %")
          .to("100 %")
          .or_else("25 %")
          .means("highest share of yield for a recommended tension"),
      F::quantity("strain_limit", Q::ratio, &Limits::strain_limit)
          .from("0.001 %")
          .to("50 %")
          .or_else("0.3 %")
          .means("highest strain for a recommended tension"),
      F::quantity("touch_temperature", Q::temperature, &Limits::touch_temperature)
          .from("30 degC")
          .to("150 degC")
          .or_else("55 degC")
          .means("disc below it before the guard may be opened"),
      F::quantity("shaft_safety", Q::number, &Limits::shaft_safety)
          .from("1")
          .to("10")
          .or_else("1.5")
          .means("least safety of the shaft against fatigue"),
      F::quantity("whirl_share", Q::ratio, &Limits::whirl_share)
          .from("10 %")
          .to("100 %")
          .or_else("70 %")
          .means("highest share of the shaft's first whirl speed"),
      F::quantity("least_bearing_life", Q::running_time, &Limits::least_bearing_life)
          .from("0 h")
          .to("1000000 h")
          .or_else("20000 h")
          .means("running time that the shaft's bearings must last"),
  };
  return rows;
}

}  // namespace holdback::files
