// One row of the field table: what a key is called, what it takes, what is taken when it is absent, and where it goes.
// Reader, schema, file-format page and suggestions all derive from these rows; nothing else knows a key of the file.
#pragma once

#include <functional>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "holdback/model/quantity.hpp"

namespace holdback::files {

/// What a field takes: a quantity of its kind, one line of text, one of a few words, or a list of tables.
enum class Form { quantity, text, words, points };

/// Whether a field must be given, may be absent, or is taken from the table when it is absent.
enum class Presence { required, optional, defaulted };

/// One end of a domain [SI]; `text` is how the table states it.
struct Bound {
  double value{};
  bool open{};  // the end itself is not accepted
  std::string text{};
};

/// A read value: SI number, or text (also for words).
using Value = std::variant<double, std::string>;

/// A row without its target: all that schema, page and messages need.
struct FieldInfo {
  std::string key{};
  Form form{Form::quantity};
  Quantity kind{Quantity::number};
  std::optional<Bound> low{};
  std::optional<Bound> high{};
  Presence presence{Presence::optional};
  std::string default_text{};
  std::string example{};
  std::string help{};                      // one line: what the field means
  std::vector<std::string> words{};        // Form::words
  std::string twin{};                      // key beside this one that takes what is easily mistaken for it …
  Quantity twin_kind{Quantity::number};    // … and its kind
  std::vector<std::string> only_with{};    // words of `pad` with which the field has a meaning; empty: all
  std::vector<std::string> needed_with{};  // words of `pad` with which the field is required

  /// Sets an end of the domain from a text of the field's kind; throws std::logic_error when the table itself is wrong.
  void bound_low(const std::string& text, bool open);
  void bound_high(const std::string& text, bool open);
};

/// The value that the default text states; throws std::logic_error when the table itself is wrong.
Value default_value(const FieldInfo& info);

/// A row of the table of T. `set` puts a read value into T; `get` says what stands there, if anything does.
template <class T>
struct Field : FieldInfo {
  std::function<void(T&, const Value&)> set{};
  std::function<std::optional<Value>(const T&)> get{};

  static Field quantity(std::string key, Quantity kind, double T::*member) {
    return make(
        std::move(key), Form::quantity, kind, [member](T& to, const Value& v) { to.*member = std::get<double>(v); },
        [member](const T& from) { return Value{from.*member}; });
  }
  static Field quantity(std::string key, Quantity kind, std::optional<double> T::*member) {
    return make(
        std::move(key), Form::quantity, kind, [member](T& to, const Value& v) { to.*member = std::get<double>(v); },
        [member](const T& from) { return optional_value(from.*member); });
  }
  static Field count(std::string key, int T::*member) {
    return make(
        std::move(key), Form::quantity, Quantity::count,
        [member](T& to, const Value& v) { to.*member = static_cast<int>(std::get<double>(v)); },
        [member](const T& from) { return Value{static_cast<double>(from.*member)}; });
  }
  static Field count(std::string key, std::optional<int> T::*member) {
    return make(
        std::move(key), Form::quantity, Quantity::count,
        [member](T& to, const Value& v) { to.*member = static_cast<int>(std::get<double>(v)); },
        [member](const T& from) { return optional_value(from.*member); });
  }
  static Field text(std::string key, std::string T::*member) {
    return make(
        std::move(key), Form::text, Quantity::number,
        [member](T& to, const Value& v) { to.*member = std::get<std::string>(v); },
        [member](const T& from) {
          const std::string& text = from.*member;
          return text.empty() ? std::nullopt : std::optional<Value>(text);
        });
  }
  /// `meanings` pairs each word with the value it stands for.
  template <class Meaning, class Member>
  static Field word(std::string key, std::vector<std::pair<std::string, Meaning>> meanings, Member member) {
    std::vector<std::string> words;
    for (const auto& meaning : meanings) words.push_back(meaning.first);
    Field field = make(
        std::move(key), Form::words, Quantity::number,
        [member, meanings](T& to, const Value& v) {
          for (const auto& [word, meaning] : meanings)
            if (word == std::get<std::string>(v)) to.*member = meaning;
        },
        [member, meanings](const T& from) -> std::optional<Value> {
          for (const auto& [word, meaning] : meanings)
            if (from.*member == meaning) return word;
          return std::nullopt;
        });
    field.words = std::move(words);
    return field;
  }
  /// A list of tables, each a row set of its own; read by its section's reader.
  static Field points(std::string key) {
    return make(
        std::move(key), Form::points, Quantity::number, [](T&, const Value&) {}, [](const T&) { return std::nullopt; });
  }

  Field&& above(const std::string& end) && { return bound_low(end, true), std::move(*this); }
  Field&& from(const std::string& end) && { return bound_low(end, false), std::move(*this); }
  Field&& to(const std::string& end) && { return bound_high(end, false), std::move(*this); }
  Field&& required() && { return presence = Presence::required, std::move(*this); }
  Field&& or_else(std::string text) && {
    presence = Presence::defaulted;
    default_text = std::move(text);
    return std::move(*this);
  }
  Field&& such_as(std::string text) && { return example = std::move(text), std::move(*this); }
  Field&& means(std::string text) && { return help = std::move(text), std::move(*this); }
  Field&& not_to_be_confused_with(std::string key_of_twin, Quantity kind_of_twin) && {
    twin = std::move(key_of_twin);
    twin_kind = kind_of_twin;
    return std::move(*this);
  }
  Field&& only_for(std::vector<std::string> pads) && { return only_with = std::move(pads), std::move(*this); }
  Field&& needed_for(std::vector<std::string> pads) && { return needed_with = std::move(pads), std::move(*this); }

 private:
  template <class Number>
  static std::optional<Value> optional_value(const std::optional<Number>& number) {
    return number ? std::optional<Value>(static_cast<double>(*number)) : std::nullopt;
  }
  static Field make(std::string key, Form form, Quantity kind, std::function<void(T&, const Value&)> set,
                    std::function<std::optional<Value>(const T&)> get) {
    Field field;
    field.key = std::move(key);
    field.form = form;
    field.kind = kind;
    field.set = std::move(set);
    field.get = std::move(get);
    return field;
  }
};

/// A T whose numbers are not known yet: every quantity that must come from the file is NaN, so that no comparison with
/// it speaks, and optional ones are absent.
template <class T>
T unknown(const std::vector<Field<T>>& fields) {
  T value{};
  for (const Field<T>& field : fields)
    if (field.form == Form::quantity && field.kind != Quantity::count && field.presence != Presence::optional)
      field.set(value, std::numeric_limits<double>::quiet_NaN());
  return value;
}

}  // namespace holdback::files
