#include "planner/render/rule_value_json.hpp"

#include "planner/render/json_parts.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json otherwise_json(const RuleValue& value) {
  if (!value.otherwise) {
    return {};
  }
  const OtherwiseRuleValue& other = *value.otherwise;
  Json json;
  json["value"] = value.number ? json_number(other.value) : Json(other.word);
  json["low"] = value.number ? json_number(other.low) : Json{};
  json["high"] = value.number ? json_number(other.high) : Json{};
  json["evidence"] = json_text(other.evidence);
  json["source"] = json_text(other.source);
  json["origin"] = json_text(other.origin);
  return json;
}

} // namespace

Json json_rule_value(const RuleValue& value) {
  Json json;
  json["key"] = value.key;
  json["unit"] = json_text(value.unit);
  json["meaning"] = json_text(value.meaning);
  json["value"] = value.number ? json_number(value.value) : Json(value.word);
  json["low"] = value.number ? json_number(value.low) : Json{};
  json["high"] = value.number ? json_number(value.high) : Json{};
  json["evidence"] = json_text(value.evidence);
  json["source"] = json_text(value.source);
  json["origin"] = json_text(value.origin);
  json["otherwise"] = otherwise_json(value);
  return json;
}

Json json_rule_source(const RuleSource& source) {
  Json json;
  json["id"] = source.id;
  json["kind"] = json_text(source.kind);
  json["author"] = json_text(source.author);
  json["title"] = json_text(source.title);
  json["year"] = json_number(source.year);
  return json;
}

} // namespace nightsow::planner
