#pragma once

#include "climate/seasons.hpp"
#include "planner/model/bench_climate.hpp"
#include "tests/support/invented_garden.hpp"

#include <utility>

namespace nightsow::support {

/// What the model makes of an invented garden on its first bench, in the season planned today.
struct InventedBench {
  planner::LoadedGarden garden;
  planner::StationClimate station;
  planner::BenchClimate climate;
  climate::Season season; ///< nothing in it where the place has no phases

  [[nodiscard]] planner::BenchSeason bench_season() const {
    return planner::bench_season(climate, season);
  }
};

inline InventedBench bench_of(planner::LoadedGarden garden) {
  planner::StationClimate station = planner::station_climate(garden);
  planner::BenchClimate climate = planner::bench_climate(garden, station, "");
  const climate::Season season =
      station.turning.phases ? climate::season_planned_on(*station.turning.phases, garden.today)
                             : climate::Season{};
  return {std::move(garden), std::move(station), std::move(climate), season};
}

inline InventedBench bench_of(const InventedGarden& garden) {
  return bench_of(garden_of(garden));
}

} // namespace nightsow::support
