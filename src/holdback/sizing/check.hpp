// `check`: the stand as understood, before any brake is chosen.
#pragma once

#include "holdback/model/stand.hpp"
#include "holdback/results/check.hpp"

namespace holdback::sizing {

/// Lays out every job: tension, roll, and the steady torque that any brake would have to give.
Check check(const Stand& stand);

}  // namespace holdback::sizing
