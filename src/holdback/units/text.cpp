#include "holdback/units/text.hpp"

namespace holdback::units {
namespace {

constexpr char32_t replacement = 0xFFFD;
constexpr std::string_view replacement_text = "\ufffd";

// Bytes of the sequence that `lead` opens; 0 if it opens none.
std::size_t sequence_length(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return 2;
  if (lead >= 0xE0 && lead <= 0xEF) return 3;
  if (lead >= 0xF0 && lead <= 0xF4) return 4;
  return 0;
}

// Overlong forms, surrogates and values past the end of Unicode are no characters.
bool is_character(char32_t value, std::size_t size) {
  constexpr char32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
  return value >= least[size] && value <= 0x10FFFF && (value < 0xD800 || value > 0xDFFF);
}

bool is_control(char32_t c) { return c < 0x20 || (c >= 0x7F && c < 0xA0); }

}  // namespace

CodePoint code_point_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return {};
  const auto lead = static_cast<unsigned char>(text[at]);
  const std::size_t size = sequence_length(lead);
  if (size == 1) return {lead, 1};
  if (size == 0 || at + size > text.size()) return {replacement, 1};
  char32_t value = lead & (0x7FU >> size);
  for (std::size_t i = 1; i < size; ++i) {
    const auto byte = static_cast<unsigned char>(text[at + i]);
    if ((byte & 0xC0U) != 0x80U) return {replacement, 1};
    value = (value << 6U) | (byte & 0x3FU);
  }
  return is_character(value, size) ? CodePoint{value, size} : CodePoint{replacement, 1};
}

bool is_space(char32_t c) { return c == U' ' || (c >= U'\t' && c <= U'\r') || c == 0xA0 || c == 0x2009 || c == 0x202F; }

std::string_view trimmed(std::string_view text) {
  std::size_t begin = text.size();
  std::size_t end = 0;
  for (std::size_t at = 0; at < text.size();) {
    const auto c = code_point_at(text, at);
    if (!is_space(c.value)) {
      if (begin == text.size()) begin = at;
      end = at + c.size;
    }
    at += c.size;
  }
  return end == 0 ? std::string_view{} : text.substr(begin, end - begin);
}

std::string quoted(std::string_view text) {
  constexpr std::size_t longest = 60;
  std::string out = "'";
  for (std::size_t at = 0; at < text.size();) {
    if (at >= longest) {
      out += "\u2026";
      break;
    }
    const auto c = code_point_at(text, at);
    const bool shown = c.value != replacement && !is_control(c.value);
    out += shown ? text.substr(at, c.size) : replacement_text;
    at += c.size;
  }
  return out + "'";
}

}  // namespace holdback::units
