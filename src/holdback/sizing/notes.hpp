// What every answer says beside its numbers: what was assumed, and the usual cautions of the trade.
#pragma once

#include <vector>

#include "holdback/model/stand.hpp"
#include "holdback/results/choice.hpp"
#include "holdback/sizing/site.hpp"

namespace holdback::sizing {

/// Assumptions of the models that this stand meets, and where a value is common practice without a source.
std::vector<Note> assumptions(const Stand& stand, const Site& site);

/// Cautions for whoever works at the stand, with the stand's own numbers where they matter.
std::vector<Note> cautions(const Stand& stand, const Site& site);

}  // namespace holdback::sizing
