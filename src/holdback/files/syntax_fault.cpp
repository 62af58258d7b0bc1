#include "holdback/files/syntax_fault.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <map>

#include "holdback/files/text_file.hpp"

namespace holdback::files {
namespace {

bool contains(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// "Error while parsing key-value pair: expected …" → "expected …"
std::string_view without_prelude(std::string_view description) {
  const std::string_view prelude = "Error while parsing ";
  const std::size_t colon = description.find(": ");
  if (description.substr(0, prelude.size()) != prelude || colon == std::string_view::npos) return description;
  return description.substr(colon + 2);
}

/// The text after "key =", without a comment.
std::string_view value_of_line(std::string_view line) {
  const std::size_t equals = line.find('=');
  if (equals == std::string_view::npos) return {};
  return trimmed(line.substr(equals + 1, line.find('#', equals) - equals - 1));
}

struct Words {
  std::string what;
  std::string accepted;
};

Words words_for_value(const std::string& key, std::string_view value, std::string_view said) {
  const bool opens_quote = !value.empty() && (value[0] == '"' || value[0] == '\'');
  if (value.empty()) return {fmt::format("'{}' has no value", key), fmt::format("{} = \"…\"", key)};
  if (opens_quote)
    return {"the quoted text does not end on this line, or something follows it",
            fmt::format("{} = \"…\" and nothing after it", key)};
  const bool begins_number =
      is_digit(value[0]) || ((value[0] == '-' || value[0] == '+' || value[0] == '.') && value.size() > 1);
  const bool only_number = value.find_first_not_of("+-0123456789.,eE_") == std::string_view::npos;
  if (begins_number && only_number && contains(value, ",")) {
    std::string point(value);
    std::replace(point.begin(), point.end(), ',', '.');
    return {"a number is written with a decimal point, not a comma", fmt::format("{} = {}", key, point)};
  }
  if (begins_number && !only_number)
    return {"a quantity with a unit is a text and stands in quotes", fmt::format("{} = \"{}\"", key, clipped(value))};
  if (value[0] == '[' || value[0] == '{')
    return {std::string(said), "a list in [ ], each entry in { }, parted by commas"};
  return {"a text stands in quotes", fmt::format("{} = \"{}\"", key, clipped(value))};
}

/// The path of the table that a line stands in, from the headers above it: "brake[1].grade[0]"; empty above all tables.
class TablePath {
 public:
  void header(std::string_view line) {
    const bool many = line.substr(0, 2) == "[[";
    const std::size_t open = many ? 2 : 1;
    const std::size_t close = line.find(']');
    if (line.substr(0, 1) != "[" || close == std::string_view::npos) return;
    const std::string name(trimmed(line.substr(open, close - open)));
    if (many) enter(name);
    path_ = numbered(name);
  }

  const std::string& path() const { return path_; }

 private:
  void enter(const std::string& name) {
    ++counts_[name];
    for (auto& [other, count] : counts_)
      if (other.compare(0, name.size() + 1, name + ".") == 0) count = 0;
  }

  /// "brake.grade" → "brake[1].grade[0]"
  std::string numbered(const std::string& name) const {
    std::string result;
    for (std::size_t at = 0; at <= name.size();) {
      const std::size_t end = std::min(name.find('.', at), name.size());
      result += (at == 0 ? "" : ".") + name.substr(at, end - at);
      const auto count = counts_.find(name.substr(0, end));
      if (count != counts_.end() && count->second > 0) result += fmt::format("[{}]", count->second - 1);
      at = end + 1;
    }
    return result;
  }

  std::map<std::string, int> counts_{};
  std::string path_{};
};

std::string path_at(const std::vector<std::string>& lines, std::size_t index) {
  TablePath table;
  for (std::size_t i = 0; i < index; ++i) table.header(trimmed(lines[i]));
  const std::string key = key_of_line(lines[index]);
  if (key.empty() || table.path().empty()) return key;
  return table.path() + "." + key;
}

Words words_for(std::string_view description, std::string_view line) {
  const std::string_view said = without_prelude(description);
  const std::string key = key_of_line(line);
  const std::string_view start = trimmed(line);
  if (contains(said, "cannot redefine existing")) {
    if (contains(said, "as array-of-tables"))
      return {"this table was opened with single brackets before",
              "double brackets in both places: [[web]], [[roll]], [[job]], [[brake]]"};
    if (start.substr(0, 1) == "[")
      return {"this table was opened before", "each table once; of [[ ]] tables, as many as there are things"};
    return {fmt::format("'{}' is given twice in one table", key), "each key once"};
  }
  if (start.substr(0, 1) == "[" && key.empty() && contains(said, "expected ']'"))
    return {"the header of a table is not closed", "[line] for a single table, [[web]] for one of several"};
  if (start.substr(0, 1) == "[" && key.empty())
    return {fmt::format("the header of a table is not complete: {}", said),
            "[line] for a single table, [[web]] for one of several"};
  if (!key.empty()) return words_for_value(key, value_of_line(line), said);
  return {fmt::format("this line is not understood: {}", said),
          "key = \"value\", or the header of a table in brackets"};
}

}  // namespace

Problem syntax_fault(std::string_view description, Position where, const std::vector<std::string>& lines,
                     const std::string& file) {
  // At the end of the file the parser points behind the last line.
  const auto index = std::min(static_cast<std::size_t>(std::max(where.line, 1)), lines.size()) - 1;
  const std::string line = lines.empty() ? std::string() : lines[index];
  const Words words = words_for(description, line);
  Problem problem;
  problem.what.text = words.what;
  problem.accepted.text = words.accepted;
  problem.field = lines.empty() ? std::string() : path_at(lines, index);
  problem.value = clipped(problem.field.empty() ? trimmed(line) : value_of_line(line));
  problem.file = file;
  problem.where = where;
  return problem;
}

std::string key_of_line(std::string_view line) {
  const std::size_t equals = line.find('=');
  if (equals == std::string_view::npos) return {};
  const std::string_view key = trimmed(line.substr(0, equals));
  const bool plain = !key.empty() && std::all_of(key.begin(), key.end(), [](char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == '-' || c == '.';
  });
  return plain ? std::string(key) : std::string();
}

}  // namespace holdback::files
