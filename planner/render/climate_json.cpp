#include "planner/render/climate_detail.hpp"
#include "planner/render/json_parts.hpp"
#include "planner/render/to_json.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

Json phases_json(const std::optional<PhasesLine>& phases) {
  if (!phases) {
    return {};
  }
  Json json;
  json["planning_begins"] = json_date(phases->planning_begins);
  json["hot_season_begins"] = json_date(phases->hot_season_begins);
  json["hottest_night"] = json_date(phases->hottest_night);
  json["hot_season_ends"] = json_date(phases->hot_season_ends);
  json["cooling_limb_begins"] = json_date(phases->cooling_limb_begins);
  json["coldest_night"] = json_date(phases->coldest_night);
  json["hottest_c"] = json_number(phases->hottest_c);
  json["coldest_c"] = json_number(phases->coldest_c);
  return json;
}

Json trend_json(const std::optional<TrendLine>& trend) {
  if (!trend) {
    return {};
  }
  Json json;
  json["night_k_per_decade"] = json_number(trend->night_k_per_decade);
  json["standard_error"] = json_number(trend->standard_error);
  json["used_k_per_decade"] = json_number(trend->used_k_per_decade);
  return json;
}

Json file_json(const ClimateFile& file) {
  Json json;
  json["file"] = file.file;
  json["format"] = json_text(file.format);
  json["unit"] = json_text(file.unit);
  json["bench"] = json_text(file.bench);
  json["because"] = file.because;
  return json;
}

Json month_json(const MonthLine& month) {
  Json json;
  json["month"] = month.month;
  json["night_c"] = json_number(month.night_c);
  json["day_c"] = json_number(month.day_c);
  json["smooth_night_c"] = json_number(month.smooth_night_c);
  json["smooth_day_c"] = json_number(month.smooth_day_c);
  json["day_length_hours"] = json_number(month.day_length_hours);
  json["nights"] = month.nights;
  return json;
}

Json count_json(const FindingCount& count) {
  Json json;
  json["kind"] = count.kind;
  json["used"] = count.used;
  json["ignored"] = count.ignored;
  return json;
}

Json finding_json(const FindingLine& finding) {
  Json json;
  json["kind"] = finding.kind;
  json["verdict"] = finding.verdict;
  json["date"] = json_date(finding.date);
  json["file"] = finding.file;
  json["line"] = finding.line;
  json["value_c"] = json_number(finding.value_c);
  json["other_c"] = json_number(finding.other_c);
  json["days"] = finding.days;
  return json;
}

template <class Line, class ToJson>
Json list_json(const std::vector<Line>& lines, ToJson line_to_json) {
  Json json = Json::array();
  for (const auto& line : lines) {
    json.push_back(line_to_json(line));
  }
  return json;
}

} // namespace

std::string to_json(const ClimateAnswer& answer) {
  Json json = json_top(answer.garden, answer.today);
  json["season"] = answer.season;
  json["readings"] = json_readings(answer.readings);
  json["days_without_night"] = answer.days_without_night;
  json["longest_hole_days"] = answer.longest_hole_days;
  json["phases"] = phases_json(answer.phases);
  json["no_phases"] = json_reasons(answer.no_phases);
  json["swing_k"] = json_number(answer.swing_k);
  json["trend"] = trend_json(answer.trend);
  json["night_sd_c"] = json_number(answer.night_sd_c);
  json["files"] = list_json(answer.files, file_json);
  json["months"] = list_json(answer.months, month_json);
  json["counts"] = list_json(answer.counts, count_json);
  json["findings"] = list_json(answer.findings, finding_json);
  json["record"] = record_json(answer.record);
  json["usual"] = usual_json(answer.usual);
  json["warnings"] = json_reasons(answer.warnings);
  return json_dump(json);
}

} // namespace nightsow::planner
