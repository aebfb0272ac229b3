#include "planner/model/bench_climate.hpp"

#include "climate/lean_on_normals.hpp"

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

climate::SmoothYear raised(climate::SmoothYear smooth, const climate::BenchOffset& by) {
  smooth.night.constant_c += by.night.kelvin();
  if (smooth.day) {
    smooth.day->constant_c += by.day.kelvin();
  }
  return smooth;
}

// The station's readings, had their years been usual.
climate::DailySeries usual_air(const LoadedGarden& garden, const StationClimate& station) {
  const auto more_k =
      [](const climate::SmoothCurve& usual, const climate::SmoothCurve& fitted, Date date) {
        return static_cast<float>(usual.value_c(date) - fitted.value_c(date));
      };
  climate::DailySeries air = garden.station;
  for (std::size_t i = 0; i < air.size(); ++i) {
    const Date date = air.date_of(i);
    air.set_night(i,
                  air.night_c()[i] + more_k(station.smooth.night, station.fitted.night, date),
                  air.night_mark()[i]);
    if (station.fitted.day) {
      air.set_day(i, air.day_c()[i] + more_k(*station.smooth.day, *station.fitted.day, date));
    }
  }
  return air;
}

// What the station leans on its normals, on a bench that is not simply the station plus an offset:
// a heater's floor or a fixed temperature lets nothing of it through, or only a part.
climate::SmoothYear leaned_at_bench(const LoadedGarden& garden,
                                    const StationClimate& station,
                                    const climate::BenchFacts& facts,
                                    const climate::SmoothYear& own) {
  const auto reckoned = [&](const climate::DailySeries& air) {
    return climate::fit_smooth_year(climate::to_bench(air, facts, nullptr).air);
  };
  const std::optional<climate::SmoothYear> was = reckoned(garden.station);
  const std::optional<climate::SmoothYear> usual = reckoned(usual_air(garden, station));
  climate::SmoothYear smooth = own;
  if (was && usual) {
    smooth.night = climate::moved(own.night, was->night, usual->night);
    if (own.day && was->day && usual->day) {
      smooth.day = climate::moved(*own.day, *was->day, *usual->day);
    }
  }
  return smooth;
}

// A bench that is the station plus an offset has the station's curves, raised. Any other has one of
// its own, fitted to what it is with the holes open.
void set_smooth_years(const LoadedGarden& garden,
                      const StationClimate& station,
                      const climate::BenchFacts& facts,
                      BenchClimate& bench) {
  if (!bench.bench.plain) {
    const climate::BenchAir open =
        climate::to_bench(garden.station, facts, logger_on(garden, facts.name));
    if (const std::optional<climate::SmoothYear> own = climate::fit_smooth_year(open.air)) {
      const bool leans = station.leans && !own->night.trend_fitted;
      bench.fitted = *own;
      bench.smooth = leans ? leaned_at_bench(garden, station, facts, *own) : *own;
      return;
    }
  }
  bench.fitted = raised(station.fitted, bench.bench.offset);
  bench.smooth = raised(station.smooth, bench.bench.offset);
}

climate::SmoothYear usual_year(const MonthlyNormals& normals, const climate::SmoothYear& fitted) {
  return climate::leaned(
      fitted,
      {climate::curve_of_normals(normals.night_c), climate::curve_of_normals(normals.day_c)});
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
  climate.fitted.night.constant_c += by.kelvin();
  climate.smooth.night.constant_c += by.kelvin();
  return climate;
}

StationClimate station_climate(const LoadedGarden& garden) {
  const std::optional<climate::SmoothYear> fitted = climate::fit_smooth_year(garden.station);
  if (!fitted) {
    refuse_short_record(garden);
  }
  const std::optional<MonthlyNormals>& normals = garden.garden.monthly_normals;
  const bool leans = normals && !fitted->night.trend_fitted;
  const climate::SmoothYear smooth = leans ? usual_year(*normals, *fitted) : *fitted;
  StationClimate station{garden.station,
                         *fitted,
                         smooth,
                         climate::find_phases(smooth.night, year_of(garden.today)),
                         leans};
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
  set_smooth_years(garden, station, facts_of(garden, bench), result);
  result.turning = station.turning;
  result.latitude = garden.garden.latitude;
  return result;
}

BenchSeason bench_season(const BenchClimate& climate, const climate::Season& season) {
  const climate::PastCourses past =
      climate::past_courses(climate.bench, climate.fitted, climate.smooth, *climate.turning.phases);
  return {season, climate::season_outlook(past, climate.bench, season)};
}

double smooth_mean_c(const BenchClimate& climate, Date day) {
  const double night_c = climate.smooth.night.value_c(day);
  const double day_c =
      climate.smooth.day ? climate.smooth.day->value_c(day) : night_c + day_above_night_k;
  return 0.5 * (night_c + day_c);
}

} // namespace nightsow::planner
