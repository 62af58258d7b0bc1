#include "holdback/model/line.hpp"

#include "holdback/model/faults.hpp"

namespace holdback {

Problems problems_of(const Line& line) {
  Faults faults("line");
  if (line.lowest_speed > line.top_speed) {
    faults.error("lowest_speed",
                 {"The lowest speed, {0}, is above the top speed, {1}.",
                  {{line.lowest_speed, Quantity::speed}, {line.top_speed, Quantity::speed}}},
                 {"at most {0}", {{line.top_speed, Quantity::speed}}});
  }
  if (line.emergency_stop_time > line.stop_time) {
    faults.warning("emergency_stop_time",
                   {"The emergency stop takes {0}, longer than the normal stop, {1}.",
                    {{line.emergency_stop_time, Quantity::duration}, {line.stop_time, Quantity::duration}}},
                   {"at most {0}", {{line.stop_time, Quantity::duration}}});
  }
  return faults.take();
}

}  // namespace holdback
