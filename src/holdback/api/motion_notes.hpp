// What the answers on motion assume, and the cautions that belong to them.
#pragma once

#include <vector>

#include "holdback/api/stand_job.hpp"

namespace holdback::api {

std::vector<Note> motion_assumptions(const Stand& stand, const StandJob& job, const std::vector<ControlKind>& kinds,
                                     bool each);
std::vector<Note> motion_cautions(const StandJob& job);

}  // namespace holdback::api
