#include "holdback/files/entry_reader.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "holdback/files/suggest.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/model/date.hpp"

namespace holdback::files {
namespace {

constexpr std::size_t longest_word = 200;  // characters

std::string no_date(const std::string& text) {
  const auto year = units::parse(text.substr(0, 4), Quantity::count);
  const auto* value = std::get_if<double>(&year);
  const bool far = value != nullptr && text.size() == 10 && (*value < first_year || *value > last_year);
  return far ? fmt::format("the year lies outside of {} to {}", first_year, last_year)
             : "this is no date of the calendar";
}

ReadValue date_value(const std::string& text) {
  if (const auto day = day_of(text)) return HistoryValue(static_cast<double>(*day));
  return RefusedValue{{no_date(text)}, {date_form}};
}

Note domain_of(const HistoryField& field) {
  const std::vector<Amount> ends{{field.low, field.kind}, {field.high, field.kind}};
  if (field.kind == Quantity::temperature) return {"above absolute zero, at most {0}", {ends[1]}};
  return {field.above ? "above {0}, at most {1}" : "{0} to {1}", ends};
}

ReadValue in_domain(const HistoryField& field, double value) {
  const bool low = field.above ? value <= field.low : value < field.low;
  if (!low && value <= field.high) return HistoryValue(value);
  const char* what = !low ? "is too large" : value < 0 ? "cannot be negative" : "is too small";
  return RefusedValue{{fmt::format("{} {}", field.key, what)}, domain_of(field)};
}

/// A number with its unit, or a bare one under a head that gives the unit.
ReadValue number_value(const HistoryField& field, const std::string& text, const std::string& unit) {
  if (!unit.empty() && std::holds_alternative<double>(units::parse(text, Quantity::number))) {
    const auto with_unit = units::parse(text + " " + unit, field.kind);
    if (const auto* value = std::get_if<double>(&with_unit)) return in_domain(field, *value);
  }
  const auto parsed = units::parse(text, field.kind);
  if (const auto* fault = std::get_if<units::Fault>(&parsed))
    return RefusedValue{{fmt::format("{}: {}", field.key, fault->what)}, {fault->accepted}};
  return in_domain(field, std::get<double>(parsed));
}

ReadValue read_value(const HistoryField& field, const std::string& text, const std::string& unit) {
  if (is_number(field)) return number_value(field, text, unit);
  if (std::holds_alternative<std::string HistoryEntry::*>(field.target)) return word_value(text, field.key);
  if (std::holds_alternative<std::optional<int> HistoryEntry::*>(field.target)) return date_value(text);
  if (text == "yes") return HistoryValue(1.0);
  if (text == "no") return HistoryValue();
  return RefusedValue{{fmt::format("{} is yes or no", field.key)}, {"yes, no"}};
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

}  // namespace

bool is_number(const HistoryField& field) {
  return std::holds_alternative<std::optional<double> HistoryEntry::*>(field.target);
}

ReadValue word_value(const std::string& text, const std::string& key) {
  const auto control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; };
  const bool fits =
      !trimmed(text).empty() && length_of(text) <= longest_word && std::none_of(text.begin(), text.end(), control);
  if (fits) return HistoryValue(std::string(trimmed(text)));
  return RefusedValue{{fmt::format("{} is empty, too long or holds a line end", key)},
                      {fmt::format("one line of 1 to {} characters", longest_word)}};
}

std::vector<std::string> kind_words() {
  std::vector<std::string> words;
  for (int i = 0; i <= static_cast<int>(last_entry_kind); ++i) words.emplace_back(key_of(static_cast<EntryKind>(i)));
  return words;
}

Note did_you_mean(const std::string& word, const std::vector<std::string>& known) {
  const std::string near = nearest(word, known);
  return {(near.empty() ? std::string() : fmt::format("did you mean {}? ", near)) + "one of: " + joined(known)};
}

void EntryReader::place(Position where, const std::string& label) {
  where_ = where;
  label_ = label;
}

void EntryReader::tell(const std::string& field, const std::string& value, Note what, Note accepted) {
  Problem problem;
  problem.what = std::move(what);
  problem.field = label_ + field;
  problem.value = clipped(value);
  problem.accepted = std::move(accepted);
  problem.where = where_;
  problems_.push_back(std::move(problem));
  sound_ = false;
}

void EntryReader::kind(HistoryEntry& entry, const std::string& word) {
  if (const auto kind = entry_kind(word))
    entry.kind = *kind;
  else
    tell("kind", word, {"there is no such kind of entry"}, did_you_mean(word, kind_words()));
}

void EntryReader::date(HistoryEntry& entry, const std::string& text) {
  const ReadValue read = date_value(text);
  if (const auto* refused = std::get_if<RefusedValue>(&read))
    return tell("date", text, refused->what, refused->accepted);
  entry.day = static_cast<int>(std::get<double>(std::get<HistoryValue>(read)));
}

void EntryReader::value(HistoryEntry& entry, const HistoryField& field, const std::string& text,
                        const std::string& unit) {
  if (!takes(entry.kind, field))
    return tell(field.key, text, {fmt::format("an entry `{}` has no {}", key_of(entry.kind), field.key)},
                {"one of: " + joined(keys_of(entry.kind))});
  const ReadValue read = read_value(field, text, unit);
  if (const auto* refused = std::get_if<RefusedValue>(&read))
    return tell(field.key, text, refused->what, refused->accepted);
  set_value(entry, field, std::get<HistoryValue>(read));
}

void EntryReader::whole(const HistoryEntry& entry) {
  const auto needed = needed_by(entry.kind);
  const bool any = std::any_of(needed.begin(), needed.end(), [&](const std::string& key) {
    return !std::holds_alternative<std::monostate>(value_of(entry, *history_field(key)));
  });
  if (!needed.empty() && !any && sound_)
    tell(std::string(key_of(entry.kind)), "", {"the entry says nothing of what it is about"},
         {"at least one of: " + joined(needed)});
  if (entry.thickness && entry.depth)
    tell("depth", "", {"thickness and depth tell the same twice"},
         {"thickness with the maker's limit, or depth, what is left above that limit"});
  if (entry.depth && entry.limit)
    tell("limit", "", {"a depth is what is left above the maker's limit, so the limit goes with a thickness"},
         {"thickness and limit, or depth alone"});
}

}  // namespace holdback::files
