#include "planner/render/json_parts.hpp"
#include "planner/render/rule_value_json.hpp"
#include "planner/render/seed_outlook.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json chances_json(const SeedChances& chances) {
  Json json;
  json["alive"] = json_number_spread(chances.alive);
  json["ripe"] = json_number_spread(chances.ripe);
  json["alive_and_ripe"] = json_number_spread(chances.alive_and_ripe);
  return json;
}

Json keeping_json(const KeepingAnswer& keeping) {
  Json json;
  json["way"] = keeping.way;
  json["warm_days"] = json_number(keeping.warm_days);
  json["in_a_year"] = chances_json(keeping.in_a_year);
  json["best"] = keeping.best;
  return json;
}

Json wait_json(const WaitAnswer& wait) {
  Json json;
  json["way"] = wait.way;
  json["alive_after_two_weeks"] = json_number_spread(wait.after_two_weeks);
  json["alive_after_eight_weeks"] = json_number_spread(wait.after_eight_weeks);
  json["best"] = wait.best;
  return json;
}

Json tested_json(const TestAnswer& test) {
  Json json;
  json["sprouted"] = test.sprouted;
  json["of"] = test.of;
  json["on"] = json_date(test.on);
  json["fit"] = json_number(test.fit);
  return json;
}

} // namespace

std::string to_json(const SeedOutlookAnswer& answer) {
  Json json = json_top();
  json["taxon"] = answer.taxon;
  json["accepted"] = answer.accepted;
  json["rule"] = answer.rule;
  json["family"] = answer.family;
  json["by_synonym"] = answer.by_synonym;
  json["age_days"] = answer.age_days;
  json["age_years"] = json_number(answer.age_years);
  json["stored"] = json_text(answer.stored);
  json["store_known"] = answer.store_known;
  json["tested"] = answer.tested ? tested_json(*answer.tested) : Json{};
  json["today"] = chances_json(answer.today);
  json["comes_up"] = json_number(answer.comes_up);
  json["comes_up_treated"] = json_number(answer.comes_up_treated);
  json["treatments"] = answer.treatments;
  json["advice"] = json_text(answer.advice);
  json["keep"] = Json::array();
  for (const KeepingAnswer& keeping : answer.ways) {
    json["keep"].push_back(keeping_json(keeping));
  }
  json["wait"] = Json::array();
  for (const WaitAnswer& wait : answer.waits) {
    json["wait"].push_back(wait_json(wait));
  }
  json["lost_in_a_year"] = answer.ways.empty() ? Json{} : json_number(answer.lost_in_a_year);
  json["reasons"] = json_reasons(answer.reasons);
  json["values"] = Json::array();
  for (const RuleValue& value : answer.grounds.values) {
    json["values"].push_back(json_rule_value(value));
  }
  json["sources"] = Json::array();
  for (const RuleSource& source : answer.grounds.sources) {
    json["sources"].push_back(json_rule_source(source));
  }
  return json_dump(json);
}

} // namespace nightsow::planner
