#pragma once

#include "climate/bench.hpp"
#include "climate/outlook.hpp"
#include "climate/phases.hpp"
#include "climate/seasons.hpp"
#include "climate/smooth_year.hpp"
#include "planner/garden/load_garden.hpp"

#include <string_view>

namespace nightsow::planner {

/// What the readings say of the place, whatever the bench and the season.
struct StationClimate {
  climate::DailySeries air;        ///< short holes filled
  climate::SmoothYear fitted;      ///< to the readings, with the holes open
  climate::SmoothYear smooth;      ///< the usual year: as fitted, or leaned on monthly normals
  climate::PhasesOrReason turning; ///< of the usual year, for the year of the garden's today
  bool leans = false;              ///< the usual year leans on the garden's monthly normals
};

/// A record too short for a trend leans on the garden's monthly normals, where it has any: see
/// climate/lean_on_normals.hpp. Throws InputError when the nights do not show a year, saying what
/// is needed.
[[nodiscard]] StationClimate station_climate(const LoadedGarden& garden);

/// The same of one bench.
struct BenchClimate {
  climate::BenchAir bench;
  climate::SmoothYear fitted;      ///< to the air at the bench, as its readings were
  climate::SmoothYear smooth;      ///< the usual year at the bench
  climate::PhasesOrReason turning; ///< of the station's nights, the same for every bench
  double latitude = 0.0;
};

/// The air of one bench, station and logger of that name joined.
[[nodiscard]] climate::BenchAir bench_air(const LoadedGarden& garden,
                                          const StationClimate& station,
                                          const Bench& bench);

/// The climate of the named bench; an empty or unknown name is the garden's first.
[[nodiscard]] BenchClimate bench_climate(const LoadedGarden& garden,
                                         const StationClimate& station,
                                         std::string_view name);

/// What the standard atmosphere adds between the heights of the station's file and of the garden;
/// nothing where one of them is not known.
[[nodiscard]] CelsiusDelta from_station_height(const LoadedGarden& garden);

/// The same bench, had all its nights been so much warmer.
[[nodiscard]] BenchClimate with_nights_raised(BenchClimate climate, CelsiusDelta by);

/// The bench a name stands for: the garden's first when empty or unknown.
[[nodiscard]] const Bench& bench_named(const Garden& garden, std::string_view name);

/// The screened readings of the logger on the bench of that very name; null where there is none.
[[nodiscard]] const climate::DailySeries* logger_on(const LoadedGarden& garden,
                                                    std::string_view bench);

/// One bench in one season.
struct BenchSeason {
  climate::Season season;
  climate::Outlook outlook;
};

/// Requires: climate.turning.phases.
[[nodiscard]] BenchSeason bench_season(const BenchClimate& climate, const climate::Season& season);

/// The smooth mean of night and day at the bench, trend carried to the date. Without maxima the day
/// is taken as 9 K above the night (common practice, no source).
[[nodiscard]] double smooth_mean_c(const BenchClimate& climate, Date day);

} // namespace nightsow::planner
