#include "planner/render/json_parts.hpp"
#include "planner/render/to_json.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json side_json(const WhatIfSide& side) {
  Json json;
  json["list"] = json_text(side.list);
  json["verdict"] = json_text(side.verdict);
  json["binds"] = json_flag(side.binds);
  json["not_before"] = json_date(side.not_before);
  json["expected"] = json_spread(side.expected);
  json["no_later_than"] = json_date(side.no_later_than);
  json["plants"] = json_number(side.plants);
  return json;
}

Json line_json(const WhatIfLine& line) {
  Json json;
  json["packet"] = line.packet;
  json["taxon"] = line.taxon;
  json["before"] = side_json(line.before);
  json["after"] = side_json(line.after);
  json["moved_days"] = json_number(line.moved_days);
  json["differs"] = line.differs;
  json["plants_change"] = json_number(line.plants_change);
  return json;
}

} // namespace

std::string to_json(const WhatIfAnswer& answer) {
  Json json = json_top(answer.garden, answer.today_before);
  json["today_after"] = json_date(answer.today_after);
  json["season"] = answer.season_before;
  json["season_after"] = answer.season_after;
  json["changes"] = Json::array();
  for (const auto& change : answer.changes) {
    json["changes"].push_back({{"change", change.change}, {"kelvin", json_number(change.kelvin)}});
  }
  json["sowings"] = Json::array();
  for (const auto& line : answer.lines) {
    json["sowings"].push_back(line_json(line));
  }
  json["warnings"] = json_reasons(answer.warnings);
  return json_dump(json);
}

} // namespace nightsow::planner
