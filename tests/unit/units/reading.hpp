// Reading in a test: the value, or the fault, that the test expects.
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <string_view>
#include <variant>

#include "holdback/units/units.hpp"

namespace holdback::units {

/// The value of a text that must be read; a failure with the fault's sentence if it is not.
inline double value(std::string_view text, Quantity kind) {
  const auto read = parse(text, kind);
  if (const auto* fault = std::get_if<Fault>(&read)) {
    ADD_FAILURE() << text << ": " << fault->what;
    return std::nan("");
  }
  return std::get<double>(read);
}

/// The fault of a text that must not be read; a failure if it is.
inline Fault fault(std::string_view text, Quantity kind) {
  const auto read = parse(text, kind);
  if (const auto* found = std::get_if<Fault>(&read)) return *found;
  ADD_FAILURE() << text << " was read as " << std::get<double>(read);
  return {};
}

}  // namespace holdback::units
