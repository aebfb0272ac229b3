#include "climate/frost.hpp"
#include "climate/normals.hpp"
#include "climate/past_seasons.hpp"
#include "climate/season_trends.hpp"
#include "planner/answers/asked_kinds.hpp"
#include "planner/answers/climate_detail.hpp"
#include "planner/answers/figures.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace nightsow::planner {

namespace {

constexpr unsigned months_a_year = 12;
constexpr double years_a_decade = 10.0;

double hundredths(double value) {
  constexpr double per_unit = 100.0;
  return std::round(value * per_unit) / per_unit + 0.0;
}

std::optional<BandFigures> band(Date first, std::span<const float> values_c, date::month_day day) {
  const auto found = climate::percentile_band(first, values_c, day);
  if (!found) {
    return std::nullopt;
  }
  return BandFigures{
      rounded_tenth(found->p10_c), rounded_tenth(found->p50_c), rounded_tenth(found->p90_c)};
}

std::vector<BandLine> band_lines(const climate::DailySeries& series) {
  constexpr date::day middle{15};
  std::vector<BandLine> lines;
  for (unsigned month = 1; month <= months_a_year; ++month) {
    const date::month_day day{date::month{month}, middle};
    lines.push_back({static_cast<int>(month),
                     band(series.first(), series.night_c(), day),
                     band(series.first(), series.day_c(), day)});
  }
  return lines;
}

std::optional<DecadeTrend> decade_trend(const std::optional<climate::YearlyTrend>& trend,
                                        double (*rounded)(double)) {
  if (!trend) {
    return std::nullopt;
  }
  return DecadeTrend{rounded(trend->a_year.slope * years_a_decade),
                     rounded(trend->a_year.low * years_a_decade),
                     rounded(trend->a_year.high * years_a_decade),
                     rounded_share(trend->test.p_value),
                     trend->years};
}

void set_quarters(const climate::DailySeries& series,
                  const StationClimate& station,
                  UsualDetail& detail) {
  constexpr std::array<std::string_view, climate::quarters_a_year> names{
      "hottest", "cooling", "coldest", "warming"};
  const climate::SmoothCurve& curve = station.fitted.night;
  const date::month_day hottest = station.turning.hottest;
  const auto shapes = climate::departure_shapes(series.first(), series.night_c(), curve, hottest);
  const climate::SeasonTrends trends =
      climate::season_trends(series.first(), series.night_c(), curve, hottest);
  detail.year_trend = decade_trend(trends.year, hundredths);
  for (std::size_t quarter = 0; quarter < names.size(); ++quarter) {
    detail.quarters.push_back({std::string(names.at(quarter)),
                               rounded_tenth(shapes.at(quarter).sd_k),
                               hundredths(shapes.at(quarter).skewness),
                               decade_trend(trends.quarter.at(quarter), hundredths)});
  }
}

std::optional<DateRangeLine> dates_of(const std::optional<climate::DaySpread>& days, Date hottest) {
  if (!days) {
    return std::nullopt;
  }
  return DateRangeLine{
      hottest + Days{days->p10}, hottest + Days{days->p50}, hottest + Days{days->p90}};
}

FrostLine frost_line(const climate::DailySeries& series,
                     date::month_day hottest,
                     Date season_hottest) {
  const climate::FrostSeasons frost = climate::frost_seasons(series, hottest);
  return {frost.seasons,
          frost.without,
          rounded_tenth(frost.nights_a_season),
          dates_of(frost.first, season_hottest),
          dates_of(frost.last, season_hottest)};
}

struct AskedGate {
  climate::NightLimit limit;
  std::string bench;
  std::vector<std::string> genera;
};

// The gates of the kinds in hand, each once a bench.
std::vector<AskedGate> asked_gates(const LoadedGarden& garden) {
  std::vector<AskedGate> gates;
  for (const AskedKind& asked : asked_kinds(garden, {})) {
    const std::optional<climate::NightLimit> limit = night_limit(asked.rule.rule);
    if (!limit) {
      continue;
    }
    auto gate = std::find_if(gates.begin(), gates.end(), [&](const AskedGate& known) {
      return known.limit == *limit && known.bench == asked.bench;
    });
    if (gate == gates.end()) {
      gate = gates.insert(gates.end(), {*limit, asked.bench, {}});
    }
    gate->genera.push_back(asked.name);
  }
  if (gates.empty()) {
    // What many winter growers ask for (common practice, no source).
    constexpr Celsius usual_limit{13.0};
    gates.push_back({{usual_limit}, garden.garden.benches.front().name, {}});
  }
  return gates;
}

GateTrendLine gate_line(const AskedGate& gate, const BenchClimate& climate) {
  const std::vector<climate::PastSeason> past =
      climate::past_seasons(climate.bench, *climate.turning.phases, gate.limit);
  const climate::Binding binding = climate::binding(past);
  const climate::GateTrend trend = climate::gate_trend(past);
  GateTrendLine line;
  line.limit_c = rounded_tenth(gate.limit.at_or_under.degrees());
  if (gate.limit.day_limit) {
    line.day_limit_c = rounded_tenth(gate.limit.day_limit->degrees());
  }
  line.nights = gate.limit.nights;
  line.of = gate.limit.of;
  line.bench = gate.bench;
  line.genera = gate.genera;
  line.binds = binding.binds;
  line.seasons = binding.seasons;
  line.never = trend.never;
  line.stirs = decade_trend(trend.stirs, rounded_tenth);
  line.holds = decade_trend(trend.holds, rounded_tenth);
  return line;
}

} // namespace

UsualDetail usual_detail(const LoadedGarden& garden,
                         const StationClimate& station,
                         const std::optional<climate::Season>& season) {
  UsualDetail detail;
  detail.bands = band_lines(garden.station);
  set_quarters(garden.station, station, detail);
  const date::month_day hottest = station.turning.hottest;
  detail.frost = frost_line(
      garden.station, hottest, season ? season->hottest : in_year(hottest, year_of(garden.today)));
  if (!station.turning.phases) {
    return detail;
  }
  for (const AskedGate& gate : asked_gates(garden)) {
    detail.gates.push_back(gate_line(gate, bench_climate(garden, station, gate.bench)));
  }
  return detail;
}

} // namespace nightsow::planner
