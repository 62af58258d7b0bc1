#include "holdback/dynamics/rig.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace holdback::dynamics {

namespace {

/// Whole samples in a dead time; a part below a billionth of one does not count as one.
std::size_t whole_samples(double dead_time, double period) {
  return static_cast<std::size_t>(std::floor(dead_time / period + 1e-9));
}

Start start_of(const RigSetup& setup, double share) { return {setup.line_speed, setup.setpoint, setup.radius, share}; }

std::unique_ptr<Mover> mover_for(const RigSetup& setup) {
  const Start start = start_of(setup, BrakeHeat(setup.heat, setup.temperatures).friction_left());
  return setup.maker ? setup.maker(setup.plant, start, setup.mover) : make_mover(setup.plant, start, setup.mover);
}

}  // namespace

void LineDrive::go_to(double speed, double from, double duration) {
  speed_ = speed_at(from);
  from_ = from;
  until_ = from + std::max(duration, 1e-6);
  rate_ = (speed - speed_) / (until_ - from_);
}

double LineDrive::speed_at(double time) const { return speed_ + rate_ * (std::clamp(time, from_, until_) - from_); }

Rig::Rig(const RigSetup& setup, std::unique_ptr<Controller> controller)
    : setup_(setup),
      controller_(std::move(controller)),
      mover_(mover_for(setup)),
      sight_(&mover_->sight()),
      heat_(setup.heat, setup.temperatures),
      line_(setup.line_speed),
      cell_(setup.cell.lag, setup.sample_time, mover_->sight().cell_tension),
      diameter_(setup.diameter.lag, setup.sample_time, 2 * setup.radius),
      play_(setup.plant.air.hysteresis, mover_->sight().pressure),
      delay_(whole_samples(setup.plant.air.dead_time, setup.sample_time), mover_->sight().pressure),
      at_brake_(mover_->sight().pressure),
      set_(mover_->sight().pressure),
      setpoint_(setup.setpoint),
      measured_diameter_(2 * setup.radius),
      pairs_(setup.pairs) {
  const double whole =
      static_cast<double>(whole_samples(setup.plant.air.dead_time, setup.sample_time)) * setup.sample_time;
  late_ = setup.plant.air.dead_time - whole;
  if (late_ < 1e-9 * setup.sample_time) late_ = 0;
  stored_at_start_ = mover_->stored();
}

// Pairs over those the plant was made for.
double Rig::share() const { return setup_.pairs > 0 ? static_cast<double>(pairs_) / setup_.pairs : 0; }

void Rig::engage(int pairs) {
  pairs_ = pairs;
  heat_.engage(2 * pairs);
}

void Rig::splice(double new_radius, double mismatch) {
  const double before = mover_->stored();
  mover_->change_roll(new_radius, line_speed() * (1 + mismatch));
  given_ += mover_->stored() - before;
  if (setup_.diameter.method == DiameterMethod::turns) {
    measured_diameter_ = 2 * new_radius;
    diameter_.jump_to(measured_diameter_);
  }
  turn_angle_ = 0;
  turn_length_ = web_run_;
}

// Sound meets the surface as it stands, out of round and all; counted turns know the diameter once a turn.
double Rig::measure_diameter() {
  const Sight& seen = sight();
  const DiameterSensor& sensor = setup_.diameter;
  if (sensor.method == DiameterMethod::ultrasonic) {
    const double surface = 2 * (seen.radius + seen.out_of_round);
    return rounded(diameter_.after(surface + diameter_noise_.next(sensor.noise)), sensor.resolution);
  }
  const double turned = seen.angle - turn_angle_;
  if (turned >= 2 * std::numbers::pi && web_run_ > turn_length_) {
    measured_diameter_ = 2 * (web_run_ - turn_length_) / turned;
    turn_angle_ = seen.angle;
    turn_length_ = web_run_;
  }
  return rounded(diameter_.after(measured_diameter_ + diameter_noise_.next(sensor.noise)), sensor.resolution);
}

void Rig::measure() {
  const double read = sight().cell_tension + cell_noise_.next(setup_.cell.noise);
  measured_ = rounded(cell_.after(read), setup_.cell.resolution);
  const double diameter = measure_diameter();
  Sample sample;
  sample.time = time();
  sample.diameter = diameter;
  sample.tension = measured_;
  sample.dancer_place = sight().dancer_place;
  sample.setpoint = setpoint_;
  sample.line_speed = line_speed();
  sample.line_acceleration = line_.acceleration_at(time());
  sample.brake_share = share();
  set_ = by_hand_ ? *by_hand_ : controller_->pressure(sample);
  if (setup_.diameter.method == DiameterMethod::ultrasonic) measured_diameter_ = diameter;
}

bool Rig::sample() {
  measure();
  ++samples_;
  const double to = static_cast<double>(samples_) * setup_.sample_time;
  const double arriving = delay_.after(air_failed_ ? 0 : play_.after(set_));
  went_ = true;
  if (late_ > 0 && arriving != at_brake_) carry(to - setup_.sample_time + late_, at_brake_);
  at_brake_ = arriving;
  carry(to, at_brake_);
  heat_.go_on(time(), sight().slip_work, sight().roll_speed);
  return went_;
}

void Rig::carry(double to, double pressure) {
  while (went_ && time() < to) {
    const double now = time();
    const double until = line_.until() > now && line_.until() < to ? line_.until() : to;
    Drive drive;
    drive.begin = now;
    drive.line_speed = line_.speed_at(now);
    drive.acceleration = line_.acceleration_at(now);
    drive.set_pressure = pressure;
    drive.brake_share = share() * heat_.friction_left();
    drive.broken = broken_;
    if (setup_.plant.path.dancer) drive.dancer_force = setup_.plant.path.dancer->strands * setpoint_;
    went_ = mover_->advance(drive, until);
    web_run_ += (drive.line_speed + drive.speed_at(time())) / 2 * (time() - now);
    if (!(time() > now)) break;
  }
}

}  // namespace holdback::dynamics
