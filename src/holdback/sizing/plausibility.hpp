// Faults of a stand that only physics shows: figures that cannot all be true together.
#pragma once

#include "holdback/model/problem.hpp"
#include "holdback/model/stand.hpp"

namespace holdback::sizing {

/// Length against diameters and caliper, mass against basis weight and width, a job without any tension to run at, a
/// web unwound harder than it was wound. Errors and warnings with the field's path; to be asked only when the stand has
/// no other errors. A wrong caliper is the commonest input error, so the caliper that would fit is said.
Problems implausible(const Stand& stand);

}  // namespace holdback::sizing
