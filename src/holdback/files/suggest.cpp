#include "holdback/files/suggest.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "holdback/files/text_file.hpp"
#include "holdback/units/near_miss.hpp"

namespace holdback::files {
namespace {

constexpr std::size_t longest = 120;  // of words that are compared

std::string plain(std::string_view text) {
  std::string result;
  for (const char c : text)
    result += c == ' ' || c == '-' ? '_' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return result;
}

bool opens(const std::string& part, const std::string& whole) {
  return part.size() >= 4 && whole.size() > part.size() && whole.compare(0, part.size(), part) == 0;
}

/// Edits from one to the other; a word that opens the other is as good as one edit.
std::size_t distance(const std::string& a, const std::string& b) {
  if (opens(a, b) || opens(b, a)) return 1;
  return units::edit_distance(a, b);
}

}  // namespace

std::string nearest(std::string_view written, const std::vector<std::string>& known) {
  if (written.size() > longest) return {};
  const std::string wanted = plain(written);
  std::string best;
  std::size_t least = std::max<std::size_t>(1, wanted.size() / 3) + 1;
  for (const std::string& word : known) {
    const std::size_t edits = distance(wanted, plain(word));
    if (edits >= least || edits >= std::max(wanted.size(), word.size())) continue;
    least = edits;
    best = word;
  }
  return best;
}

std::string listed(const std::vector<std::string>& words) {
  constexpr std::size_t most = 12;
  std::string result;
  for (std::size_t i = 0; i < std::min(most, words.size()); ++i)
    result += (i == 0 ? "\"" : ", \"") + clipped(words[i]) + "\"";
  if (words.size() > most) result += fmt::format(" and {} more", words.size() - most);
  return result;
}

}  // namespace holdback::files
