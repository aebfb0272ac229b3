#include "planner/render/carried.hpp"
#include "planner/render/work.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json pot_json(const CarriedPot& pot, Date today) {
  Json json;
  json["sowing"] = pot.sowing > 0 ? Json(pot.sowing) : Json();
  json["packet"] = json_text(pot.packet);
  json["taxon"] = pot.taxon;
  json["accepted"] = json_text(pot.accepted);
  json["bench"] = json_text(pot.bench);
  json["sown_on"] = json_date(pot.sown_on);
  json["first_water"] = json_date(pot.first_water);
  json["seeds"] = pot.seeds;
  json["pots"] = pot.pots;
  json["alive"] = json_number(pot.alive);
  json["counted_on"] = json_date(pot.counted_on);
  json["stage"] = name_of(pot.stage);
  json["verdict"] = name_of(pot.verdict);
  json["water"] = water_json(pot.water);
  json["water"]["planned"] = json_date(
      pot.stage == PotStage::growing ? std::nullopt : day_of_water(pot.verdict, pot.water, today));
  json["water"]["held"] = json_date(pot.water.held);
  json["first_rest"] = json_text(pot.first_rest);
  json["rests"] = json_date(pot.rests);
  json["cool_seasons"] = pot.cool_seasons;
  json["keep_seasons"] = pot.keep_seasons;
  json["more"] = json_number_spread(pot.more);
  json["reasons"] = json_reasons(pot.reasons);
  return json;
}

} // namespace

Json carried_json(const PlanAnswer& answer) {
  Json list = Json::array();
  for (const CarriedPot& pot : answer.carried) {
    list.push_back(pot_json(pot, answer.today));
  }
  return list;
}

} // namespace nightsow::planner
