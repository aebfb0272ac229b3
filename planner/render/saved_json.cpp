#include "planner/render/saved.hpp"
#include "planner/render/to_json.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json line_json(const std::optional<LineThen>& line) {
  if (!line) {
    return {};
  }
  Json json;
  json["verdict"] = json_text(line->verdict);
  json["route"] = json_text(line->route);
  json["water"] = json_date(line->water);
  json["no_later_than"] = json_date(line->no_later_than);
  return json;
}

Json change_json(const PlanChange& change, Date today) {
  Json json;
  json["packet"] = change.packet;
  json["taxon"] = change.taxon;
  json["change"] = name_of(change.kind);
  json["before"] = line_json(change.before);
  json["after"] = line_json(change.after);
  json["moved_days"] = json_number(change.moved_days);
  json["latest_moved_days"] = json_number(change.latest_moved_days);
  json["causes"] = Json::array();
  for (const ChangeCause cause : change.causes) {
    json["causes"].push_back(name_of(cause));
  }
  json["text"] = change_text(change, today);
  return json;
}

} // namespace

Json since_saved_json(const PlanAnswer& answer) {
  if (!answer.since_saved) {
    return {};
  }
  Json json;
  json["saved_on"] = json_date(answer.since_saved->saved_on);
  json["nights_read"] = answer.since_saved->nights_read;
  json["unchanged"] = answer.since_saved->unchanged;
  json["changes"] = Json::array();
  for (const PlanChange& change : answer.since_saved->changes) {
    json["changes"].push_back(change_json(change, answer.today));
  }
  return json;
}

std::string saved_plan_text(const PlanAnswer& answer, const PlanMarks& marks) {
  Json json = Json::parse(to_json(answer));
  Json made_from;
  made_from["garden"] = marks.garden;
  made_from["packets"] = Json::array();
  for (const PacketMarks& mark : marks.packets) {
    Json packet;
    packet["packet"] = mark.packet;
    packet["row"] = mark.row;
    packet["rule"] = mark.rule;
    packet["seeds_sown"] = json_number(mark.seeds_sown);
    made_from["packets"].push_back(std::move(packet));
  }
  json["made_from"] = std::move(made_from);
  return json_dump(json);
}

} // namespace nightsow::planner
