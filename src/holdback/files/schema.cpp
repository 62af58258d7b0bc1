#include "holdback/files/schema.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "holdback/files/field_table.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

using Json = nlohmann::ordered_json;

bool takes_bare_number(const FieldInfo& info) {
  return std::holds_alternative<units::UnitValue>(units::parse_unit("", info.kind));
}

/// "{0} to {1}" in the texts of the table.
std::string domain_text(const FieldInfo& info) {
  if (!info.low || !info.high) return {};
  if (info.low->value == info.high->value) return fmt::format(" {}.", info.low->text);
  if (info.low->open) return fmt::format(" Above {}, at most {}.", info.low->text, info.high->text);
  return fmt::format(" {} to {}.", info.low->text, info.high->text);
}

std::string description_of(const FieldInfo& info) {
  std::string text = info.help + ".";
  if (info.form == Form::quantity) text += domain_text(info);
  return text;
}

Json number_schema(const FieldInfo& info) {
  Json schema{{"type", info.kind == Quantity::count ? "integer" : "number"}};
  if (info.low) schema[info.low->open ? "exclusiveMinimum" : "minimum"] = info.low->value;
  if (info.high) schema[info.high->open ? "exclusiveMaximum" : "maximum"] = info.high->value;
  return schema;
}

/// The default as a TOML value: a bare number where the text is one, else the text.
Json default_of(const FieldInfo& info) {
  const bool number =
      info.form == Form::quantity && info.default_text.find_first_not_of("0123456789.") == std::string::npos;
  return number ? Json::parse(info.default_text) : Json(info.default_text);
}

Json examples_of(const FieldInfo& info) {
  Json examples = Json::array();
  if (!info.example.empty()) examples.push_back(info.example);
  if (info.form != Form::quantity) return examples;
  const std::string all = units::accepted_examples(info.kind);
  for (std::size_t at = 0; at < all.size();) {
    const std::size_t end = std::min(all.find(", ", at), all.size());
    examples.push_back(all.substr(at, end - at));
    at = end + 2;
  }
  return examples;
}

Json object_schema(const Section& section);

Json list_schema(const Section& section) {
  return {{"type", "array"},
          {"description", section.help},
          {"minItems", 1},
          {"maxItems", section.most},
          {"items", object_schema(section)}};
}

Json field_schema(const FieldInfo& info) {
  if (info.form == Form::points) {
    Json schema = list_schema(section_of(info.key));
    schema["description"] = description_of(info);
    return schema;
  }
  Json schema{{"description", description_of(info)}};
  if (info.form == Form::words) {
    schema["enum"] = info.words;
  } else if (info.form == Form::text) {
    schema["type"] = "string";
    if (info.presence == Presence::required) schema["minLength"] = 1;
    schema["maxLength"] = longest_text;
  } else if (takes_bare_number(info)) {
    schema["oneOf"] = Json::array({number_schema(info), Json{{"type", "string"}}});
  } else {
    schema["type"] = "string";
  }
  if (info.presence == Presence::defaulted) schema["default"] = default_of(info);
  if (const Json examples = examples_of(info); !examples.empty()) schema["examples"] = examples;
  return schema;
}

/// What a word of `pad` needs and excludes.
Json pad_rules(const Section& section) {
  Json rules = Json::array();
  for (const FieldInfo* deciding : section.fields) {
    if (deciding->key != "pad") continue;
    for (const std::string& word : deciding->words) {
      Json then{{"required", Json::array()}, {"properties", Json::object()}};
      for (const FieldInfo* info : section.fields) {
        const auto names = [&](const std::vector<std::string>& words) {
          return std::find(words.begin(), words.end(), word) != words.end();
        };
        if (names(info->needed_with)) then["required"].push_back(info->key);
        if (!info->only_with.empty() && !names(info->only_with)) then["properties"][info->key] = false;
      }
      rules.push_back({{"if", {{"properties", {{"pad", {{"const", word}}}}}}}, {"then", then}});
    }
  }
  return rules;
}

/// Of two keys that may stand for each other one is needed.
Json one_of_two(const std::string& first, const std::string& second) {
  return Json::array({Json{{"required", {first}}}, Json{{"required", {second}}}});
}

Json object_schema(const Section& section) {
  Json schema{{"type", "object"}, {"description", section.help}, {"properties", Json::object()}};
  Json required = Json::array();
  for (const FieldInfo* info : section.fields) {
    schema["properties"][info->key] = field_schema(*info);
    if (info->presence == Presence::required) required.push_back(info->key);
  }
  for (const Section& inner : sections()) {
    if (inner.parent != section.key || inner.parent.empty() || inner.inline_table) continue;
    schema["properties"][inner.key] = list_schema(inner);
    if (!inner.optional) required.push_back(inner.key);
  }
  if (!required.empty()) schema["required"] = required;
  if (section.key == section::web) schema["anyOf"] = one_of_two("basis_weight", "density");
  if (const Json rules = pad_rules(section); !rules.empty()) schema["allOf"] = rules;
  schema["additionalProperties"] = false;
  return schema;
}

}  // namespace

std::string stand_schema() {
  Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
              {"$id", "urn:holdback:stand:1"},
              {"title", "Holdback stand file"}};
  schema.update(object_schema(section_of("")));
  schema["description"] =
      "A braked unwind: stand, line, webs, rolls, jobs, candidate brakes, limits. Quantities are texts with a unit.";
  for (const Section& section : sections())
    if (section.parent.empty() && !section.key.empty())
      schema["properties"][section.key] = section.many ? list_schema(section) : object_schema(section);
  schema["required"] = Json::array({section::line, section::brake});
  return schema.dump(2) + "\n";
}

}  // namespace holdback::files
