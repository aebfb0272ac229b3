#include "planner/render/json_parts.hpp"
#include "planner/render/to_json.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json list_line_json(const RuleListLine& rule) {
  Json json;
  json["rule"] = rule.rule;
  json["family"] = rule.family;
  json["growth"] = json_text(rule.growth);
  json["start"] = json_text(rule.start);
  json["night_limit_c"] = json_number(rule.night_limit_c);
  json["warm_night_c"] = json_number(rule.warm_night_c);
  json["half_life_years"] = json_number(rule.half_life_years);
  return json;
}

Json value_json(const RuleValue& value) {
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
  return json;
}

Json source_json(const RuleSource& source) {
  Json json;
  json["id"] = source.id;
  json["kind"] = json_text(source.kind);
  json["author"] = json_text(source.author);
  json["title"] = json_text(source.title);
  json["year"] = json_number(source.year);
  return json;
}

} // namespace

std::string to_json(const RulesListAnswer& answer) {
  Json json = json_top();
  json["rules"] = Json::array();
  for (const auto& rule : answer.rules) {
    json["rules"].push_back(list_line_json(rule));
  }
  return json_dump(json);
}

std::string to_json(const RuleShowAnswer& answer) {
  Json json = json_top();
  json["taxon"] = answer.taxon;
  json["accepted"] = json_text(answer.accepted);
  json["rule"] = json_text(answer.rule);
  json["family"] = json_text(answer.family);
  json["by_synonym"] = answer.by_synonym;
  json["read_as"] = json_text(answer.read_as);
  json["values"] = Json::array();
  for (const auto& value : answer.values) {
    json["values"].push_back(value_json(value));
  }
  json["sources"] = Json::array();
  for (const auto& source : answer.sources) {
    json["sources"].push_back(source_json(source));
  }
  return json_dump(json);
}

} // namespace nightsow::planner
