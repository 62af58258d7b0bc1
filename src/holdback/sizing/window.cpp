#include "holdback/sizing/window.hpp"

#include <algorithm>

#include "holdback/physics/air.hpp"
#include "holdback/physics/span.hpp"
#include "holdback/physics/tension.hpp"
#include "holdback/physics/traction.hpp"

namespace holdback::sizing {

namespace {

constexpr int speeds_shown = 8;
constexpr std::size_t radii_shown = 9;
constexpr std::size_t last = radius_count - 1;

// One job while its bounds are gathered. A bound at one place is absent when nothing is known to derive it from.
class Bounds {
 public:
  Bounds(const Job& job, const Demand& demand, const Site& site)
      : job_(job), demand_(demand), site_(site), viscosity_(physics::air_viscosity(site.ambient)) {}

  /// Bounds that do not depend on the roll.
  std::vector<WindowBound> of_web(double speed) const {
    std::vector<WindowBound> all;
    add_traction(all, speed);
    add_sag(all);
    add_web(all);
    return all;
  }

  /// Bounds at one place on the roll.
  std::vector<WindowBound> of_roll(double speed, std::size_t i) const {
    std::vector<WindowBound> all;
    add_balance(all, i);
    add_cinching(all, speed, i);
    return all;
  }

 private:
  static void add(std::vector<WindowBound>& all, BoundId id, double tension, Known known, double diameter = 0,
                  LoadCase load_case = LoadCase::run, const std::string& part = {}) {
    all.push_back({id, tension, diameter, load_case, part, known});
  }

  // An idler must follow every change of speed, so that a ramp or a stop asks most.
  void add_traction(std::vector<WindowBound>& all, double speed) const {
    const double stop = demand_.speed / demand_.stop_time;
    const double ramp = demand_.speed / demand_.ramp_time;
    WindowBound hardest{BoundId::traction, -1, 0, stop > ramp ? LoadCase::stop : LoadCase::ramp, {}, Known::formula};
    for (const Idler& idler : site_.idlers) {
      const double least = physics::idler_tension(idler, {job_.web.width, speed, std::max(stop, ramp), viscosity_});
      if (least <= hardest.tension) continue;
      hardest.tension = least;
      hardest.part = idler.name;
    }
    if (hardest.tension >= 0) all.push_back(hardest);
  }

  void add_sag(std::vector<WindowBound>& all) const {
    if (!site_.path.longest_span) return;
    const double span = *site_.path.longest_span;
    const double weight = physics::web_weight(job_.web.basis_weight, job_.web.width);
    add(all, BoundId::sag, physics::sag_tension(weight, span, site_.path.most_sag * span), Known::setting);
  }

  void add_balance(std::vector<WindowBound>& all, std::size_t i) const {
    if (job_.roll.runout <= 0) return;
    const double outside = demand_.radius[i] * demand_.radius[i] - demand_.radius[0] * demand_.radius[0];
    const double whole = demand_.radius[last] * demand_.radius[last] - demand_.radius[0] * demand_.radius[0];
    const double mass = demand_.web_mass * outside / whole;
    add(all, BoundId::balance, physics::balance_tension(mass, job_.roll.runout, demand_.radius[i]), Known::formula,
        2 * demand_.radius[i], LoadCase::hold);
  }

  void add_web(std::vector<WindowBound>& all) const {
    const double width = job_.web.width;
    if (const auto yield = physics::web_yield(job_.web))
      add(all, BoundId::strength, site_.limits.yield_share * *yield * width, Known::practice);
    if (const auto stiffness = physics::web_stiffness(job_.web))
      add(all, BoundId::strain, site_.limits.strain_limit * *stiffness * width, Known::practice);
    if (const auto usual = physics::table_tension(job_.web)) {
      add(all, BoundId::usual_least, usual->low, Known::practice);
      add(all, BoundId::usual_most, usual->high, Known::practice);
    }
  }

  // In a stop the share of the setpoint that is kept pulls beside the inertia of the web outside of the core.
  void add_cinching(std::vector<WindowBound>& all, double speed, std::size_t i) const {
    if (!job_.web.wound_tension) return;
    const double wound = *job_.web.wound_tension * job_.web.width;
    const double radius = demand_.radius[i];
    WindowBound hardest{BoundId::cinching, wound, 2 * radius, LoadCase::run, {}, Known::practice};
    const auto consider = [&](LoadCase load_case, double time, double share) {
      if (share <= 0) return;
      const double left =
          physics::cinching_tension(wound, demand_.web_inertia[i], speed / time / radius, radius) / share;
      if (left < hardest.tension)
        hardest = {BoundId::cinching, std::max(left, 0.0), 2 * radius, load_case, {}, Known::practice};
    };
    consider(LoadCase::stop, demand_.stop_time * speed / demand_.speed, site_.limits.stop_tension);
    consider(LoadCase::emergency_stop, demand_.emergency_stop_time * speed / demand_.speed,
             site_.limits.emergency_stop_tension);
    all.push_back(hardest);
  }

  const Job& job_;
  const Demand& demand_;
  const Site& site_;
  double viscosity_;
};

bool harder(const WindowBound& a, const WindowBound& b) {
  return is_lower(a.id) ? a.tension > b.tension : a.tension < b.tension;
}

/// Keeps of each kind of bound the one that binds hardest.
void merge(std::vector<WindowBound>& into, const std::vector<WindowBound>& more) {
  for (const WindowBound& bound : more) {
    const auto known = std::find_if(into.begin(), into.end(), [&](const WindowBound& b) { return b.id == bound.id; });
    if (known == into.end()) {
      into.push_back(bound);
    } else if (harder(bound, *known)) {
      *known = bound;
    }
  }
}

WindowAt governed(const std::vector<WindowBound>& bounds, double speed, double diameter) {
  WindowAt window{speed, diameter, {}, {}, {}, {}};
  for (const WindowBound& bound : bounds) {
    if (is_lower(bound.id) && (!window.low || bound.tension > *window.low)) {
      window.low = bound.tension;
      window.low_by = bound.id;
    }
    if (!is_lower(bound.id) && (!window.high || bound.tension < *window.high)) {
      window.high = bound.tension;
      window.high_by = bound.id;
    }
  }
  return window;
}

std::vector<WindowBound> hardest_over_roll(const Bounds& bounds, double speed) {
  std::vector<WindowBound> hardest = bounds.of_web(speed);
  for (std::size_t k = 0; k < radii_shown; ++k) merge(hardest, bounds.of_roll(speed, k * last / (radii_shown - 1)));
  return hardest;
}

}  // namespace

std::vector<WindowBound> window_bounds(const Job& job, const Demand& demand, const Site& site) {
  return hardest_over_roll(Bounds(job, demand, site), job.speed);
}

std::optional<Cinching> cinching(const Job& job, const Demand& demand, const Site& site) {
  if (!job.web.wound_tension) return std::nullopt;
  const double wound = *job.web.wound_tension * job.web.width;
  std::optional<Cinching> nearest;
  double highest = -1;
  const auto consider = [&](std::size_t i, LoadCase load_case, double share, double rate) {
    const double radius = demand.radius[i];
    const Cinching here{share * radius, demand.web_inertia[i] * rate / radius, wound * radius, 2 * radius, load_case};
    const double used = (here.arm * demand.tension.high + here.inertia_torque) / here.wound_torque;
    if (used <= highest) return;
    highest = used;
    nearest = here;
  };
  for (std::size_t i = 0; i <= last; ++i) {
    consider(i, LoadCase::run, 1, 0);
    consider(i, LoadCase::stop, site.limits.stop_tension, demand.speed / demand.stop_time);
    consider(i, LoadCase::emergency_stop, site.limits.emergency_stop_tension,
             demand.speed / demand.emergency_stop_time);
  }
  return nearest;
}

TensionWindow tension_window(const Job& job, const Demand& demand, const Site& site) {
  const Bounds bounds(job, demand, site);
  TensionWindow window;
  window.bounds = demand.bounds;
  std::sort(window.bounds.begin(), window.bounds.end(),
            [](const WindowBound& a, const WindowBound& b) { return a.id < b.id; });
  const double slowest = std::min(std::max(site.line.lowest_speed, 0.05 * job.speed), job.speed);
  for (int k = 0; k < speeds_shown; ++k) {
    const double speed = slowest + (job.speed - slowest) * k / (speeds_shown - 1);
    window.over_speed.push_back(governed(hardest_over_roll(bounds, speed), speed, 0));
  }
  const std::vector<WindowBound> of_web = bounds.of_web(job.speed);
  for (std::size_t k = 0; k < radii_shown; ++k) {
    const std::size_t i = k * last / (radii_shown - 1);
    std::vector<WindowBound> here = of_web;
    merge(here, bounds.of_roll(job.speed, i));
    window.over_roll.push_back(governed(here, job.speed, 2 * demand.radius[i]));
  }
  return window;
}

}  // namespace holdback::sizing
