#include "holdback/files/log_columns.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "holdback/files/header_parts.hpp"
#include "holdback/files/log_names.hpp"
#include "holdback/files/suggest.hpp"
#include "holdback/files/text_file.hpp"

namespace holdback::files {
namespace {

constexpr const char* option = "--columns";
constexpr const char* example =
    "such as time=t,tension=F1 [N],speed=3 "
    "[m/min]: a header or the number of a column";

/// Parted at commas that stand in no bracket and no quotes.
std::vector<std::string> entries_of(const std::string& text) {
  std::vector<std::string> entries(1);
  int depth = 0;
  bool quoted = false;
  for (const char c : text) {
    if (c == '"') {
      quoted = !quoted;
      continue;
    }
    if (!quoted) depth += c == '[' || c == '(' ? 1 : c == ']' || c == ')' ? -1 : 0;
    if (c == ',' && !quoted && depth <= 0)
      entries.emplace_back();
    else
      entries.back() += c;
  }
  return entries;
}

int number_in(const std::string& name) {
  const bool digits = !name.empty() && name.size() <= 4 && name.find_first_not_of("0123456789") == std::string::npos;
  return digits ? std::stoi(name) : 0;
}

}  // namespace

Problem option_problem(const std::string& asked, const std::string& value, std::string what, std::string accepted) {
  Problem problem;
  problem.field = asked;
  problem.value = clipped(value);
  problem.what = {std::move(what)};
  problem.accepted = {std::move(accepted)};
  return problem;
}

std::vector<ColumnAsked> read_columns_option(const std::string& text, Problems& problems) {
  std::vector<ColumnAsked> all;
  if (trimmed(text).empty()) return all;
  for (const std::string& entry : entries_of(text)) {
    const std::size_t equals = entry.find('=');
    if (equals == std::string::npos) {
      problems.push_back(option_problem(option, entry, "an entry is no CHANNEL=COLUMN", example));
      continue;
    }
    const std::string key(trimmed(std::string_view(entry).substr(0, equals)));
    const auto& words = channel_words();
    const auto word = std::find(words.begin(), words.end(), key);
    if (word == words.end()) {
      const std::string near = nearest(key, words);
      problems.push_back(option_problem(option, entry,
                                        fmt::format("\"{}\" is no channel of a log{}", clipped(key),
                                                    near.empty() ? "" : "; did you mean \"" + near + "\"?"),
                                        "one of " + listed(words)));
      continue;
    }
    ColumnAsked asked;
    asked.channel = static_cast<LogChannel>(word - words.begin());
    asked.header = std::string(trimmed(std::string_view(entry).substr(equals + 1)));
    const NamedUnit parts = in_brackets(asked.header);
    asked.name = parts.name;
    asked.unit = parts.unit;
    asked.number = number_in(parts.name);
    const auto same = [&](const ColumnAsked& other) { return other.channel == asked.channel; };
    if (std::any_of(all.begin(), all.end(), same))
      problems.push_back(option_problem(option, entry, fmt::format("{} is given twice", key), "each channel once"));
    else
      all.push_back(std::move(asked));
  }
  return all;
}

}  // namespace holdback::files
