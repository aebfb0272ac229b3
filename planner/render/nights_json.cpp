#include "planner/render/json_parts.hpp"
#include "planner/render/to_json.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json recent_json(const RecentNights& recent) {
  Json json;
  json["from"] = recent.night_c.empty() ? Json{} : json_date(recent.from);
  json["night_c"] = Json::array();
  for (const auto& night_c : recent.night_c) {
    json["night_c"].push_back(json_number(night_c));
  }
  return json;
}

Json forecast_json(const std::optional<ForecastNights>& forecast) {
  if (!forecast) {
    return Json{};
  }
  return {{"nights", forecast->nights},
          {"cool", forecast->cool},
          {"hottest_day_c", json_number(forecast->hottest_day_c)}};
}

Json genus_json(const GenusNights& line) {
  Json json;
  json["genus"] = line.genus;
  json["bench"] = json_text(line.bench);
  json["limit_c"] = json_number(line.limit_c);
  json["day_limit_c"] = json_number(line.day_limit_c);
  json["nights"] = line.nights;
  json["of"] = line.of;
  json["counted"] = line.counted;
  json["counted_of_14"] = line.counted_of_14;
  json["binds"] = line.binds;
  json["open"] = name_of(line.open);
  json["stirs"] = json_spread(line.stirs);
  json["holds"] = json_spread(line.holds);
  json["relapse"] = json_number(line.relapse);
  json["relapse_after_today"] = json_number(line.relapse_after_today);
  json["forecast"] = forecast_json(line.forecast);
  json["recent"] = recent_json(line.recent);
  json["reasons"] = json_reasons(line.reasons);
  return json;
}

Json season_json(const PastSeasonDates& season) {
  Json json;
  json["season"] = season.season;
  json["usable"] = season.usable;
  json["stirs"] = json_date(season.stirs);
  json["holds"] = json_date(season.holds);
  json["settles"] = json_date(season.settles);
  json["unknown"] = season.unknown;
  return json;
}

Json past_gate_json(const PastGate& gate) {
  Json json;
  json["genus"] = json_text(gate.genus);
  json["limit_c"] = json_number(gate.limit_c);
  json["day_limit_c"] = json_number(gate.day_limit_c);
  json["nights"] = gate.nights;
  json["of"] = gate.of;
  json["binds"] = gate.binds;
  json["usable_seasons"] = gate.usable_seasons;
  json["never"] = gate.never;
  json["seasons"] = Json::array();
  for (const auto& season : gate.seasons) {
    json["seasons"].push_back(season_json(season));
  }
  return json;
}

} // namespace

std::string to_json(const NightsAnswer& answer) {
  Json json = json_top(answer.garden, answer.today);
  json["season"] = answer.season;
  json["readings"] = json_readings(answer.readings);
  json["genera"] = Json::array();
  for (const auto& line : answer.genera) {
    json["genera"].push_back(genus_json(line));
  }
  json["without_gate"] = answer.without_gate;
  json["warnings"] = json_reasons(answer.warnings);
  return json_dump(json);
}

std::string to_json(const PastNightsAnswer& answer) {
  Json json = json_top(answer.garden, answer.today);
  json["gates"] = Json::array();
  for (const auto& gate : answer.gates) {
    json["gates"].push_back(past_gate_json(gate));
  }
  json["warnings"] = json_reasons(answer.warnings);
  return json_dump(json);
}

} // namespace nightsow::planner
