#include "holdback/files/value.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "holdback/files/field_table.hpp"
#include "holdback/files/suggest.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/units/kind_table.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

using Read = std::variant<Value, Fault>;

bool takes_no_unit(Quantity kind) { return units::takes_no_unit(kind) || kind == Quantity::ratio; }

// ---- numbers --------------------------------------------------------------------------------------------------------

bool below(double value, const Bound& low) { return low.open ? value <= low.value : value < low.value; }
bool beyond(double value, const Bound& high) { return high.open ? value >= high.value : value > high.value; }

bool is_single(const FieldInfo& info) { return info.low && info.high && info.low->value == info.high->value; }

Note too_low(const FieldInfo& info, double value) {
  if (info.kind == Quantity::temperature && value < 0) return {"no temperature is below absolute zero"};
  if (is_single(info)) return {fmt::format("no other {} is known", info.help)};
  if (info.low->value < 0 || value > 0) return {fmt::format("{} is too small", info.key)};
  return {fmt::format("{} cannot be {}", info.key, value < 0 ? "negative" : "zero")};
}

/// "70" where a share of one is due: meant as per cent.
bool is_bare_per_cent(const FieldInfo& info, double value) {
  return info.kind == Quantity::ratio && info.high->value == 1 && value <= 100;
}

Fault too_high(const FieldInfo& info, double value, const std::string& text) {
  Note accepted = accepted_by(info);
  if (is_single(info)) return {{fmt::format("no other {} is known", info.help)}, accepted};
  if (!is_bare_per_cent(info, value)) return {{fmt::format("{} is too large", info.key)}, accepted};
  if (text.find('%') == std::string::npos)
    accepted.text += fmt::format(", as in {} = \"{} %\"", info.key, clipped(text));
  return {{fmt::format("{} is a share of one; {{0}} is more than the whole", info.key), {{value, info.kind}}},
          accepted};
}

/// "tension" given as "1.2 lbf/in": the key beside it takes that.
std::optional<Fault> belongs_to_twin(const FieldInfo& info, const std::string& text) {
  if (info.twin.empty()) return std::nullopt;
  const units::Parsed other = units::parse(text, info.twin_kind);
  if (std::holds_alternative<units::Fault>(other)) return std::nullopt;
  return Fault{
      {fmt::format("this is {}, and {} takes {}", units::kind_of(info.twin_kind).noun, info.key,
                   units::kind_of(info.kind).noun)},
      {fmt::format("{} = \"{}\", or here: {}", info.twin, clipped(text), units::accepted_examples(info.kind))}};
}

Read number_of(const FieldInfo& info, const std::string& text) {
  if (auto fault = belongs_to_twin(info, text)) return *fault;
  const units::Parsed parsed = units::parse(text, info.kind);
  if (const auto* fault = std::get_if<units::Fault>(&parsed))
    return Fault{{fault->what}, takes_no_unit(info.kind) ? accepted_by(info) : Note{fault->accepted}};
  const double value = std::get<double>(parsed);
  if (info.low && below(value, *info.low)) return Fault{too_low(info, value), accepted_by(info)};
  if (info.high && beyond(value, *info.high)) return too_high(info, value, text);
  return Value{value};
}

Note domain_of(const FieldInfo& info) {
  const std::vector<Amount> ends{{info.low->value, info.kind}, {info.high->value, info.kind}};
  if (is_single(info)) return {"{0}", ends};
  if (info.low->open) return {"above {0}, at most {1}", ends};
  return {"{0} to {1}", ends};
}

// ---- texts ----------------------------------------------------------------------------------------------------------

bool has_control(const std::string& text) {
  return std::any_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
}

Read line_of_text(const FieldInfo& info, const std::string& text) {
  const Note accepted{fmt::format("one line of 1 to {} characters", longest_text)};
  const bool may_be_empty = info.presence != Presence::required;
  if (trimmed(text).empty() && !may_be_empty) return Fault{{fmt::format("{} is empty", info.key)}, accepted};
  if (length_of(text) > longest_text)
    return Fault{{fmt::format("{} has {} characters", info.key, length_of(text))}, accepted};
  if (has_control(text))
    return Fault{{fmt::format("{} holds a line end, a tab or a control character", info.key)}, accepted};
  return Value{std::string(trimmed(text))};
}

Read word_of(const FieldInfo& info, const std::string& text) {
  if (std::find(info.words.begin(), info.words.end(), text) != info.words.end()) return Value{text};
  const std::string near = nearest(text, info.words);
  std::string what =
      fmt::format("{} is none of the words that {} takes", text.empty() ? "an empty text" : "this", info.key);
  if (!near.empty()) what += fmt::format("; did you mean \"{}\"?", near);
  return Fault{{what}, accepted_by(info)};
}

// ---- wrong types ----------------------------------------------------------------------------------------------------

std::string wanted_by(const FieldInfo& info) {
  if (info.form == Form::text) return "a text in quotes";
  if (info.form == Form::words) return "one of its words in quotes";
  if (takes_no_unit(info.kind)) return info.kind == Quantity::count ? "a whole number" : "a number";
  return fmt::format("{} with its unit, in quotes", units::kind_of(info.kind).noun);
}

}  // namespace

std::string found_in(const Node& node) {
  switch (node.kind) {
    case Node::Kind::text:
      return "a text";
    case Node::Kind::number:
      return "a number";
    case Node::Kind::truth:
      return node.written;
    case Node::Kind::date:
      return "a date or a time";
    case Node::Kind::list:
      return "a list";
    case Node::Kind::table:
      break;
  }
  return "a table";
}

Note accepted_by(const FieldInfo& info) {
  if (info.form == Form::points) return {R"(a list such as [{speed = "200 rev/min", power = "750 W"}])"};
  if (info.form == Form::words) return {listed(info.words)};
  if (info.form == Form::text) return {fmt::format("one line of 1 to {} characters", longest_text)};
  if (info.low && info.high) return domain_of(info);
  return {units::accepted_examples(info.kind)};
}

std::variant<Value, Fault> value_of(const FieldInfo& info, const Node& node) {
  const bool is_text = node.kind == Node::Kind::text;
  const bool is_number = node.kind == Node::Kind::number;
  const bool fits = info.form == Form::quantity ? is_text || is_number : is_text;
  if (!fits) {
    const std::string example =
        info.form == Form::quantity ? units::accepted_examples(info.kind) : accepted_by(info).text;
    return Fault{{fmt::format("{} takes {}; here stands {}", info.key, wanted_by(info), found_in(node))}, {example}};
  }
  if (info.form == Form::quantity) return number_of(info, node.text);
  return info.form == Form::text ? line_of_text(info, node.text) : word_of(info, node.text);
}

}  // namespace holdback::files
