// What a TOML parser says, in words that help: the usual slips are a unit without quotes, a decimal comma, an open
// bracket.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback::files {

/// The problem for the parser's `description` at a position.
Problem syntax_fault(std::string_view description, Position where, const std::vector<std::string>& lines,
                     const std::string& file);

/// The key of a line `key = …`; empty when the line is something else.
std::string key_of_line(std::string_view line);

}  // namespace holdback::files
