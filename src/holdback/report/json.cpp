#include <cmath>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string>

#include "holdback/report/fields.hpp"
#include "holdback/report/report.hpp"

namespace holdback::report {

namespace {

using Json = nlohmann::ordered_json;

/// Where in the answer we are, for the message when a number is not finite.
struct Path {
  const Path* parent;
  std::string_view key;
  std::size_t index;
};

std::string text_of(const Path* path) {
  if (path == nullptr) return "answer";
  const std::string above = text_of(path->parent);
  return path->key.empty() ? above + "[" + std::to_string(path->index) + "]" : above + "." + std::string(path->key);
}

template <typename Value>
Json json_of(const Value& value, const Path* path);

Json number(double value, const Path* path) {
  if (!std::isfinite(value)) throw std::logic_error(text_of(path) + " is not a finite number");
  return value;
}

template <typename Value>
Json array(const std::vector<Value>& values, const Path* path) {
  Json out = Json::array();
  for (std::size_t i = 0; i < values.size(); ++i) {
    const Path here{path, {}, i};
    out.push_back(json_of(values[i], &here));
  }
  return out;
}

template <typename Struct>
Json object(const Struct& value, const Path* path) {
  Json out = Json::object();
  for_each(fields_of(Of<Struct>{}), [&](const auto& field) {
    const auto& member = std::invoke(field.get, value);
    const Path here{path, field.key, 0};
    if constexpr (is_optional<std::remove_cvref_t<decltype(member)>>) {
      if (member) out[std::string(field.key)] = json_of(*member, &here);
    } else {
      out[std::string(field.key)] = json_of(member, &here);
    }
  });
  return out;
}

template <typename Value>
Json json_of(const Value& value, const Path* path) {
  if constexpr (std::is_same_v<Value, double>) {
    return number(value, path);
  } else if constexpr (std::is_same_v<Value, Version>) {
    return Version::value;
  } else if constexpr (std::is_enum_v<Value>) {
    return std::string(key_of(value));
  } else if constexpr (is_vector<Value>) {
    return array(value, path);
  } else if constexpr (std::is_integral_v<Value> || std::is_convertible_v<Value, std::string_view>) {
    return value;
  } else {
    return object(value, path);
  }
}

}  // namespace

std::string json(const Answer& answer) {
  // A name from a file may hold any bytes; what is not UTF-8 becomes the replacement character.
  return json_of(answer, nullptr).dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace holdback::report
