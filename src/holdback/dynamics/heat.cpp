#include "holdback/dynamics/heat.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/brake.hpp"
#include "holdback/physics/wear.hpp"

namespace holdback::dynamics {

namespace {

constexpr double heat_step = 0.1;  // [s]

}  // namespace

BrakeHeat::BrakeHeat(const HeatPlant& plant, const std::optional<physics::NodeTemperatures>& start) : plant_(plant) {
  state_.fill(plant.ambient);
  if (start) state_ = *start;
  friction_left_ = physics::fade_factor(plant_.grade, state_[0]);
}

void BrakeHeat::go_on(double time, double work, double roll_speed) {
  const double duration = time - time_;
  if (duration < heat_step) return;
  const double power = std::max(0.0, (work - work_) / duration) / plant_.brakes;
  time_ = time;
  work_ = work;
  step(duration, power, std::abs(roll_speed));
}

double BrakeHeat::convection_at(double roll_speed) const {
  const std::vector<double>& grid = plant_.convection;
  if (grid.empty()) return 0;
  const double place = std::sqrt(roll_speed) / plant_.root_step;
  const auto at = std::min(static_cast<std::size_t>(place), grid.size() - 1);
  if (at + 1 >= grid.size()) return grid.back();
  return grid[at] + (place - static_cast<double>(at)) * (grid[at + 1] - grid[at]);
}

// Heun's method; the bodies take longer than a step by a factor of a hundred and more.
void BrakeHeat::step(double duration, double power, double roll_speed) {
  const double convection = convection_at(roll_speed);
  const auto first = physics::heat_rates(plant_.nodes, state_, power, convection, plant_.ambient);
  physics::NodeTemperatures there = state_;
  for (std::size_t i = 0; i < there.size(); ++i) there[i] += duration * first[i];
  const auto second = physics::heat_rates(plant_.nodes, there, power, convection, plant_.ambient);
  for (std::size_t i = 0; i < there.size(); ++i) state_[i] += duration * (first[i] + second[i]) / 2;
  friction_left_ = physics::fade_factor(plant_.grade, state_[0]);
  if (plant_.pads > 0 && plant_.usable_volume > 0) {
    const double rate = physics::wear_rate_at(plant_.grade, state_[0]);
    wear_ += physics::worn_volume(rate, power * duration) / plant_.pads / plant_.usable_volume;
  }
}

}  // namespace holdback::dynamics
