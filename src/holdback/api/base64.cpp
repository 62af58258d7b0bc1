#include "holdback/api/base64.hpp"

#include <cstdint>

namespace holdback::api {

namespace {

int value_of(char c) {
  if (c >= 'A' && c <= 'Z') return c - 'A';
  if (c >= 'a' && c <= 'z') return c - 'a' + 26;
  if (c >= '0' && c <= '9') return c - '0' + 52;
  if (c == '+') return 62;
  return c == '/' ? 63 : -1;
}

}  // namespace

std::optional<std::string> bytes_of_base64(std::string_view text) {
  std::string bytes;
  bytes.reserve(text.size() / 4 * 3);
  std::uint32_t group = 0;
  int digits = 0;
  int padding = 0;
  for (const char c : text) {
    if (c == ' ' || c == '\n' || c == '\r' || c == '\t') continue;
    if (c == '=') {
      ++padding;
      continue;
    }
    const int value = value_of(c);
    if (value < 0 || padding > 0) return std::nullopt;
    group = group << 6 | static_cast<std::uint32_t>(value);
    if (++digits == 4) {
      for (int shift = 16; shift >= 0; shift -= 8) bytes += static_cast<char>(group >> shift & 0xFF);
      group = 0;
      digits = 0;
    }
  }
  if (digits == 1 || padding > 2 || (padding > 0 && (digits + padding) != 4)) return std::nullopt;
  if (digits >= 2) bytes += static_cast<char>(group >> (digits == 2 ? 4 : 10) & 0xFF);
  if (digits == 3) bytes += static_cast<char>(group >> 2 & 0xFF);
  return bytes;
}

}  // namespace holdback::api
