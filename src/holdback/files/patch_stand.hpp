// Changing a few values of a stand file in its text: comments, order and every other byte stay as they are.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "holdback/files/stand_file.hpp"
#include "holdback/results/brake_fit.hpp"

namespace holdback::files {

/// A value for one key of a brake or of one of its grades.
struct BrakeValue {
  std::string brake{};  // by name
  std::string grade{};  // by name; empty: the brake's own key
  std::string key{};    // "threshold_pressure"
  double value{};       // [SI of the key's kind], written with four significant digits
};

/// The changed text and what was changed.
struct PatchedStand {
  std::string text{};
  std::vector<FileChange> changes{};
};

/// Sets the values. One that is there is replaced in its manner: unit system, quotes or none; one that is not is added
/// behind the name of its table. A Problem when a table or the place for a value cannot be found in the text, or when
/// the changed text does not read as meant.
std::variant<PatchedStand, Problem> patch_stand(std::string_view text, const std::string& file_name,
                                                const std::vector<BrakeValue>& values);

}  // namespace holdback::files
