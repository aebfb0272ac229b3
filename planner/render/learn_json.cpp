#include "planner/render/json_parts.hpp"
#include "planner/render/learn.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json json_of(const LearnedShareLine& line) {
  return {{"level", line.level},
          {"name", json_text(line.name)},
          {"sowings", line.sowings},
          {"came", line.came},
          {"sown", line.sown},
          {"share", json_number(line.share)},
          {"p10", json_number(line.low)},
          {"p90", json_number(line.high)},
          {"leaned", json_number(line.leaned)}};
}

Json json_of(const std::optional<DaysBetween>& days) {
  return days ? Json{{"after", days->after}, {"by", days->by}} : Json(nullptr);
}

Json json_of(const LearnedTimesLine& line) {
  return {{"taxon", line.taxon},
          {"sowings", line.sowings},
          {"seeds", line.seeds},
          {"came", line.came},
          {"came_share", json_number(line.came_share)},
          {"low95", json_number(line.low)},
          {"high95", json_number(line.high)},
          {"first_days", json_of(line.first)},
          {"half_days", json_of(line.half)},
          {"half_sown_days", json_of(line.half_sown)}};
}

Json json_of(const LearnedTrialLine& line) {
  Json arms = Json::array();
  for (const TrialArmLine& arm : line.arms) {
    arms.push_back({{"arm", json_text(arm.arm)},
                    {"sowings", arm.sowings},
                    {"came", arm.came},
                    {"sown", arm.sown},
                    {"low95", json_number(arm.low)},
                    {"high95", json_number(arm.high)}});
  }
  Json pairs = Json::array();
  for (const TrialPairLine& pair : line.pairs) {
    pairs.push_back({{"a", json_text(pair.a)},
                     {"b", json_text(pair.b)},
                     {"difference", json_number(pair.difference)},
                     {"low95", json_number(pair.low)},
                     {"high95", json_number(pair.high)},
                     {"chance", json_number(pair.chance)},
                     {"settled", pair.settled},
                     {"more_seeds_an_arm", json_number(pair.more_seeds_an_arm)}});
  }
  return {{"trial", line.trial},
          {"taxa", line.taxa},
          {"arms", std::move(arms)},
          {"pairs", std::move(pairs)},
          {"chance", json_number(line.chance)}};
}

Json json_of(const LearnedEffectLine& line) {
  const auto told = [&](double number) {
    return line.refused.empty() ? json_number(number) : Json(nullptr);
  };
  return {{"of", line.of},
          {"bench", json_text(line.bench)},
          {"against", json_text(line.against)},
          {"refused", json_text(line.refused)},
          {"sowings", line.sowings},
          {"usual_share", told(line.usual_share)},
          {"share", told(line.share)},
          {"low95", told(line.low)},
          {"high95", told(line.high)},
          {"settled", line.settled}};
}

Json json_of(const LearnedNumber& number) {
  return {{"value", json_number(number.value)},
          {"low", json_number(number.low)},
          {"high", json_number(number.high)}};
}

Json json_of(const std::optional<LearnedNumber>& number) {
  return number ? json_of(*number) : Json(nullptr);
}

Json json_of(const LearnedLimitLine& line) {
  return {{"rule", line.rule},
          {"family", line.family},
          {"refused", json_text(line.refused)},
          {"sowings", line.sowings},
          {"seasons", line.seasons},
          {"seedlings", line.seedlings},
          {"rule_limit_c", json_of(line.rule_limit_c)},
          {"rule_thermal_time_c_d", json_of(line.rule_thermal_time_c_d)},
          {"limit_c", json_of(line.limit_c)},
          {"thermal_time_c_d", json_of(line.thermal_time_c_d)},
          {"predicts_better", line.limit_c ? json_number(line.predicts_better) : Json(nullptr)},
          {"offered", line.offered}};
}

Json json_of(const LearnedGerminationLine& line) {
  return {{"rule", line.rule},
          {"family", line.family},
          {"refused", json_text(line.refused)},
          {"sowings", line.sowings},
          {"seasons", line.seasons},
          {"seeds", line.seeds},
          {"came", line.came},
          {"could_come", json_number(line.could_come)},
          {"rule_share", json_of(line.rule_share)},
          {"share", json_of(line.share)},
          {"predicts_better", line.share ? json_number(line.predicts_better) : Json(nullptr)},
          {"offered", line.offered}};
}

Json json_of(const OfferedRules& offer) {
  return {{"rule", offer.rule},
          {"file", offer.file},
          {"written", offer.written},
          {"rules", Json::parse(offer.text)}};
}

Json json_of(const PlannedTrialLine& line) {
  return {{"packet", line.packet},
          {"taxon", line.taxon},
          {"field", line.field},
          {"a", line.a},
          {"b", line.b},
          {"seeds_an_arm", line.seeds_an_arm},
          {"pots_an_arm", line.pots_an_arm},
          {"share_a", json_number(line.share_a)},
          {"share_b", json_number(line.share_b)},
          {"power", json_number(line.power)},
          {"seeds_wanted", json_number(line.seeds_wanted)},
          {"pots", line.pots}};
}

template <class T> Json list_of(const std::vector<T>& values) {
  Json list = Json::array();
  for (const T& value : values) {
    list.push_back(json_of(value));
  }
  return list;
}

} // namespace

std::string learn_json(const LearnAnswer& answer) {
  Json json = json_top(answer.garden, answer.today);
  json["asked"] = answer.asked;
  json["sowings"] = answer.sowings;
  json["seasons"] = answer.seasons;
  json["counted"] = answer.counted;
  json["too_early"] = answer.too_early;
  json["closed_early"] = answer.closed_early;
  json["unknown_taxa"] = answer.unknown;
  json["others"] = {{"sowings", answer.others_sowings},
                    {"weight", json_number(answer.others_weight)}};
  json["shares"] = list_of(answer.shares);
  json["times"] = list_of(answer.times);
  json["trials"] = list_of(answer.trials);
  json["effects"] = list_of(answer.effects);
  json["night_limits"] = list_of(answer.limits);
  json["germination_shares"] = list_of(answer.germinations);
  json["offered"] = list_of(answer.offered);
  json["shared_with"] = json_text(answer.shared_with);
  return json_dump(json);
}

std::string trial_json(const TrialAnswer& answer) {
  Json json = json_top(answer.garden, answer.today);
  json["seed_number"] = answer.seed_number;
  json["packets"] = answer.packets;
  json["looked_at"] = answer.looked_at;
  json["least_seeds"] = answer.least_seeds;
  json["trials"] = list_of(answer.trials);
  return json_dump(json);
}

} // namespace nightsow::planner
