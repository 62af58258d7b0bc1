// A cell of a head taken apart: its name and its unit, in every way that people write them.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace holdback::files {

/// A name and the unit that stands with it; the unit may be empty.
struct NamedUnit {
  std::string name;
  std::string unit;
};

inline constexpr std::size_t longest_header = 120;  // bytes that are looked at
inline constexpr std::size_t longest_unit = 32;     // bytes of a unit that stands without brackets

/// The text without line ends, tabs, and blanks at its ends; a sheet wraps its headers.
std::string one_line(std::string text);

/// What is looked at: one line, without a colon or an asterisk at its end.
std::string looked_at(const std::string& header);

/// Where the bracket opens that the last character closes; npos when it closes none.
std::size_t opening_bracket(const std::string& text);

/// "speed [m/min]" and "speed (m/min)" → "speed", "m/min".
NamedUnit in_brackets(const std::string& header);

/// Without remarks in brackets: "Thickness (nominal)" → "Thickness".
std::string without_remarks(std::string name);

/// False for "12" and "12 m/min", which are values.
bool looks_like_unit(const std::string& unit);

/// "Line speed, m/min" and "Line speed m/min" in every way in which a unit could follow, longest unit first.
std::vector<NamedUnit> with_loose_unit(const std::string& header);

}  // namespace holdback::files
