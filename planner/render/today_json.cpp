#include "planner/render/json_parts.hpp"
#include "planner/render/task_words.hpp"
#include "planner/render/to_json.hpp"
#include "planner/render/today.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json alarm_json(const WeatherAlarm& alarm, Date today) {
  Json json;
  json["kind"] = alarm.kind == WeatherAlarm::Kind::frost ? "frost" : "heat";
  json["bench"] = alarm.bench;
  json["on"] = json_date(alarm.on);
  json["air_c"] = json_number(alarm.air_c);
  json["limit_c"] = json_number(alarm.limit_c);
  json["forecast"] = alarm.forecast;
  json["text"] = alarm_text(alarm, today, {});
  return json;
}

Json entry_json(const DiaryEntry& entry, const TodayAnswer& answer) {
  Json json;
  json["on"] = json_date(entry.on);
  json["do"] = name_of(entry.kind);
  json["group"] = entry.group;
  json["overdue_since"] = json_date(entry.overdue_since());
  json["texts"] = entry_sentences(entry, answer.lots, {});
  return json;
}

} // namespace

std::string to_json(const TodayAnswer& answer) {
  Json json = json_top(answer.garden, answer.today);
  json["to"] = json_date(answer.to);
  json["alarms"] = Json::array();
  for (const WeatherAlarm& alarm : answer.alarms) {
    json["alarms"].push_back(alarm_json(alarm, answer.today));
  }
  json["behind"] = Json::array();
  for (const BehindSowing& one : answer.behind) {
    Json& behind = json["behind"].emplace_back();
    behind["sowing"] = one.sowing;
    behind["taxon"] = one.taxon;
    behind["reason"] = json_reasons({one.reason}).front();
  }
  json["now"] = Json::array();
  for (const DiaryEntry& entry : answer.now) {
    json["now"].push_back(entry_json(entry, answer));
  }
  json["next"] = answer.next ? entry_json(*answer.next, answer) : Json{};
  json["warnings"] = json_reasons(answer.warnings);
  return json_dump(json);
}

} // namespace nightsow::planner
