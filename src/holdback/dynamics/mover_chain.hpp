// The mover of a path that is followed span by span; make_mover() calls it.
#pragma once

#include "holdback/dynamics/mover.hpp"

namespace holdback::dynamics {

std::unique_ptr<Mover> chain_mover(const Plant& plant, const Start& start, const MoverOptions& options);

}  // namespace holdback::dynamics
