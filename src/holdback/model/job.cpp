#include "holdback/model/job.hpp"

#include "holdback/model/faults.hpp"

namespace holdback {

namespace {

void check_tension(const Job& job, Faults& faults) {
  if (!job.tension || !job.web.yield_strength) return;
  const double at_yield = *job.web.yield_strength * job.web.width * job.web.caliper;
  if (*job.tension < at_yield) return;
  faults.error(
      "tension",
      {"The tension asked for, {0}, is not below {1}, at which this web yields ({2} of strength over {3} of width "
       "and {4} of caliper).",
       {{*job.tension, Quantity::force},
        {at_yield, Quantity::force},
        {*job.web.yield_strength, Quantity::stress},
        {job.web.width, Quantity::short_length},
        {job.web.caliper, Quantity::caliper}}},
      {"a tension well below {0}; common practice is {1} to {2} of it",
       {{at_yield, Quantity::force}, {0.1, Quantity::ratio}, {0.25, Quantity::ratio}}});
}

void check_stops(const Job& job, Faults& faults) {
  if (!job.stop_time || !job.emergency_stop_time || *job.emergency_stop_time <= *job.stop_time) return;
  faults.warning("emergency_stop_time",
                 {"The emergency stop takes {0}, longer than the normal stop, {1}.",
                  {{*job.emergency_stop_time, Quantity::duration}, {*job.stop_time, Quantity::duration}}},
                 {"at most {0}", {{*job.stop_time, Quantity::duration}}});
}

}  // namespace

Problems problems_of(const Job& job, const std::string& path) {
  Faults faults(path);
  check_tension(job, faults);
  check_stops(job, faults);
  return faults.take();
}

}  // namespace holdback
