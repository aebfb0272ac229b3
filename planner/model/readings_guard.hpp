#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/model/bench_climate.hpp"

#include <optional>

namespace nightsow::planner {

// Both common practice, no source.
inline constexpr int stale_days = 10;     ///< readings that end earlier are said first
inline constexpr int suspect_nights = 21; ///< no finding may stand among the last so many nights
inline constexpr int hot_window_days = 7;
inline constexpr double hot_margin_k = 2.0; ///< mean of their maxima over the day limit

/// Whether the readings allow to say "water now".
struct ReadingsGuard {
  std::optional<Date> last; ///< the last night there is
  int days_old = 0;
  bool stale = false;
  int suspect = 0; ///< doubtful readings among the last nights, a day of a streak each
};

[[nodiscard]] ReadingsGuard readings_guard(const LoadedGarden& garden);

/// Mean of the last seven maxima at the bench up to the last reading, when most of them are there.
[[nodiscard]] std::optional<double> recent_day_mean_c(const BenchClimate& climate);

} // namespace nightsow::planner
