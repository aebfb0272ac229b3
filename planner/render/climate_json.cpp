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
  json["kind"] = file.forecast ? "forecast" : "readings";
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

Json extremes_json(const std::optional<Extremes>& extremes) {
  if (!extremes) {
    return {};
  }
  Json json;
  json["highest_c"] = json_number(extremes->highest_c);
  json["lowest_c"] = json_number(extremes->lowest_c);
  return json;
}

Json bench_json(const BenchLine& line) {
  Json json;
  json["bench"] = json_text(line.bench);
  json["source"] = line.source;
  json["night_k"] = json_number(line.night_k);
  json["day_k"] = json_number(line.day_k);
  json["next_source"] = json_text(line.next_source);
  json["next_night_k"] = json_number(line.next_night_k);
  json["next_day_k"] = json_number(line.next_day_k);
  json["nights"] = extremes_json(line.nights);
  json["days"] = extremes_json(line.days);
  json["night_doubt_k"] = json_number(line.night_doubt_k);
  json["paired_nights"] = line.paired_nights;
  json["logger_nights"] = line.logger_nights;
  json["days_in_sun"] = line.days_in_sun;
  json["seed"] = extremes_json(line.seed);
  return json;
}

Json kelvin_json(const KelvinLine& line) {
  const auto whole = [](const std::optional<int>& days) { return days ? Json(*days) : Json(); };
  Json json;
  json["bench"] = line.bench;
  json["limit_c"] = json_number(line.limit_c);
  json["day_limit_c"] = json_number(line.day_limit_c);
  json["kinds"] = line.kinds;
  json["cooler"] = json_date(line.cooler);
  json["as_reckoned"] = json_date(line.as_reckoned);
  json["warmer"] = json_date(line.warmer);
  json["days_earlier"] = whole(line.days_earlier);
  json["days_later"] = whole(line.days_later);
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

Json logger_json(const LoggerRecord& record) {
  Json json;
  json["bench"] = record.bench;
  json["from"] = json_date(record.from);
  json["to"] = json_date(record.to);
  json["nights"] = record.nights;
  json["counts"] = list_json(record.counts, count_json);
  json["findings"] = list_json(record.findings, finding_json);
  json["suspicions"] = list_json(record.suspicions, suspicion_json);
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
  json["benches"] = list_json(answer.benches, bench_json);
  json["kelvin"] = list_json(answer.kelvin, kelvin_json);
  json["counts"] = list_json(answer.counts, count_json);
  json["findings"] = list_json(answer.findings, finding_json);
  json["loggers"] = list_json(answer.loggers, logger_json);
  json["record"] = record_json(answer.record);
  json["usual"] = usual_json(answer.usual);
  json["warnings"] = json_reasons(answer.warnings);
  return json_dump(json);
}

} // namespace nightsow::planner
