#include "planner/render/json_parts.hpp"
#include "planner/render/to_json.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json station_json(const StationLine& station) {
  Json json;
  json["id"] = station.id;
  json["name"] = json_text(station.name);
  json["distance_km"] = json_number(station.distance_km);
  json["elevation_m"] = json_number(station.elevation_m);
  json["higher_m"] = json_number(station.higher_m);
  json["years"] = station.years;
  json["last_year"] = station.last_year;
  json["doubt_km"] = Json{{"distance", json_number(station.distance_km)},
                          {"height", json_number(station.for_height)},
                          {"years", json_number(station.for_years)},
                          {"age", json_number(station.for_age)},
                          {"all", json_number(station.doubt)}};
  return json;
}

Json readings_json(const std::optional<FetchedReadings>& readings) {
  if (!readings) {
    return {};
  }
  Json json;
  json["format"] = readings->format;
  json["from"] = json_date(readings->from);
  json["to"] = json_date(readings->to);
  json["nights_there"] = json_number(readings->nights_there);
  json["days_there"] = json_number(readings->days_there);
  return json;
}

} // namespace

std::string to_json(const FetchAnswer& answer) {
  Json json = json_top();
  json["dry_run"] = answer.dry_run;
  json["source"] = answer.source;
  json["licence"] = answer.licence;
  json["sent"] = answer.sent;
  json["url"] = answer.url;
  json["file"] = answer.file;
  json["arrival"] = json_text(answer.arrival);
  json["trouble"] = json_text(answer.trouble);
  json["age_days"] = json_number(answer.age_days);
  json["fetched_at"] = json_text(answer.fetched_at);
  json["sha256"] = json_text(answer.sha256);
  json["bytes"] = answer.bytes ? Json(*answer.bytes) : Json{};
  json["readings"] = readings_json(answer.readings);
  json["garden_line"] = answer.garden_line;
  json["in_garden"] = answer.in_garden;
  json["stations"] = Json::array();
  for (const auto& station : answer.stations) {
    json["stations"].push_back(station_json(station));
  }
  json["list_age_days"] = json_number(answer.list_age_days);
  return json_dump(json);
}

} // namespace nightsow::planner
