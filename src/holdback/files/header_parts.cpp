#include "holdback/files/header_parts.hpp"

#include <algorithm>
#include <cctype>
#include <string_view>
#include <utility>

#include "holdback/units/text.hpp"

namespace holdback::files {
namespace {

std::string trimmed_text(std::string_view text) { return std::string(units::trimmed(text)); }

}  // namespace

std::size_t opening_bracket(const std::string& text) {
  const char close = text.empty() ? ' ' : text.back();
  if (close != ']' && close != ')') return std::string::npos;
  const char open = close == ']' ? '[' : '(';
  int depth = 0;
  for (std::size_t at = text.size(); at-- > 0;) {
    if (text[at] == close) ++depth;
    if (text[at] == open && --depth == 0) return at;
  }
  return std::string::npos;
}

NamedUnit in_brackets(const std::string& header) {
  const std::size_t open = opening_bracket(header);
  if (open == std::string::npos) return {header, ""};
  return {trimmed_text(std::string_view(header).substr(0, open)),
          trimmed_text(std::string_view(header).substr(open + 1, header.size() - open - 2))};
}

std::string without_remarks(std::string name) {
  for (std::size_t open = name.find_first_of("(["); open != std::string::npos; open = name.find_first_of("([")) {
    const std::size_t close = name.find(name[open] == '(' ? ')' : ']', open);
    name.erase(open, close == std::string::npos ? close : close - open + 1);
  }
  return trimmed_text(name);
}

bool looks_like_unit(const std::string& unit) {
  if (unit.empty() || std::isdigit(static_cast<unsigned char>(unit[0])) != 0) return false;
  return std::any_of(unit.begin(), unit.end(), [](char c) {
    return std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '%' || c == '"' || c == '\'' || (c & '\x80') != 0;
  });
}

std::string looked_at(const std::string& header) {
  std::string text = one_line(header.substr(0, longest_header));
  while (!text.empty() && (text.back() == ':' || text.back() == '*'))
    text = trimmed_text(text.substr(0, text.size() - 1));
  return text;
}

std::vector<NamedUnit> with_loose_unit(const std::string& header) {
  std::vector<NamedUnit> splits;
  const std::size_t first = header.size() > longest_unit ? header.size() - longest_unit : 0;
  for (std::size_t at = header.find_first_of(", ", first); at != std::string::npos;
       at = header.find_first_of(", ", at + 1)) {
    NamedUnit split{trimmed_text(header.substr(0, at)), trimmed_text(header.substr(at + 1))};
    if (!split.name.empty() && looks_like_unit(split.unit)) splits.push_back(std::move(split));
  }
  return splits;
}

std::string one_line(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
  return trimmed_text(text);
}

}  // namespace holdback::files
