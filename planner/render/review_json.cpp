#include "planner/render/json_parts.hpp"
#include "planner/render/review.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json json_of(const ReviewLine& line) {
  Json json;
  json["sowing"] = line.sowing;
  json["packet"] = json_text(line.packet);
  json["taxon"] = line.taxon;
  json["accepted"] = line.accepted;
  json["bench"] = json_text(line.bench);
  json["trial"] = json_text(line.trial);
  json["arm"] = json_text(line.arm);
  json["on"] = format_iso_date(line.on);
  json["first_water"] = json_date(line.first_water);
  json["seeds"] = line.seeds;
  json["promised_seedlings"] =
      json_number_spread(line.promised ? std::optional{line.promised->seedlings} : std::nullopt);
  json["promised_plants"] =
      json_number_spread(line.promised ? std::optional{line.promised->plants} : std::nullopt);
  json["promised_on"] = json_date(line.promised_on);
  json["came"] = json_number(line.came);
  json["dead"] = line.dead;
  json["back"] = json_number(line.back);
  json["pressed_firm"] = line.firm;
  json["pressed_soft"] = line.soft;
  json["closed_on"] = json_date(line.closed_on);
  json["closed_why"] = json_text(line.closed_why);
  json["outcome"] = line.outcome;
  json["why"] = json_text(line.why);
  json["days_early"] = json_number(line.days_early);
  return json;
}

Json json_of(const CarriedLine& line) {
  return {{"sowing", line.sowing},
          {"taxon", line.taxon},
          {"on", format_iso_date(line.on)},
          {"seeds", line.seeds},
          {"came_before", line.came_before},
          {"came_now", line.came_now}};
}

Json json_of(const DeathsLine& line) {
  return {{"of", line.of}, {"seedlings", line.seedlings}, {"sowings", line.sowings}};
}

Json json_of(const RangesHeld& held) {
  return {{"told", held.told},
          {"within", held.within},
          {"below", held.below},
          {"above", held.above},
          {"least_likely", held.least_likely},
          {"promised", json_number(held.promised)},
          {"came", held.came}};
}

Json json_of(const Lesson& lesson) {
  return {{"kind", lesson.kind},
          {"of", json_text(lesson.of)},
          {"better", json_text(lesson.other)},
          {"count", lesson.count},
          {"sowings", lesson.sowings},
          {"more_seeds_an_arm", lesson.more_seeds},
          {"weight", json_number(lesson.weight)},
          {"text", lesson_text(lesson)}};
}

template <class T> Json list_of(const std::vector<T>& values) {
  Json list = Json::array();
  for (const T& value : values) {
    list.push_back(json_of(value));
  }
  return list;
}

} // namespace

std::string review_json(const ReviewAnswer& answer) {
  Json json = json_top(answer.garden, answer.today);
  json["season"] = answer.season;
  json["seasons"] = answer.seasons;
  json["rest_is_over"] = answer.rest_is_over;
  json["seeds"] = answer.seeds;
  json["came"] = answer.came;
  json["dead"] = answer.dead;
  json["back"] = json_number(answer.back);
  json["judged"] = answer.judged;
  json["sowings"] = list_of(answer.lines);
  json["carried"] = list_of(answer.carried);
  json["deaths"] = list_of(answer.deaths);
  json["ranges_held"] = {{"seedlings", json_of(answer.seedlings_held)},
                         {"plants", json_of(answer.plants_held)}};
  json["lessons"] = list_of(answer.lessons);
  json["unknown_taxa"] = answer.unknown;
  return json_dump(json);
}

} // namespace nightsow::planner
