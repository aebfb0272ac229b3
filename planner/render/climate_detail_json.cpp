#include "planner/render/climate_detail.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

template <class Line, class ToJson>
Json list_json(const std::vector<Line>& lines, ToJson line_to_json) {
  Json json = Json::array();
  for (const auto& line : lines) {
    json.push_back(line_to_json(line));
  }
  return json;
}

Json hole_json(const HoleLine& line) {
  Json json;
  json["from"] = json_date(line.from);
  json["to"] = json_date(line.to);
  json["days"] = line.days;
  return json;
}

Json lopsided_json(const std::optional<LopsidedLine>& line) {
  if (!line) {
    return {};
  }
  Json json;
  json["on"] = line->on;
  json["share"] = json_number(line->share);
  json["usual"] = json_number(line->usual);
  return json;
}

Json completeness_json(const CompletenessLine& line) {
  Json json;
  json["element"] = line.element;
  json["complete"] = json_number(line.complete);
  json["months"] = line.months;
  json["months_lost"] = line.months_lost;
  json["long_holes"] = list_json(line.long_holes, hole_json);
  json["weekdays"] = lopsided_json(line.weekdays);
  json["months_of_year"] = lopsided_json(line.months_of_year);
  return json;
}

Json figures_json(const std::optional<BandFigures>& band) {
  if (!band) {
    return {};
  }
  Json json;
  json["p10"] = json_number(band->p10_c);
  json["p50"] = json_number(band->p50_c);
  json["p90"] = json_number(band->p90_c);
  return json;
}

Json band_json(const BandLine& line) {
  Json json;
  json["month"] = line.month;
  json["night_c"] = figures_json(line.night);
  json["day_c"] = figures_json(line.day);
  return json;
}

Json decade_json(const std::optional<DecadeTrend>& trend) {
  if (!trend) {
    return {};
  }
  Json json;
  json["per_decade"] = json_number(trend->a_decade);
  json["low"] = json_number(trend->low);
  json["high"] = json_number(trend->high);
  json["p_value"] = json_number(trend->p_value);
  json["years"] = trend->years;
  return json;
}

Json quarter_json(const QuarterLine& line) {
  Json json;
  json["quarter"] = line.quarter;
  json["night_sd_c"] = json_number(line.night_sd_c);
  json["skewness"] = json_number(line.skewness);
  json["trend_k"] = decade_json(line.trend);
  return json;
}

Json range_json(const std::optional<DateRangeLine>& range) {
  if (!range) {
    return {};
  }
  Json json;
  json["p10"] = json_date(range->p10);
  json["p50"] = json_date(range->p50);
  json["p90"] = json_date(range->p90);
  return json;
}

Json frost_json(const FrostLine& frost) {
  Json json;
  json["seasons"] = frost.seasons;
  json["without"] = frost.without;
  json["nights_a_season"] = json_number(frost.nights_a_season);
  json["first"] = range_json(frost.first);
  json["last"] = range_json(frost.last);
  return json;
}

Json gate_json(const GateTrendLine& gate) {
  Json json;
  json["limit_c"] = json_number(gate.limit_c);
  json["day_limit_c"] = json_number(gate.day_limit_c);
  json["nights"] = gate.nights;
  json["of"] = gate.of;
  json["bench"] = gate.bench;
  json["genera"] = gate.genera;
  json["binds"] = gate.binds;
  json["seasons"] = gate.seasons;
  json["never"] = gate.never;
  json["stirs_days"] = decade_json(gate.stirs);
  json["holds_days"] = decade_json(gate.holds);
  return json;
}

} // namespace

Json suspicion_json(const SuspicionLine& line) {
  Json json;
  json["kind"] = line.kind;
  json["share"] = json_number(line.share);
  json["text"] = line.text;
  return json;
}

Json record_json(const RecordDetail& record) {
  Json json;
  json["suspicions"] = list_json(record.suspicions, suspicion_json);
  json["completeness"] = list_json(record.completeness, completeness_json);
  return json;
}

Json usual_json(const UsualDetail& usual) {
  Json json;
  json["bands"] = list_json(usual.bands, band_json);
  json["quarters"] = list_json(usual.quarters, quarter_json);
  json["year_trend_k"] = decade_json(usual.year_trend);
  json["frost"] = frost_json(usual.frost);
  json["gates"] = list_json(usual.gates, gate_json);
  return json;
}

} // namespace nightsow::planner
