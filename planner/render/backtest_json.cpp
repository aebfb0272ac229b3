#include "planner/render/json_parts.hpp"
#include "planner/render/to_json.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json lead_json(const BacktestLead& lead) {
  Json json;
  json["lead_days"] = lead.lead_days;
  json["n"] = lead.cases;
  json["crps_outlook"] = json_number(lead.crps_outlook);
  json["crps_past"] = json_number(lead.crps_past);
  json["crps_possible"] = json_number(lead.crps_possible);
  json["skill"] = json_number(lead.skill);
  json["coverage80"] = json_number(lead.coverage_80);
  json["pit"] = Json::array();
  for (const double share : lead.pit) {
    json["pit"].push_back(json_number(share));
  }
  json["crps_forecast"] = json_number(lead.crps_forecast);
  json["skill_forecast"] = json_number(lead.skill_forecast);
  return json;
}

Json event_json(const BacktestEvent& event) {
  Json json;
  json["event"] = event.event;
  json["leads"] = Json::array();
  for (const auto& lead : event.leads) {
    json["leads"].push_back(lead_json(lead));
  }
  json["relapse_n"] = event.relapse_cases;
  json["relapse_share"] = json_number(event.relapse_share);
  json["relapse_brier"] = json_number(event.relapse_brier);
  json["relapse_brier_climate"] = json_number(event.relapse_brier_climate);
  return json;
}

Json numbers_json(const std::vector<double>& numbers) {
  Json json = Json::array();
  for (const double number : numbers) {
    json.push_back(json_number(number));
  }
  return json;
}

} // namespace

std::string to_json(const BacktestAnswer& answer) {
  Json json = json_top(answer.garden, answer.today);
  json["station"] = json_text(answer.station);
  json["readings"] = json_readings(answer.readings);
  json["seasons_tested"] = answer.seasons;
  json["seasons_before"] = answer.seasons_before;
  json["gates_c"] = numbers_json(answer.gates_c);
  json["gates_tried_c"] = numbers_json(answer.gates_tried_c);
  json["forecast_days"] = answer.forecast_days;
  json["events"] = Json::array();
  for (const auto& event : answer.events) {
    json["events"].push_back(event_json(event));
  }
  json["warnings"] = json_reasons(answer.warnings);
  return json_dump(json);
}

} // namespace nightsow::planner
