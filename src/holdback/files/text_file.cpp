#include "holdback/files/text_file.hpp"

#include <fmt/format.h>

namespace holdback::files {
namespace {

bool continues(std::string_view text, std::size_t at) {
  return at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U;
}

/// Smallest code point of a sequence of 2, 3 and 4 bytes: a longer form than needed is no UTF-8.
bool in_range(std::string_view bytes) {
  const auto lead = static_cast<unsigned char>(bytes[0]);
  const auto second = static_cast<unsigned char>(bytes[1]);
  if (bytes.size() == 2) return lead >= 0xC2;
  if (bytes.size() == 3) return !(lead == 0xE0 && second < 0xA0) && !(lead == 0xED && second >= 0xA0);
  return !(lead == 0xF0 && second < 0x90) && !(lead == 0xF4 && second >= 0x90) && lead <= 0xF4;
}

bool starts_with_utf16_mark(std::string_view text) {
  return text.substr(0, 2) == "\xFF\xFE" || text.substr(0, 2) == "\xFE\xFF";
}

Problem fault(const std::string& file, std::string what, std::string accepted) {
  Problem problem;
  problem.what.text = std::move(what);
  problem.accepted.text = std::move(accepted);
  problem.file = file;
  return problem;
}

/// The first byte that is not text: its position, and what it is.
std::optional<Problem> first_wrong_byte(std::string_view text, const std::string& file) {
  Position where{1, 1};
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t size = character_size(text, at);
    if (size == 0 || text[at] == '\0') {
      auto problem =
          size == 0
              ? fault(file,
                      fmt::format("byte 0x{:02X} is not part of a UTF-8 text", static_cast<unsigned char>(text[at])),
                      "text saved as UTF-8")
              : fault(file, "a zero byte stands in the text", "a text file; this looks like another kind of file");
      problem.where = where;
      return problem;
    }
    where = text[at] == '\n' ? Position{where.line + 1, 1} : Position{where.line, where.column + 1};
    at += size;
  }
  return std::nullopt;
}

}  // namespace

std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    std::string_view line = text.substr(0, end);
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    lines.emplace_back(line);
    if (end == std::string_view::npos) break;
    text.remove_prefix(end + 1);
  }
  return lines;
}

std::string_view without_mark(std::string_view text) {
  if (text.substr(0, 3) == "\xEF\xBB\xBF") text.remove_prefix(3);
  return text;
}

std::optional<Problem> unreadable(std::string_view text, std::size_t largest, const std::string& what,
                                  const std::string& file) {
  if (text.size() > largest)
    return fault(file, fmt::format("the file has {} bytes, too many to read", text.size()),
                 fmt::format("at most {} MB", largest / 1'000'000));
  if (starts_with_utf16_mark(text)) return fault(file, "the file is saved as UTF-16", "text saved as UTF-8");
  if (auto wrong = first_wrong_byte(text, file)) return wrong;
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) return fault(file, "the file is empty", what);
  return std::nullopt;
}

std::size_t character_size(std::string_view text, std::size_t at) {
  const auto lead = static_cast<unsigned char>(text[at]);
  if (lead < 0x80) return 1;
  const std::size_t size = lead >= 0xF0 ? 4U : lead >= 0xE0 ? 3U : 2U;
  for (std::size_t i = 1; i < size; ++i)
    if (!continues(text, at + i)) return 0;
  return lead >= 0xC0 && in_range(text.substr(at, size)) ? size : 0;
}

std::size_t length_of(std::string_view text) {
  std::size_t length = 0;
  for (std::size_t at = 0; at < text.size(); ++at) length += continues(text, at) ? 0U : 1U;
  return length;
}

std::string slice(std::string_view line, int first, int last) {
  std::string result;
  int column = 0;
  for (std::size_t at = 0; at < line.size(); ++at) {
    column += continues(line, at) ? 0 : 1;
    if (column >= first && column < last) result += line[at];
  }
  return result;
}

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::string clipped(std::string_view text) {
  constexpr std::size_t most = 60;
  std::string result;
  std::size_t characters = 0;
  for (const char c : text) {
    characters += (static_cast<unsigned char>(c) & 0xC0U) == 0x80U ? 0U : 1U;
    if (c == '\n' || characters > most) return result + "…";
    const bool control = static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
    result += control ? std::string("\uFFFD") : std::string(1, c);
  }
  return result;
}

}  // namespace holdback::files
