// What two fields together show to be wrong (model's problems_of) brought to its place in the files, and the last
// touches to a list of problems.
#pragma once

#include "holdback/files/stand_file.hpp"

namespace holdback::files {

/// Adds the stand's problems_of(), located, without those that only follow from a field that could not be read.
void add_cross_problems(StandFile& file);

/// Adds `found` (with field paths) in the same manner.
void add_located(Problems found, StandFile& file);

/// Takes back what add_cross_problems() added for the stand as it is now.
void remove_cross_problems(StandFile& file);

/// Locates every problem, fills in the source lines, and sorts by line and column; problems of `last_file` come last.
void finish(StandFile& file, const std::string& last_file = "");

}  // namespace holdback::files
