#include "holdback/papers/sources.hpp"

#include <array>
#include <utility>

#include "holdback/papers/sources_text.hpp"

namespace holdback::papers {

namespace {

/// The entry of a key, from its head to the next entry.
std::string_view entry_of(std::string_view bib, std::string_view key) {
  const std::string head = "{" + std::string(key) + ",\n";
  const auto at = bib.find(head);
  if (at == std::string_view::npos) return {};
  return bib.substr(at, bib.find("\n}", at) - at);
}

/// What stands between the outer braces of "  title = {…}".
std::string_view field_of(std::string_view entry, std::string_view name) {
  const auto at = entry.find("\n  " + std::string(name) + " ");
  if (at == std::string_view::npos) return {};
  const auto open = entry.find('{', at);
  int depth = 0;
  for (std::size_t i = open; i < entry.size(); ++i) {
    if (entry[i] == '{') ++depth;
    if (entry[i] == '}' && --depth == 0) return entry.substr(open + 1, i - open - 1);
  }
  return {};
}

/// Letters and dashes as they are read, for those that the list has.
std::string as_read(std::string_view written) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 8> signs{{{"{\\l}", "ł"},
                                                                                       {"{\\AA}", "Å"},
                                                                                       {"{\\\"o}", "ö"},
                                                                                       {"{\\o}", "ø"},
                                                                                       {"\\_", "_"},
                                                                                       {"--", "–"},
                                                                                       {"{", ""},
                                                                                       {"}", ""}}};
  std::string text(written);
  for (const auto& [from, to] : signs)
    for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
      text.replace(at, from.size(), to);
  return text;
}

}  // namespace

std::optional<std::string> source_in(std::string_view bib, std::string_view key) {
  const auto entry = entry_of(bib, key);
  if (entry.empty()) return std::nullopt;
  std::string text;
  const auto add = [&](std::string_view between, std::string_view name) {
    const auto field = field_of(entry, name);
    if (!field.empty()) text += (text.empty() ? std::string{} : std::string(between)) + as_read(field);
  };
  add("", "author");
  add(": ", "title");
  for (const char* where : {"journal", "publisher", "institution"}) add(". ", where);
  add(field_of(entry, "volume").empty() ? ", " : " ", field_of(entry, "volume").empty() ? "number" : "volume");
  add(", ", "year");
  return text;
}

std::optional<std::string> source_called(std::string_view key) { return source_in(sources_text, key); }

}  // namespace holdback::papers
