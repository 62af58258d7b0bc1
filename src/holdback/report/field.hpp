// A light reflection over result structs: one list of fields a struct, from which JSON and its schema are both derived.
// A field is a key, a way to get its value (a member, or a function for what follows from another member), the kind of
// quantity when it is a number with a unit, and a line of help.
#pragma once

#include <optional>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <vector>

#include "holdback/model/quantity.hpp"

namespace holdback::report {

/// Names a struct or enum in an overload: fields_of(Of<Fit>{}).
template <typename T>
struct Of {};

/// One field of a struct. `get` is a pointer to a member or a function object that takes the struct.
template <typename Get>
struct Field {
  std::string_view key;
  Get get;
  Quantity kind;
  std::string_view help;
};

/// A struct by name, with what it is and its fields.
template <typename... Fields>
struct Record {
  std::string_view name;
  std::string_view help;
  std::tuple<Fields...> fields;
};

/// What is inside an optional or a vector; any other type is itself.
template <typename T>
struct Inner {
  using type = T;
};
template <typename T>
struct Inner<std::optional<T>> {
  using type = typename Inner<T>::type;
};
template <typename T>
struct Inner<std::vector<T>> {
  using type = typename Inner<T>::type;
};

/// The type of a field's value.
template <typename Struct, typename Get>
using ValueOf = std::remove_cvref_t<std::invoke_result_t<Get, const Struct&>>;

/// Whether a type is an optional, or a vector, of something.
template <typename T>
inline constexpr bool is_optional = false;
template <typename T>
inline constexpr bool is_optional<std::optional<T>> = true;
template <typename T>
inline constexpr bool is_vector = false;
template <typename T>
inline constexpr bool is_vector<std::vector<T>> = true;

/// A member of text, count, enum or struct. Numbers need the other overload, which states their kind.
template <typename Struct, typename Value>
constexpr auto field(std::string_view key, Value Struct::*member, std::string_view help) {
  static_assert(!std::is_floating_point_v<typename Inner<Value>::type>, "a number needs its kind of quantity");
  return Field<Value Struct::*>{key, member, Quantity::count, help};
}

/// A member that is a number, or several, of a kind.
template <typename Struct, typename Value>
constexpr auto field(std::string_view key, Value Struct::*member, Quantity kind, std::string_view help) {
  static_assert(std::is_same_v<typename Inner<Value>::type, double>, "only numbers have a kind of quantity");
  return Field<Value Struct::*>{key, member, kind, help};
}

/// A value that follows from the struct.
template <typename Function>
constexpr auto derived(std::string_view key, Function function, std::string_view help) {
  return Field<Function>{key, function, Quantity::count, help};
}

/// Lists the fields of a struct.
template <typename... Gets>
constexpr auto record(std::string_view name, std::string_view help, Field<Gets>... fields) {
  return Record<Field<Gets>...>{name, help, std::tuple<Field<Gets>...>{fields...}};
}

/// Calls `visit` with each field, in the order of the list.
template <typename... Fields, typename Visit>
void for_each(const Record<Fields...>& record, Visit&& visit) {
  std::apply([&](const auto&... each) { (visit(each), ...); }, record.fields);
}

}  // namespace holdback::report
