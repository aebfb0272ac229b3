#include "planner/render/task_words.hpp"
#include "planner/render/work.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json packet_json(const LotPacket& packet) {
  Json json;
  json["packet"] = packet.packet;
  json["taxon"] = packet.taxon;
  json["accepted"] = json_text(packet.accepted);
  json["seeds"] = json_number(packet.seeds);
  json["pots"] = json_number(packet.pots);
  json["number"] = json_text(packet.number);
  json["provenance"] = json_text(packet.provenance);
  json["sow_on"] = json_date(packet.sow_on);
  return json;
}

Json lot_json(const Lot& lot) {
  Json json;
  json["lot"] = lot.id;
  json["group"] = lot.group;
  json["carried"] = lot.carried;
  json["bench"] = lot.bench;
  json["start"] = json_text(lot.start);
  json["verdict"] = name_of(lot.verdict);
  json["cover"] = lot.cover;
  json["bag"] = lot.bag;
  json["mat"] = lot.mat;
  json["mat_off_at_night"] = lot.mat_off_at_night;
  json["shade"] = json_number(lot.shade);
  json["pots"] = json_number(lot.pots);
  json["sow_on"] = json_date(lot.sow_on);
  json["sown_by"] = json_date(lot.sown_by);
  json["waters"] = json_date(lot.waters);
  json["waters_if_there"] = json_date(lot.waters_if_there);
  json["first_water"] = water_json(lot.first_water);
  json["packets"] = Json::array();
  for (const LotPacket& packet : lot.packets) {
    json["packets"].push_back(packet_json(packet));
  }
  return json;
}

} // namespace

Json water_json(const FirstWater& water) {
  Json json;
  if (water.when) {
    Json& when = json["when"];
    when["nights"] = water.when->nights;
    when["of"] = water.when->of;
    when["at_or_under_c"] = json_number(water.when->at_or_under_c);
    when["no_day_over_c"] = json_number(water.when->no_day_over_c);
    when["bench"] = json_text(water.when->bench);
  } else {
    json["when"] = nullptr;
  }
  json["not_before"] = json_date(water.not_before);
  json["expected"] = json_spread(water.expected);
  json["no_later_than"] = json_date(water.no_later_than);
  return json;
}

Json lots_json(const PlanAnswer& answer) {
  Json json = Json::array();
  for (const Lot& lot : answer.lots) {
    json.push_back(lot_json(lot));
  }
  return json;
}

Json no_day_json(const PlanAnswer& answer) {
  Json json = Json::array();
  for (const LotPacket& packet : answer.no_day) {
    json.push_back(packet_json(packet));
  }
  return json;
}

Json tasks_json(const PlanAnswer& answer) {
  Json all = Json::array();
  for (const Task& task : answer.tasks) {
    Json json;
    json["on"] = json_date(task.on);
    json["moved_from"] = json_date(task.moved_from);
    json["done_on"] = json_date(task.done_on);
    json["overdue_since"] = json_date(task.overdue_since);
    json["lot"] = task.lot;
    json["do"] = name_of(task.kind);
    json["number"] = task.number;
    json["packets"] = task.packets;
    json["pots"] = json_number(task.pots);
    json["every_days"] = json_number(task.every_days);
    json["share"] = json_number(task.share);
    json["seasons"] = json_number(task.seasons);
    json["moist"] = task.moist ? Json(*task.moist) : Json(nullptr);
    json["text"] = task_text(task, lot_with(answer.lots, task.lot), {});
    all.push_back(std::move(json));
  }
  return all;
}

} // namespace nightsow::planner
