// The large mix as numbers for another implementation (cover_peer.py), with our own times and margins for it: JSON on
// standard output.
#include <algorithm>
#include <chrono>
#include <iostream>
#include <nlohmann/json.hpp>
#include <vector>

#include "holdback/sizing/cover.hpp"
#include "mix.hpp"

namespace {

namespace sizing = holdback::sizing;
using Json = nlohmann::json;

constexpr std::size_t job_count = 1000;
constexpr std::size_t fit_count = 200;
constexpr int grid = 400;  // points at which a cooling curve is handed over

double best_seconds(const holdback::Stand& stand, const sizing::Site& site, const std::vector<sizing::Candidate>& fits,
                    int threads) {
  double best = 1e9;
  for (int i = 0; i < 7; ++i) {
    const auto begin = std::chrono::steady_clock::now();
    const auto coverage = sizing::cover(stand, site, fits, threads);
    const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - begin;
    if (coverage.verdicts.size() != fits.size()) std::abort();
    best = std::min(best, spent.count());
  }
  return best;
}

Json job_of(const holdback::Job& job, const sizing::Demand& demand) {
  Json bounds = Json::object();
  for (const holdback::WindowBound& bound : demand.bounds)
    if (holdback::is_lower(bound.id)) bounds[std::string(key_of(bound.id))] = bound.tension;
  Json cinching = {0, 0, 0};
  if (demand.cinching)
    cinching = {demand.cinching->arm, demand.cinching->inertia_torque, demand.cinching->wound_torque};
  return {{"speed", job.speed},
          {"tension", demand.tension.setpoint},
          {"low", demand.tension.low},
          {"high", demand.tension.high},
          {"strength", demand.tension.web_strength},
          {"tolerance", demand.tolerance},
          {"stop", demand.stop_time},
          {"emergency_stop", demand.emergency_stop_time},
          {"ramp", demand.ramp_time},
          {"core", job.roll.core_radius()},
          {"full", job.roll.full_radius()},
          {"core_mass", job.roll.core_mass},
          {"basis_weight", job.web.basis_weight},
          {"width", job.web.width},
          {"caliper", job.web.caliper},
          {"bounds", bounds},
          {"cinching", cinching}};
}

Json fit_of(const sizing::Candidate& fit, const sizing::Site& site, const std::vector<sizing::Demand>& demands) {
  const holdback::Brake& brake = *fit.brake;
  const holdback::Grade& grade = *fit.grade;
  Json out = {{"brakes", fit.brakes},
              {"pairs", brake.pairs},
              {"drag", brake.drag},
              {"inertia", brake.disc_inertia},
              {"heat", brake.disc_mass * brake.specific_heat},
              {"threshold", brake.threshold_pressure},
              {"ceiling", sizing::pressure_ceiling(site, brake)},
              {"floor", sizing::pressure_floor(site, brake)},
              {"torque_rating", brake.rated_torque},
              {"speed_rating", brake.rated_speed},
              {"disc_rating", brake.rated_temperature},
              {"usable", brake.pad_area * brake.usable_pad_depth},
              {"contact", brake.piston_area * brake.actuator_efficiency / brake.pad_area},
              {"friction_radius", fit.friction_radius},
              {"capacity", fit.pair.capacity},
              {"highest", fit.pair.highest},
              {"band", grade.friction_band},
              {"static_ratio", grade.static_ratio},
              {"fade_start", grade.fade_start.value_or(1e9)},
              {"fade_rate", grade.fade_rate},
              {"pad_limit", grade.temperature_limit},
              {"wear_rate", grade.wear_rate},
              {"wear_knee", grade.wear_knee.value_or(1e9)},
              {"wear_doubling", grade.wear_doubling},
              {"pressure_speed", grade.pressure_speed_limit.value_or(0)},
              {"rise", fit.cooling->rated_rise()}};
  const double top = 1.5 * brake.rated_speed;
  for (int k = 0; k < grid; ++k) {
    const double speed = top * k * k / (grid - 1.0) / (grid - 1.0);
    const sizing::Shedding here = fit.cooling->at(speed);
    out["root_speed"].push_back(std::sqrt(speed));
    out["convection"].push_back(here.convection);
    out["radiation"].push_back(here.radiation);
  }
  for (const sizing::Demand& demand : demands)
    out["surface"].push_back(fit.cooling->surface_per_watt(demand.emergency_stop_time));
  return out;
}

}  // namespace

int main() {
  const holdback::Stand stand = bench::large_stand(job_count, fit_count);
  const sizing::Site site = sizing::site_of(stand);
  std::vector<sizing::Candidate> fits = sizing::candidates(stand, site);
  fits.resize(fit_count);
  const auto coverage = sizing::cover(stand, site, fits, 0);
  Json out = {{"drag", site.drag},
              {"shaft_inertia", site.shaft_inertia},
              {"ambient", site.ambient},
              {"pressure_step", site.pressure_step},
              {"reserve", site.limits.reserve},
              {"stop_share", site.limits.stop_tension},
              {"emergency_stop_share", site.limits.emergency_stop_tension},
              {"hold_share", site.limits.hold_tension},
              {"least_life", site.limits.least_pad_life},
              {"radii", sizing::radius_count},
              {"seconds", {best_seconds(stand, site, fits, 1), best_seconds(stand, site, fits, 2)}}};
  for (std::size_t j = 0; j < job_count; ++j) out["jobs"].push_back(job_of(stand.jobs[j], coverage.demands[j]));
  for (std::size_t f = 0; f < fit_count; ++f) {
    out["fits"].push_back(fit_of(fits[f], site, coverage.demands));
    Json margins = Json::array();
    for (const sizing::Verdict& verdict : coverage.verdicts[f]) margins.push_back({verdict.pairs, verdict.margin});
    out["margins"].push_back(margins);
  }
  std::cout << out << '\n';
}
