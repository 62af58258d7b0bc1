#include "holdback/files/header_words.hpp"

#include <algorithm>
#include <cctype>
#include <map>
#include <vector>

#include "holdback/units/text.hpp"

namespace holdback::files {
namespace {

using Words = std::vector<std::string>;

std::string small_letters(std::string_view text) {
  std::string small(text);
  for (char& c : small) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return small;
}

/// What a short form stands for.
const std::map<std::string, Words>& long_forms() {
  static const std::map<std::string, Words> forms{
      {"dia", {"diameter"}},
      {"diam", {"diameter"}},
      {"od", {"outer", "diameter"}},
      {"outside", {"outer"}},
      {"inside", {"inner"}},
      {"max", {"maximum"}},
      {"min", {"minimum"}},
      {"wt", {"weight"}},
      {"no", {"number"}},
      {"nr", {"number"}},
      {"num", {"number"}},
      {"gage", {"gauge"}},
      {"calliper", {"caliper"}},
      {"thk", {"thickness"}},
      {"accel", {"acceleration"}},
      {"decel", {"deceleration"}},
      {"estop", {"e", "stop"}},
      {"of", {}},
      {"the", {}},
      {"per", {}},
  };
  return forms;
}

/// The words of a name: small letters, no punctuation, short forms written out, in the order of the alphabet, so that
/// "Core Ø", "Ø of core" and "core dia." are the same.
class WordReader {
 public:
  std::string read(std::string_view name) {
    for (std::size_t at = 0; at < name.size();) {
      const auto c = units::code_point_at(name, at);
      take(c.value, name.substr(at, c.size));
      at += c.size;
    }
    end_word();
    std::sort(words_.begin(), words_.end());
    std::string all;
    for (const std::string& word : words_) all += (all.empty() ? "" : " ") + word;
    return all;
  }

 private:
  void take(char32_t c, std::string_view bytes) {
    constexpr char32_t diameter_sign = 0x2300;
    if (c == U'\'' || c == 0x2019) return;               // "Young's"
    if (c == 0xD8 || c == 0xF8 || c == diameter_sign) {  // Ø, ø
      end_word();
      words_.emplace_back("diameter");
    } else if (c == U'%') {
      end_word();
      words_.emplace_back("%");
    } else if (c == U'.') {
      if (word_.size() > 1) end_word();  // "web.width" is two words, "O.D." is one
    } else if (units::is_space(c) || (c < 0x80 && std::isalnum(static_cast<int>(c)) == 0)) {
      end_word();
    } else {
      word_ += small_letters(bytes);
    }
  }

  void end_word() {
    if (word_.empty()) return;
    const auto form = long_forms().find(word_);
    if (form == long_forms().end())
      words_.push_back(word_);
    else
      words_.insert(words_.end(), form->second.begin(), form->second.end());
    word_.clear();
  }

  std::string word_{};
  Words words_{};
};

}  // namespace

std::string header_words(std::string_view name) { return WordReader().read(name); }

}  // namespace holdback::files
