// Rows of the control and of what it measures with: load cell, dancer, diameter sensor.
#include "holdback/files/field_table.hpp"

namespace holdback::files {

using Q = Quantity;

const std::vector<Field<Control>>& control_fields() {
  using F = Field<Control>;
  static const std::vector<F> rows{
      F::word<ControlKind>("kind",
                           {{"hand", ControlKind::hand},
                            {"diameter", ControlKind::diameter},
                            {"load cell", ControlKind::load_cell},
                            {"dancer", ControlKind::dancer}},
                           &Control::kind)
          .or_else("hand")
          .means("a hand that follows the card, the measured diameter alone, or a loop on a load cell or a dancer"),
      F::quantity("sample_time", Q::duration, &Control::sample_time)
          .from("0.1 ms")
          .to("10 s")
          .or_else("10 ms")
          .means("from one setting of the controller to the next"),
      F::quantity("gain", Q::number, &Control::gain)
          .above("0")
          .to("1000")
          .such_as("0.8")
          .means("brake torque, over that of the setpoint at the full roll, for an error of the whole setpoint (load "
                 "cell) or of half the travel (dancer); without it the loop is tuned"),
      F::quantity("integral_time", Q::duration, &Control::integral_time)
          .from("1 ms")
          .to("1000 s")
          .such_as("0.5 s")
          .means("of the loop; without it the loop is tuned"),
      F::quantity("derivative_time", Q::duration, &Control::derivative_time)
          .from("0 s")
          .to("100 s")
          .or_else("0 s")
          .means("of the loop"),
      F::word<GainSchedule>("schedule", {{"fixed", GainSchedule::fixed}, {"diameter", GainSchedule::diameter}},
                            &Control::schedule)
          .or_else("diameter")
          .means("one gain for the whole roll, or one that falls with the diameter"),
      F::quantity("authority", Q::ratio, &Control::authority)
          .above("0 %")
          .to("1000 %")
          .or_else("50 %")
          .means("most that a loop corrects, over the brake torque of the setpoint"),
      F::quantity("inertia_compensation", Q::ratio, &Control::inertia_compensation)
          .from("0 %")
          .to("100 %")
          .or_else("0 %")
          .means("share of the roll's inertia torque that is added in ramps and stops"),
      F::quantity("output_step", Q::pressure, &Control::output_step)
          .from("0 bar")
          .to("10 bar")
          .or_else("0.002 bar")
          .means("smallest step of pressure that the controller sets"),
  };
  return rows;
}

const std::vector<Field<LoadCell>>& load_cell_fields() {
  using F = Field<LoadCell>;
  static const std::vector<F> rows{
      F::text("idler", &LoadCell::idler)
          .such_as("first idler")
          .means("name of the idler that it sits on; without it, the last before the nip"),
      F::quantity("lag", Q::duration, &LoadCell::lag).from("0 s").to("10 s").or_else("20 ms").means("of its filter"),
      F::quantity("resolution", Q::force, &LoadCell::resolution)
          .from("0 N")
          .to("10000 N")
          .or_else("0.1 N")
          .means("smallest difference of tension that it tells"),
      F::quantity("noise", Q::force, &LoadCell::noise)
          .from("0 N")
          .to("10000 N")
          .or_else("0 N")
          .means("standard deviation of a reading"),
  };
  return rows;
}

const std::vector<Field<Dancer>>& dancer_fields() {
  using F = Field<Dancer>;
  static const std::vector<F> rows{
      F::text("idler", &Dancer::idler)
          .such_as("first idler")
          .means("name of the idler that it hangs behind; without it, in the middle of the path"),
      F::quantity("mass", Q::mass, &Dancer::mass)
          .from("0.01 kg")
          .to("1000 kg")
          .or_else("4 kg")
          .means("that moves: roller, and arm and piston brought to the roller's path"),
      F::quantity("travel", Q::short_length, &Dancer::travel)
          .from("1 mm")
          .to("10 m")
          .or_else("200 mm")
          .means("from stop to stop"),
      F::quantity("damping", Q::damping, &Dancer::damping)
          .from("0 N*s/m")
          .to("1000000 N*s/m")
          .or_else("100 N*s/m")
          .means("force over speed of the roller"),
      F::quantity("strands", Q::number, &Dancer::strands)
          .from("0.1")
          .to("40")
          .or_else("2")
          .means("web that it takes up for each length that it moves; 2 for half a turn of wrap"),
      F::quantity("taper", Q::ratio, &Dancer::taper)
          .from("0 %")
          .to("100 %")
          .or_else("0 %")
          .means("rise of the loading force from the middle to a stop, over that in the middle"),
  };
  return rows;
}

const std::vector<Field<DiameterSensor>>& diameter_sensor_fields() {
  using F = Field<DiameterSensor>;
  static const std::vector<F> rows{
      F::word<DiameterMethod>("method", {{"ultrasonic", DiameterMethod::ultrasonic}, {"turns", DiameterMethod::turns}},
                              &DiameterSensor::method)
          .or_else("ultrasonic")
          .means("by sound from the surface, or from web speed over counted turns"),
      F::quantity("lag", Q::duration, &DiameterSensor::lag)
          .from("0 s")
          .to("10 s")
          .or_else("0.2 s")
          .means("of its filter"),
      F::quantity("resolution", Q::short_length, &DiameterSensor::resolution)
          .from("0 mm")
          .to("100 mm")
          .or_else("1 mm")
          .means("smallest difference of diameter that it tells"),
      F::quantity("noise", Q::short_length, &DiameterSensor::noise)
          .from("0 mm")
          .to("100 mm")
          .or_else("0 mm")
          .means("standard deviation of a reading"),
  };
  return rows;
}

}  // namespace holdback::files
