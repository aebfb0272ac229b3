#pragma once

#include "climate/seasons.hpp"
#include "planner/answers/climate_detail_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/model/bench_climate.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

/// What the record lacks, and what is odd about it as a whole.
[[nodiscard]] RecordDetail record_detail(const LoadedGarden& garden);

[[nodiscard]] std::vector<SuspicionLine> suspicion_lines(
    const std::vector<climate::Suspicion>& suspicions);

/// What is usual here: spread, shape, frost and trends. `season` gives frost its dates; without one
/// they are those of the year of today. Gates are those of the kinds in hand, else nights at or
/// under 13 °C; there are none without phases.
[[nodiscard]] UsualDetail usual_detail(const LoadedGarden& garden,
                                       const StationClimate& station,
                                       const std::optional<climate::Season>& season);

} // namespace nightsow::planner
