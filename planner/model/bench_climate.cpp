#include "planner/model/bench_climate.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace nightsow::planner {

namespace {

constexpr double day_above_night_k = 9.0;

climate::BenchFacts facts_of(const LoadedGarden& garden, const Bench& bench) {
  climate::BenchFacts facts;
  facts.name = bench.name;
  facts.night_offset = bench.night_offset;
  facts.day_offset = bench.day_offset;
  facts.shelter = bench.shelter;
  facts.floor = bench.floor;
  facts.vent_above = bench.vent_above;
  facts.fixed_night = bench.fixed_night;
  facts.fixed_day = bench.fixed_day;
  facts.chilled = bench.chilled;
  facts.latitude = garden.garden.latitude;
  facts.elevation_m = garden.garden.elevation_m.value_or(0.0);
  facts.height = from_station_height(garden);
  return facts;
}

// A bench that is the station plus an offset has the station's curve, raised. Any other has one of
// its own, fitted to what it is with the holes open.
climate::SmoothYear smooth_of(const LoadedGarden& garden,
                              const StationClimate& station,
                              const climate::BenchFacts& facts,
                              const climate::BenchAir& bench) {
  if (!bench.plain) {
    const climate::BenchAir open =
        climate::to_bench(garden.station, facts, logger_on(garden, facts.name));
    if (std::optional<climate::SmoothYear> own = climate::fit_smooth_year(open.air)) {
      return *own;
    }
  }
  climate::SmoothYear smooth = station.smooth;
  smooth.night.constant_c += bench.offset.night.kelvin();
  if (smooth.day) {
    smooth.day->constant_c += bench.offset.day.kelvin();
  }
  return smooth;
}

[[noreturn]] void refuse_short_record(const LoadedGarden& garden) {
  const std::span<const float> nights = garden.station.night_c();
  const auto there =
      std::count_if(nights.begin(), nights.end(), [](float c) { return !std::isnan(c); });
  throw InputError({Severity::error,
                    "readings",
                    0,
                    0,
                    std::to_string(there) + " usable nights, which do not show a whole year",
                    "at least " + std::to_string(climate::least_values_for_a_year) +
                        " nights spread over all its seasons",
                    "add readings of your place or of the nearest station; five years or more "
                    "make the dates worth planning by"});
}

} // namespace

const climate::DailySeries* logger_on(const LoadedGarden& garden, std::string_view bench) {
  const auto found = garden.bench_loggers.find(bench);
  return found == garden.bench_loggers.end() ? nullptr : &found->second;
}

const Bench& bench_named(const Garden& garden, std::string_view name) {
  const auto found = std::find_if(garden.benches.begin(),
                                  garden.benches.end(),
                                  [&](const Bench& bench) { return bench.name == name; });
  return found == garden.benches.end() ? garden.benches.front() : *found;
}

CelsiusDelta from_station_height(const LoadedGarden& garden) {
  return garden.station_elevation_m && garden.garden.elevation_m
             ? climate::height_offset(*garden.station_elevation_m, *garden.garden.elevation_m)
             : CelsiusDelta{};
}

BenchClimate with_nights_raised(BenchClimate climate, CelsiusDelta by) {
  for (climate::DailySeries* series : {&climate.bench.air, &climate.bench.forecast}) {
    for (std::size_t i = 0; i < series->size(); ++i) {
      const double night_c = static_cast<double>(series->night_c()[i]) + by.kelvin();
      series->set_night(i, static_cast<float>(night_c), series->night_mark()[i]);
    }
  }
  climate.smooth.night.constant_c += by.kelvin();
  return climate;
}

StationClimate station_climate(const LoadedGarden& garden) {
  std::optional<climate::SmoothYear> smooth = climate::fit_smooth_year(garden.station);
  if (!smooth) {
    refuse_short_record(garden);
  }
  StationClimate station{
      garden.station, *smooth, climate::find_phases(smooth->night, year_of(garden.today))};
  climate::fill_short_holes(station.air);
  return station;
}

climate::BenchAir bench_air(const LoadedGarden& garden,
                            const StationClimate& station,
                            const Bench& bench) {
  return climate::to_bench(
      station.air, facts_of(garden, bench), logger_on(garden, bench.name), &garden.forecast);
}

BenchClimate bench_climate(const LoadedGarden& garden,
                           const StationClimate& station,
                           std::string_view name) {
  const Bench& bench = bench_named(garden.garden, name);
  BenchClimate result;
  result.bench = bench_air(garden, station, bench);
  result.smooth = smooth_of(garden, station, facts_of(garden, bench), result.bench);
  result.turning = station.turning;
  result.latitude = garden.garden.latitude;
  return result;
}

BenchSeason bench_season(const BenchClimate& climate, const climate::Season& season) {
  return {season,
          climate::season_outlook(climate.bench, climate.smooth, *climate.turning.phases, season)};
}

double smooth_mean_c(const BenchClimate& climate, Date day) {
  const double night_c = climate.smooth.night.value_c(day);
  const double day_c =
      climate.smooth.day ? climate.smooth.day->value_c(day) : night_c + day_above_night_k;
  return 0.5 * (night_c + day_c);
}

} // namespace nightsow::planner
