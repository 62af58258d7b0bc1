#include "holdback/draw/cells.hpp"

#include <algorithm>

#include "holdback/units/text.hpp"

namespace holdback::draw {

namespace {

constexpr std::string_view ellipsis = "…";
constexpr std::string_view replacement = "\uFFFD";

bool is_control(char32_t c) { return c < 0x20 || (c >= 0x7F && c < 0xA0); }

// Characters that turn the writing direction: what is read would no longer be what is written.
bool turns_direction(char32_t c) {
  return c == 0x200E || c == 0x200F || (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
}

std::string blanks(int count) { return std::string(static_cast<std::size_t>(std::max(count, 0)), ' '); }

// Bytes that the first `count` code points take.
std::size_t bytes_of(std::string_view text, int count) {
  std::size_t at = 0;
  for (int i = 0; i < count && at < text.size(); ++i) at += units::code_point_at(text, at).size;
  return at;
}

}  // namespace

int columns(std::string_view text) {
  int count = 0;
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] == '\x1b') {
      at = std::min(text.find('m', at), text.size() - 1) + 1;
    } else {
      at += units::code_point_at(text, at).size;
      ++count;
    }
  }
  return count;
}

std::string plain(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const auto point = units::code_point_at(text, at);
    const bool broken = point.value == 0xFFFD;
    if (point.value == '\t') {
      out += ' ';
    } else if (broken || is_control(point.value) || turns_direction(point.value)) {
      out += replacement;
    } else {
      out += text.substr(at, point.size);
    }
    at += point.size;
  }
  return out;
}

std::string cut(std::string_view text, int width) {
  if (width <= 0) return {};
  if (columns(text) <= width) return std::string(text);
  return std::string(text.substr(0, bytes_of(text, width - 1))) + std::string(ellipsis);
}

std::string pad_right(std::string_view text, int width) { return std::string(text) + blanks(width - columns(text)); }

std::string pad_left(std::string_view text, int width) { return blanks(width - columns(text)) + std::string(text); }

std::vector<std::string> wrapped(std::string_view text, int width) {
  std::vector<std::string> lines;
  std::string line;
  while (!text.empty()) {
    const auto end = std::min(text.find(' '), text.size());
    const auto word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (word.empty()) continue;
    if (!line.empty() && columns(line) + 1 + columns(word) > width) {
      lines.push_back(line);
      line.clear();
    }
    line += (line.empty() ? "" : " ") + cut(word, width);
  }
  if (!line.empty() || lines.empty()) lines.push_back(line);
  return lines;
}

}  // namespace holdback::draw
