#include "planner/render/json_parts.hpp"
#include "planner/render/to_json.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json missing_json(const std::vector<MissingShare>& missing) {
  if (missing.empty()) {
    return {};
  }
  Json json;
  for (const MissingShare& one : missing) {
    json[one.cause] = {{"share", json_number(one.share)},
                       {"p10", json_number(one.p10)},
                       {"p90", json_number(one.p90)},
                       {"seeds_p10", one.seeds_p10},
                       {"seeds_p90", one.seeds_p90}};
  }
  return json;
}

Json nights_json(const std::optional<NightsSoFar>& nights) {
  if (!nights) {
    return {};
  }
  Json json;
  json["wanted"] = nights->warm ? "warm" : "cool";
  json["limit_c"] = json_number(nights->limit_c);
  json["needed"] = nights->needed;
  json["of"] = nights->of;
  json["met"] = nights->met;
  json["short_k"] = json_number(nights->short_k);
  json["came"] = json_date(nights->came);
  json["unread"] = nights->unread;
  return json;
}

Json press_json(const std::optional<PressToDecide>& press) {
  if (!press) {
    return {};
  }
  Json json = Json::array();
  int firm = 0;
  for (const std::string& step : press->step_by_firm) {
    json.push_back({{"firm", firm++}, {"step", step}});
  }
  return json;
}

Json deciding_json(const std::vector<DecidingValue>& values) {
  Json json = Json::array();
  for (const DecidingValue& value : values) {
    json.push_back({{"field", value.field},
                    {"unit", json_text(value.unit)},
                    {"low", json_number(value.low)},
                    {"high", json_number(value.high)},
                    {"step_low", value.step_low},
                    {"step_high", value.step_high},
                    {"cause", json_text(value.cause)},
                    {"moves", json_number(value.moves)}});
  }
  return json;
}

Json curve_json(const std::vector<CurvePoint>& curve) {
  Json json = Json::array();
  for (const CurvePoint& point : curve) {
    json.push_back({{"on", json_date(point.on)},
                    {"expected", json_number_spread(point.expected)},
                    {"counted", json_number(point.counted)}});
  }
  return json;
}

Json account_json(const SowingAccount& account) {
  Json json;
  json["sowing"] = account.sowing;
  json["packet"] = json_text(account.packet);
  json["taxon"] = account.taxon;
  json["rule"] = json_text(account.rule);
  json["bench"] = account.bench;
  json["sown"] = json_date(account.sown);
  json["first_water"] = json_date(account.first_water);
  json["seeds"] = account.seeds;
  json["pots"] = account.pots;
  json["counted_on"] = json_date(account.counted_on);
  json["up"] = account.up;
  json["alive"] = account.alive;
  json["died"] = account.died;
  json["closed"] = account.closed;
  json["closed_on"] = json_date(account.closed_on);
  json["closed_why"] = json_text(account.closed_why);
  json["pressed"] = {{"firm", account.firm}, {"soft", account.soft}};
  json["expected_up"] = json_number_spread(account.expected_up);
  json["missing"] = missing_json(account.missing);
  json["nights"] = nights_json(account.nights);
  json["more_to_come"] = json_number(account.more_to_come);
  json["step"] = account.step;
  json["until"] = json_date(account.until);
  json["how_sure"] = json_number(account.how_sure);
  json["press"] = press_json(account.press);
  json["deciding"] = deciding_json(account.deciding);
  json["curve"] = curve_json(account.curve);
  json["advice"] = json_reasons(account.advice);
  json["notes"] = json_reasons(account.notes);
  return json;
}

} // namespace

std::string to_json(const AccountAnswer& answer) {
  Json json = json_top(answer.garden, answer.today);
  json["accounts"] = Json::array();
  for (const SowingAccount& account : answer.accounts) {
    json["accounts"].push_back(account_json(account));
  }
  json["closed"] = answer.closed;
  json["warnings"] = json_reasons(answer.warnings);
  return json_dump(json);
}

} // namespace nightsow::planner
