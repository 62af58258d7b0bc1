#include <nlohmann/json.hpp>
#include <string>

#include "holdback/report/fields.hpp"
#include "holdback/report/report.hpp"

namespace holdback::report {

namespace {

using Json = nlohmann::ordered_json;

/// The schema of a value's type; structs are added to `defs` once and referred to.
template <typename Value>
Json schema_of(Of<Value> type, Json& defs);

std::string help_of(std::string_view help, Quantity kind, bool number) {
  if (!number || kind == Quantity::price || kind == Quantity::number) return std::string(help);
  return std::string(help) + " [" + std::string(units::si_unit_of(kind)) + "]";
}

template <typename Struct>
Json object_schema(Of<Struct> type, Json& defs) {
  const auto record = fields_of(type);
  Json properties = Json::object();
  Json required = Json::array();
  for_each(record, [&](const auto& field) {
    using Value = ValueOf<Struct, std::remove_cvref_t<decltype(field.get)>>;
    Json property = schema_of(Of<Value>{}, defs);
    property["description"] = help_of(field.help, field.kind, std::is_same_v<typename Inner<Value>::type, double>);
    properties[std::string(field.key)] = property;
    if (!is_optional<Value>) required.push_back(std::string(field.key));
  });
  return {{"type", "object"},
          {"description", std::string(record.help)},
          {"properties", properties},
          {"required", required},
          {"additionalProperties", false}};
}

template <typename Struct>
Json reference(Of<Struct> type, Json& defs) {
  const std::string name(fields_of(type).name);
  if (!defs.contains(name)) {
    defs[name] = nullptr;  // keeps its place while what it holds is added
    defs[name] = object_schema(type, defs);
  }
  return {{"$ref", "#/$defs/" + name}};
}

template <typename Value>
Json schema_of(Of<Value> type, Json& defs) {
  if constexpr (is_optional<Value>) {
    return schema_of(Of<typename Value::value_type>{}, defs);
  } else if constexpr (is_vector<Value>) {
    return {{"type", "array"}, {"items", schema_of(Of<typename Value::value_type>{}, defs)}};
  } else if constexpr (std::is_same_v<Value, double>) {
    return {{"type", "number"}};
  } else if constexpr (std::is_same_v<Value, Version>) {
    return {{"const", Version::value}};
  } else if constexpr (std::is_same_v<Value, bool>) {
    return {{"type", "boolean"}};
  } else if constexpr (std::is_integral_v<Value>) {
    return {{"type", "integer"}};
  } else if constexpr (std::is_enum_v<Value>) {
    return {{"enum", keys_of(type)}};
  } else if constexpr (std::is_convertible_v<Value, std::string_view>) {
    return {{"type", "string"}};
  } else {
    return reference(type, defs);
  }
}

}  // namespace

std::string answer_schema() {
  Json defs = Json::object();
  Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", "Answer of Holdback"}};
  schema.update(object_schema(Of<Answer>{}, defs));
  schema["$defs"] = defs;
  return schema.dump(2) + "\n";
}

}  // namespace holdback::report
