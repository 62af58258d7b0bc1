// The log thinned out for a figure, in memory that does not grow: stretches of equal length, twice as long each time
// that they would become too many.
#pragma once

#include <vector>

#include "holdback/field/log_rows.hpp"

namespace holdback::field {

class TraceKeeper {
 public:
  void put(const LogBucket& bucket);
  LogTrace trace(bool has_pressure) const;
  static constexpr std::size_t most = 1200;

 private:
  struct Stretch {
    double begin{}, end{};
    Mean speed{}, tension{}, pressure{}, diameter{};
    double lowest{1e300}, highest{-1e300};
    void add(const Stretch& other);
  };
  std::vector<Stretch> kept_{};
  std::size_t merged_{1};  // buckets in a full stretch
  std::size_t filled_{};   // buckets in the last one
};

}  // namespace holdback::field
