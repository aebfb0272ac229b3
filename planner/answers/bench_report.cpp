#include "planner/answers/bench_report.hpp"

#include "climate/seed_level.hpp"
#include "planner/answers/asked_kinds.hpp"
#include "planner/answers/figures.hpp"
#include "planner/model/seed_place.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr int last_year_days = 365;

std::string word_of(climate::BenchSource source) {
  switch (source) {
  case climate::BenchSource::fixed_temperature:
    return "fixed_temperature";
  case climate::BenchSource::written_offset:
    return "written_offset";
  case climate::BenchSource::fitted_transfer:
    return "fitted_transfer";
  case climate::BenchSource::shelter_default:
    return "shelter_default";
  case climate::BenchSource::station_as_is:
    break;
  }
  return "station_as_is";
}

Extremes smooth_extremes(const climate::SmoothCurve& curve, Date today) {
  Extremes extremes{curve.value_c(today), curve.value_c(today)};
  for (int i = 1; i < last_year_days; ++i) {
    const double value_c = curve.value_c(today - Days{i});
    extremes.highest_c = std::max(extremes.highest_c, value_c);
    extremes.lowest_c = std::min(extremes.lowest_c, value_c);
  }
  return {rounded_tenth(extremes.highest_c), rounded_tenth(extremes.lowest_c)};
}

// The last year of readings, as the seed in the bench's pots had it.
std::optional<Extremes> seed_extremes(const LoadedGarden& garden,
                                      const climate::DailySeries& station,
                                      const climate::BenchAir& bench,
                                      const Bench& written) {
  climate::BenchAir last_year = bench;
  const climate::DailySeries& all = bench.air;
  const int days = std::min(last_year_days, static_cast<int>(all.size()));
  const Date first = all.last() - Days{days - 1};
  const std::vector<float> night_c = all.nights_from(first, days);
  const std::vector<float> day_c = all.days_from(first, days);
  last_year.air = climate::DailySeries{first, night_c.size()};
  for (std::size_t i = 0; i < night_c.size(); ++i) {
    last_year.air.set_night(i, night_c[i]);
    last_year.air.set_day(i, day_c[i]);
  }
  const climate::SeedPlace place = seed_place(garden.garden, written);
  const climate::SeedLevel level =
      climate::seed_level(station, last_year, place, climate::SunYear{place.latitude});
  std::optional<Extremes> extremes;
  for (std::size_t i = 0; i < level.size(); ++i) {
    for (const float hour : level.hours_of(i)) {
      const auto hour_c = static_cast<double>(hour);
      if (!std::isnan(hour_c)) {
        extremes = extremes ? Extremes{std::max(extremes->highest_c, hour_c),
                                       std::min(extremes->lowest_c, hour_c)}
                            : Extremes{hour_c, hour_c};
      }
    }
  }
  if (extremes) {
    extremes = Extremes{rounded_tenth(extremes->highest_c), rounded_tenth(extremes->lowest_c)};
  }
  return extremes;
}

BenchLine station_line(const StationClimate& station, Date today) {
  BenchLine line;
  line.source = word_of(climate::BenchSource::station_as_is);
  line.nights = smooth_extremes(station.smooth.night, today);
  if (station.smooth.day) {
    line.days = smooth_extremes(*station.smooth.day, today);
  }
  return line;
}

BenchLine bench_line(const LoadedGarden& garden, BenchSeasons& seasons, const Bench& bench) {
  const BenchClimate& climate = seasons.climate(bench.name);
  const climate::BenchAir& air = climate.bench;
  BenchLine line;
  line.bench = bench.name;
  line.source = word_of(air.offset.source);
  line.night_k = rounded_tenth(air.offset.night.kelvin());
  line.day_k = rounded_tenth(air.offset.day.kelvin());
  if (air.next) {
    line.next_source = word_of(air.next->source);
    line.next_night_k = rounded_tenth(air.next->night.kelvin());
    line.next_day_k = rounded_tenth(air.next->day.kelvin());
  }
  line.nights = smooth_extremes(climate.smooth.night, garden.today);
  if (climate.smooth.day) {
    line.days = smooth_extremes(*climate.smooth.day, garden.today);
  }
  line.night_doubt_k = rounded_tenth(air.night_doubt.kelvin());
  line.paired_nights = air.transfer.paired_nights;
  line.logger_nights = air.logger_nights;
  line.days_in_sun = air.transfer.days_in_sun;
  line.seed = seed_extremes(garden, seasons.station().air, air, bench);
  return line;
}

std::optional<Date> holds_median(const BenchClimate& climate,
                                 const climate::Season& season,
                                 const climate::NightLimit& limit) {
  return climate::outlook_words(
             bench_season(climate, season).outlook, limit, climate::first_allowed_day(season))
      .holds.p50;
}

std::optional<int> days_apart(const std::optional<Date>& from, const std::optional<Date>& to) {
  return from && to ? std::optional{days_between(*from, *to)} : std::nullopt;
}

} // namespace

std::vector<BenchLine> bench_lines(const LoadedGarden& garden, BenchSeasons& seasons) {
  std::vector<BenchLine> lines{station_line(seasons.station(), garden.today)};
  for (const Bench& bench : garden.garden.benches) {
    lines.push_back(bench_line(garden, seasons, bench));
  }
  return lines;
}

std::vector<KelvinLine> kelvin_lines(const LoadedGarden& garden,
                                     BenchSeasons& seasons,
                                     const climate::Season& season) {
  std::map<std::pair<std::string, climate::NightLimit>, std::vector<std::string>> asked;
  for (const AskedKind& kind : asked_kinds(garden, {})) {
    if (const auto limit = night_limit(kind.rule.rule)) {
      asked[{kind.bench, *limit}].push_back(kind.name);
    }
  }
  std::vector<KelvinLine> lines;
  for (const auto& [key, kinds] : asked) {
    const auto& [bench, limit] = key;
    const BenchClimate& climate = seasons.climate(bench);
    KelvinLine line;
    line.bench = bench;
    line.limit_c = rounded_tenth(limit.at_or_under.degrees());
    if (limit.day_limit) {
      line.day_limit_c = rounded_tenth(limit.day_limit->degrees());
    }
    line.kinds = kinds;
    line.cooler = holds_median(with_nights_raised(climate, CelsiusDelta{-1.0}), season, limit);
    line.as_reckoned = holds_median(climate, season, limit);
    line.warmer = holds_median(with_nights_raised(climate, CelsiusDelta{1.0}), season, limit);
    line.days_earlier = days_apart(line.cooler, line.as_reckoned);
    line.days_later = days_apart(line.as_reckoned, line.warmer);
    lines.push_back(std::move(line));
  }
  return lines;
}

} // namespace nightsow::planner
