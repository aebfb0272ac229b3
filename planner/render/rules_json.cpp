#include "planner/render/json_parts.hpp"
#include "planner/render/packet_back.hpp"
#include "planner/render/rule_value_json.hpp"
#include "planner/render/rule_value_text.hpp"
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
  json["seed_size"] = json_text(rule.seed_size);
  json["mat"] = json_text(rule.mat);
  json["first_rest"] = json_text(rule.first_rest);
  json["older_names"] = rule.older_names;
  json["deciding"] = rule.deciding;
  json["weak"] = json_number(rule.weak);
  return json;
}

Json ground_json(const RuleGround& ground) {
  Json json;
  json["deciding"] = ground.deciding;
  json["experiment"] = ground.experiment;
  json["institution"] = ground.institution;
  json["grower"] = ground.grower;
  json["less"] = ground.less;
  json["weakest"] = ground.weakest;
  return json;
}

Json ripening_json(const std::optional<RipeningDays>& ripe) {
  if (!ripe) {
    return {};
  }
  return {{"days", json_number(ripe->days)},
          {"low", json_number(ripe->low)},
          {"high", json_number(ripe->high)},
          {"shelf_c", json_number(ripe->shelf_c)}};
}

Json packet_back_json(const RuleShowAnswer& answer) {
  Json lines = Json::array();
  for (const auto& line : packet_back(answer, {})) {
    lines.push_back({{"about", line.about}, {"text", line.text}});
  }
  return lines;
}

Json gap_json(const RuleGap& gap) {
  Json json;
  json["name"] = gap.name;
  json["level"] = gap.level;
  json["value"] = json_rule_value(gap.value);
  json["score"] = json_number(gap.score);
  json["rules"] = gap.rules;
  json["trial"] = trial_text(gap, {});
  return json;
}

Json field_json(const FieldGaps& field) {
  Json json;
  json["key"] = field.key;
  json["name"] = field.name;
  json["weight"] = field.weight;
  json["why"] = field.why;
  json["score"] = json_number(field.score);
  json["gaps"] = Json::array();
  for (const auto& gap : field.gaps) {
    json["gaps"].push_back(gap_json(gap));
  }
  json["more"] = field.more;
  return json;
}

} // namespace

std::string to_json(const RulesListAnswer& answer) {
  Json json = json_top();
  json["rules"] = Json::array();
  for (const auto& rule : answer.rules) {
    json["rules"].push_back(list_line_json(rule));
  }
  json["of"] = answer.of;
  json["families"] = answer.families;
  json["starts"] = Json::array();
  for (const auto& count : answer.starts) {
    json["starts"].push_back({{"start", count.start}, {"rules", count.rules}});
  }
  json["evidence_below"] = json_text(answer.evidence_below);
  json["in_hand"] = answer.in_hand;
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
  json["own_rule"] = answer.own_rule;
  json["older_names"] = answer.older_names;
  json["species_rules"] = answer.species_rules;
  json["yours"] = answer.yours;
  json["packet_back"] = packet_back_json(answer);
  json["ground"] = ground_json(answer.ground);
  json["half_ripe"] = ripening_json(answer.half_ripe);
  json["values"] = Json::array();
  for (const auto& value : answer.values) {
    json["values"].push_back(json_rule_value(value));
  }
  json["sources"] = Json::array();
  for (const auto& source : answer.sources) {
    json["sources"].push_back(json_rule_source(source));
  }
  return json_dump(json);
}

std::string to_json(const RulesGapsAnswer& answer) {
  Json json = json_top();
  json["rules"] = answer.rules;
  json["family"] = json_text(answer.family);
  json["in_hand"] = answer.in_hand;
  json["fields"] = Json::array();
  for (const auto& field : answer.fields) {
    json["fields"].push_back(field_json(field));
  }
  json["more"] = answer.more;
  return json_dump(json);
}

} // namespace nightsow::planner
