#include "holdback/sizing/check.hpp"

#include "holdback/numerics/parallel_for.hpp"
#include "holdback/sizing/facts.hpp"
#include "holdback/sizing/notes.hpp"
#include "holdback/sizing/window.hpp"

namespace holdback::sizing {

namespace {

JobFacts job_facts(const Job& job, const Site& site) {
  const Demand demand = demand_of(job, site);
  const auto run = [&](std::size_t i) {
    return case_torques(demand, site.limits, i, demand.inertia[i], site.drag).run;
  };
  JobFacts facts;
  facts.job = job.name;
  facts.web = job.web.name;
  facts.roll = job.roll.name;
  facts.width = job.web.width;
  facts.speed = job.speed;
  facts.tension = demand.tension;
  facts.roll_facts = roll_facts(demand, 0);
  facts.run_torque_full = run(demand.radius.size() - 1);
  facts.run_torque_core = run(0);
  facts.slip_power = demand.tension.setpoint * demand.speed;
  facts.window = tension_window(job, demand, site);
  return facts;
}

}  // namespace

Check check(const Stand& stand) {
  const Site site = site_of(stand);
  Check result;
  result.title = stand.title;
  result.webs = static_cast<int>(stand.webs.size());
  result.rolls = static_cast<int>(stand.rolls.size());
  result.brakes = static_cast<int>(stand.brakes.size());
  result.fits = static_cast<int>(candidates(stand, site).size());
  result.jobs.resize(stand.jobs.size());
  numerics::parallel_for(stand.jobs.size(), [&](std::size_t j) { result.jobs[j] = job_facts(stand.jobs[j], site); });
  result.cautions = cautions(stand, site);
  return result;
}

}  // namespace holdback::sizing
