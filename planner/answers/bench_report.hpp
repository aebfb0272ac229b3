#pragma once

#include "climate/seasons.hpp"
#include "planner/answers/climate_answer.hpp"
#include "planner/model/bench_seasons.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

/// The station, and every bench of the garden beside it.
[[nodiscard]] std::vector<BenchLine> bench_lines(const LoadedGarden& garden, BenchSeasons& seasons);

/// For each night limit among the kinds in hand, once a bench: when nights would hold in the given
/// season, were the bench one kelvin cooler or warmer than reckoned.
[[nodiscard]] std::vector<KelvinLine> kelvin_lines(const LoadedGarden& garden,
                                                   BenchSeasons& seasons,
                                                   const climate::Season& season);

} // namespace nightsow::planner
