// The history of one stand, put together: courses of the pads, the next change, trends, and what to measure next.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/field/pad_course.hpp"

namespace holdback::field {

/// `entries`: of one stand, sound (files/history_file.hpp); `wear`: what the stand file expects, when one was given.
History history_of(std::vector<HistoryEntry> entries, const std::optional<StandWear>& wear);

/// Whether a pad in use was last measured at the maker's limit or below it.
bool worn_out(const History& history);

}  // namespace holdback::field
