#include "planner/render/carried.hpp"
#include "planner/render/json_parts.hpp"
#include "planner/render/saved.hpp"
#include "planner/render/shopping.hpp"
#include "planner/render/to_json.hpp"
#include "planner/render/work.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json phases_json(const std::optional<PhasesHead>& phases) {
  if (!phases) {
    return {};
  }
  Json json;
  json["hottest_night"] = json_date(phases->hottest_night);
  json["coldest_night"] = json_date(phases->coldest_night);
  json["cooling_limb_begins"] = json_date(phases->cooling_limb_begins);
  json["nights_swing_c"] = json_number(phases->nights_swing_c);
  return json;
}

Json gate_json(const std::optional<GateAnswer>& gate) {
  if (!gate) {
    return {};
  }
  Json json;
  json["limit_c"] = json_number(gate->limit_c);
  json["day_limit_c"] = json_number(gate->day_limit_c);
  json["nights"] = gate->nights;
  json["of"] = gate->of;
  json["counted"] = gate->counted;
  json["counted_of"] = gate->counted_of;
  json["needed"] = gate->needed;
  json["binds"] = gate->binds;
  json["stirs"] = json_spread(gate->stirs);
  json["holds"] = json_spread(gate->holds);
  json["settles"] = json_spread(gate->settles);
  return json;
}

Json keep_json(const Keep& keep) {
  Json json;
  json["now"] = json_text(keep.now);
  json["until"] = json_date(keep.until);
  json["then"] = json_text(keep.then);
  return json;
}

Json routes_json(const std::vector<RouteAnswer>& routes) {
  Json list = Json::array();
  for (const RouteAnswer& route : routes) {
    Json json;
    json["route"] = route.route;
    json["plants"] = json_number(route.plants);
    json["first_water"] = json_date(route.first_water);
    json["warm_until"] = json_date(route.warm_until);
    list.push_back(std::move(json));
  }
  return list;
}

Json when_json(const std::optional<WaterWhen>& when) {
  if (!when) {
    return {};
  }
  Json json;
  json["nights"] = when->nights;
  json["of"] = when->of;
  json["at_or_under_c"] = json_number(when->at_or_under_c);
  json["no_day_over_c"] = json_number(when->no_day_over_c);
  json["bench"] = json_text(when->bench);
  return json;
}

Json first_water_json(const Sowing& sowing, Date today) {
  const FirstWater& water = sowing.first_water;
  const std::optional<Expected>& expected = sowing.expected;
  Json json;
  json["when"] = when_json(water.when);
  json["not_before"] = json_date(water.not_before);
  json["expected"] = json_spread(water.expected);
  json["no_later_than"] = json_date(water.no_later_than);
  json["planned"] = json_date(day_of_water(sowing.verdict, water, today));
  json["held"] = json_date(water.held);
  json["week_costs"] = json_number(expected ? expected->week_costs : std::nullopt);
  return json;
}

Json seedlings_json(const std::optional<Expected>& expected) {
  if (!expected) {
    return {};
  }
  Json json = json_number_spread(expected->seedlings);
  json["first"] = json_date(expected->first);
  json["half"] = json_date(expected->half);
  return json;
}

Json losses_json(const std::optional<Expected>& expected) {
  if (!expected) {
    return {};
  }
  const LostSeeds& lost = expected->losses;
  Json json;
  json["dead"] = json_number(lost.dead);
  json["not_ripe"] = json_number(lost.not_ripe);
  json["nights_too_warm"] = json_number(lost.nights_too_warm);
  json["deferred"] = json_number(lost.deferred);
  json["lost_wet"] = json_number(lost.lost_wet);
  json["dried"] = json_number(lost.dried);
  json["heat"] = json_number(lost.heat);
  json["frost"] = json_number(lost.frost);
  json["too_late"] = json_number(lost.too_late);
  json["rest"] = json_number(lost.rest);
  return json;
}

Json test_json(const TestAnswer& test) {
  Json json;
  json["sprouted"] = test.sprouted;
  json["of"] = test.of;
  json["on"] = json_date(test.on);
  json["fit"] = json_number(test.fit);
  return json;
}

Json tray_json(const std::optional<TrayPlace>& place) {
  if (!place) {
    return nullptr;
  }
  Json json;
  json["tray"] = place->tray;
  json["first_water"] = json_date(place->first_water);
  return json;
}

Json seed_json(const SeedAnswer& seed) {
  Json json;
  json["age_years"] = json_number(seed.age_years);
  json["store_known"] = seed.store_known;
  json["tested"] = seed.tested ? test_json(*seed.tested) : Json{};
  json["alive"] = json_number_spread(seed.alive);
  json["ripe"] = json_number_spread(seed.ripe);
  json["ripe_on"] = json_date(seed.ripe_on);
  json["fading"] = seed.fading;
  json["lost_by_waiting"] = json_number(seed.lost_by_waiting);
  return json;
}

Json how_json(const How& how, const WorkFacts& work) {
  Json json;
  json["seeds_to_sow"] = json_number(how.seeds_to_sow);
  json["pots"] = json_number(how.pots);
  json["seeds_per_pot"] = json_number(how.seeds_per_pot);
  json["pot_depth"] = json_text(how.pot_depth);
  json["cover"] = json_text(how.cover);
  json["mat"] = json_text(how.mat);
  json["water"] = "from_below_by_need";
  json["water_every_days"] = json_number(work.water_every_days);
  json["water_later_every_days"] = json_number(work.waters_later_days);
  json["light"] = json_text(how.light);
  json["humidity_cover"] = json_text(how.humidity_cover);
  json["transplant"] = json_text(how.transplant);
  json["first_rest"] = json_text(how.first_rest);
  json["nick"] = json_text(how.nick);
  json["first_look_days"] = json_number(how.first_look_days);
  json["main_look_days"] = json_number(how.main_look_days);
  json["last_look_days"] = json_number(how.last_look_days);
  return json;
}

Json sowing_json(const Sowing& sowing, Date today) {
  Json json;
  json["packet"] = sowing.packet;
  json["taxon"] = sowing.taxon;
  json["accepted"] = json_text(sowing.accepted);
  json["rule"] = json_text(sowing.rule);
  json["seeds"] = json_number(sowing.seeds);
  json["bench"] = json_text(sowing.bench);
  json["start"] = json_text(sowing.start);
  json["verdict"] = name_of(sowing.verdict);
  json["gate"] = gate_json(sowing.gate);
  json["route"] = json_text(sowing.route);
  json["routes"] = routes_json(sowing.routes);
  json["keep_back"] = json_number(sowing.keep_back);
  json["keep"] = keep_json(sowing.keep);
  json["sow_on"] = json_date(sowing.sow_on);
  json["in_hand_from"] = json_date(sowing.in_hand_from);
  json["first_water"] = first_water_json(sowing, today);
  json["tray"] = tray_json(sowing.tray);
  json["seed"] = seed_json(sowing.seed);
  json["seedlings"] = seedlings_json(sowing.expected);
  json["plants"] =
      json_number_spread(sowing.expected ? std::optional{sowing.expected->plants} : std::nullopt);
  json["losses"] = losses_json(sowing.expected);
  json["how"] = how_json(sowing.how, sowing.work);
  json["wish"] = wish_json(sowing.wish);
  json["reasons"] = json_reasons(sowing.reasons);
  json["risks"] = json_reasons(sowing.risks);
  json["cautions"] = sowing.cautions;
  return json;
}

Json not_now_json(const NotNow& line) {
  Json json;
  json["packet"] = line.packet;
  json["taxon"] = line.taxon;
  json["accepted"] = json_text(line.accepted);
  json["start"] = json_text(line.start);
  json["when"] = json_date(line.when);
  json["seed"] = seed_json(line.seed);
  json["reasons"] = json_reasons(line.reasons);
  return json;
}

} // namespace

std::string to_json(const PlanAnswer& answer) {
  Json json = json_top(answer.garden, answer.today);
  json["season"] = answer.season;
  json["preview"] = answer.preview;
  json["phases"] = phases_json(answer.phases);
  json["readings"] = json_readings(answer.readings);
  json["sowings"] = Json::array();
  for (const auto& sowing : answer.sowings) {
    json["sowings"].push_back(sowing_json(sowing, answer.today));
  }
  json["carried"] = carried_json(answer);
  json["not_now"] = Json::array();
  for (const auto& line : answer.not_now) {
    json["not_now"].push_back(not_now_json(line));
  }
  json["lots"] = lots_json(answer);
  json["no_day"] = no_day_json(answer);
  json["tasks"] = tasks_json(answer);
  json["free_days"] = free_days_json(answer.free_days);
  json["shopping"] = shopping_json(answer.shopping);
  json["amounts"] = amounts_json(answer.shopping);
  json["warnings"] = json_reasons(answer.warnings);
  json["saves"] = answer.saves;
  json["since_saved"] = since_saved_json(answer);
  return json_dump(json);
}

} // namespace nightsow::planner
