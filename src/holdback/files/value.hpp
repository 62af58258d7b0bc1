// One value of one field: from what is written to SI, or to a fault that says what would be accepted.
#pragma once

#include <string>
#include <variant>

#include "holdback/files/field.hpp"
#include "holdback/files/node.hpp"
#include "holdback/model/quantity.hpp"

namespace holdback::files {

/// Why a value is not accepted, and what would be.
struct Fault {
  Note what{};
  Note accepted{};
};

/// The value of `node` for the field: right form, known unit, inside the domain. Not for Form::points.
std::variant<Value, Fault> value_of(const FieldInfo& info, const Node& node);

/// What the field takes: its words, its domain, or examples of its kind.
Note accepted_by(const FieldInfo& info);

/// What a node is, in words: "a list", "true", "a number".
std::string found_in(const Node& node);

}  // namespace holdback::files
