// What differs between two stands, field by field.
#pragma once

#include <vector>

#include "holdback/model/stand.hpp"
#include "holdback/results/answer.hpp"
#include "holdback/results/changes.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {

/// A read stand with the defaults that it was filled up with.
struct Revision {
  const Stand& stand;
  const std::vector<DefaultUsed>& defaults;
};

/// Every field that differs. Things with a name are matched by it, those without one (plies, sections of the shaft,
/// points of a cooling map, events) by their place. Numbers that differ by no more than one in 10⁹, as the same value
/// written in two units may, are no change, nor is a given number that its neighbours would make anyway. A job's
/// tension is the one over its whole width. Of a thing that came or went only that is told; `before` and `after` are
/// then empty. Paths bear no places: "job.speed", "brake.grade.friction".
Changes changes_between(const Revision& before, const Revision& after, units::System system);

/// The same where nothing is known of defaults.
Changes changes_between(const Stand& before, const Stand& after, units::System system);

}  // namespace holdback::files
