#include "planner/render/json_parts.hpp"
#include "planner/render/to_json.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

std::string to_json(const RulesCheckAnswer& answer) {
  Json json = json_top();
  json["files"] = Json::array();
  for (const CheckedRuleFile& file : answer.files) {
    json["files"].push_back({{"file", file.file},
                             {"family", json_text(file.family)},
                             {"genera", file.genera},
                             {"species", file.species},
                             {"values", file.values}});
  }
  json["faults"] = Json::array();
  for (const RuleFault& fault : answer.faults) {
    json["faults"].push_back({{"file", fault.file},
                              {"line", fault.line},
                              {"column", fault.column},
                              {"pointer", fault.pointer},
                              {"found", fault.found},
                              {"expected", json_text(fault.expected)},
                              {"remedy", json_text(fault.remedy)}});
  }
  return json_dump(json);
}

} // namespace nightsow::planner
