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
  json["side"] = name_of(side_of(side));
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

Json changes_json(const std::vector<ChangeAnswer>& changes) {
  Json json = Json::array();
  for (const auto& change : changes) {
    json.push_back({{"change", change.change},
                    {"kelvin", json_number(change.kelvin)},
                    {"what", json_text(change.what)}});
  }
  return json;
}

Json totals_json(const WhatIfTotals& totals) {
  Json json;
  json["change_side"] = totals.change_side;
  json["moved"] = totals.moved;
  json["moved_days"] = json_number(totals.moved_days);
  json["plants_before"] = totals.plants_before;
  json["plants_after"] = totals.plants_after;
  return json;
}

Json sweep_row_json(const SweepRow& row) {
  Json json;
  json["warmer_k"] = row.warmer_k;
  json["now"] = row.now;
  json["later"] = row.later;
  json["unknown"] = row.unknown;
  json["not_here"] = row.not_here;
  json["plants"] = row.plants;
  json["packets"] = Json::array();
  for (const auto& line : row.lines) {
    Json packet = side_json(line.side);
    packet["packet"] = line.packet;
    packet["taxon"] = line.taxon;
    json["packets"].push_back(std::move(packet));
  }
  return json;
}

} // namespace

std::string to_json(const WhatIfAnswer& answer) {
  Json json = json_top(answer.garden, answer.today_before);
  json["today_after"] = json_date(answer.today_after);
  json["season"] = answer.season_before;
  json["season_after"] = answer.season_after;
  json["changes"] = changes_json(answer.changes);
  json["totals"] = totals_json(answer.totals);
  json["sowings"] = Json::array();
  for (const auto& line : answer.lines) {
    json["sowings"].push_back(line_json(line));
  }
  json["warnings"] = json_reasons(answer.warnings);
  return json_dump(json);
}

std::string to_json(const SweepAnswer& answer) {
  Json json = json_top(answer.garden, answer.today);
  json["season"] = answer.season;
  json["changes"] = changes_json(answer.changes);
  json["rows"] = Json::array();
  for (const auto& row : answer.rows) {
    json["rows"].push_back(sweep_row_json(row));
  }
  json["warnings"] = json_reasons(answer.warnings);
  return json_dump(json);
}

} // namespace nightsow::planner
