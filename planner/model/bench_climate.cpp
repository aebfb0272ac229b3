#include "planner/model/bench_climate.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace nightsow::planner {

namespace {

constexpr double day_above_night_k = 9.0;

climate::BenchOffset offset_of(const Bench& bench) {
  if (!bench.night_offset && !bench.day_offset) {
    return {};
  }
  return {bench.night_offset.value_or(CelsiusDelta{}),
          bench.day_offset.value_or(CelsiusDelta{}),
          climate::BenchSource::written_offset};
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

const Bench& bench_named(const Garden& garden, std::string_view name) {
  const auto found = std::find_if(garden.benches.begin(),
                                  garden.benches.end(),
                                  [&](const Bench& bench) { return bench.name == name; });
  return found == garden.benches.end() ? garden.benches.front() : *found;
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

BenchClimate bench_climate(const LoadedGarden& garden,
                           const StationClimate& station,
                           std::string_view name) {
  const Bench& bench = bench_named(garden.garden, name);
  BenchClimate result;
  result.bench = climate::to_bench(station.air, bench.name, offset_of(bench));
  result.smooth = station.smooth;
  result.smooth.night.constant_c += result.bench.offset.night.kelvin();
  if (result.smooth.day) {
    result.smooth.day->constant_c += result.bench.offset.day.kelvin();
  }
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
