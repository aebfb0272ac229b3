#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/model/bench_climate.hpp"

#include <optional>
#include <string_view>

namespace nightsow::planner {

// Both common practice, no source.
inline constexpr int stale_days = 10;     ///< readings that end earlier are said first
inline constexpr int suspect_nights = 21; ///< no finding may stand among the last so many nights
inline constexpr int least_recent_nights = 3; ///< of seven (common practice, no source)
inline constexpr int hot_window_days = 7;
inline constexpr double hot_margin_k = 2.0;  ///< mean of their maxima over the day limit
inline constexpr int least_recent_highs = 4; ///< of seven (common practice, no source)

/// Whether the readings behind one bench allow to say "water now".
struct ReadingsGuard {
  std::optional<Date> last; ///< the last night there is, by the station or the bench's own logger
  int days_old = 0;
  bool stale = false;
  int suspect = 0;   ///< days with a doubtful reading among the last `suspect_nights`
  int of_logger = 0; ///< those of them that the bench's own logger gave
};

/// Of the named bench; an empty or unknown name is the garden's first. A reading of the station
/// that is in doubt does not count on a date on which the bench's logger gives night and day, since
/// those are the bench then. Normals alone are always stale.
[[nodiscard]] ReadingsGuard readings_guard(const LoadedGarden& garden, std::string_view bench);

/// Mean of the nights that are there among the seven up to the last one known, when at least
/// `least_recent_nights` are: a hole at the end of the readings must not hide frost.
[[nodiscard]] std::optional<double> recent_night_mean_c(const BenchClimate& climate);

/// Whether seven days with that mean of their maxima are too hot for wet seed; not when it is not
/// known.
[[nodiscard]] bool too_hot(std::optional<double> mean_c, Celsius day_limit);

/// Mean of the last seven maxima at the bench up to the last reading, when most of them are there.
[[nodiscard]] std::optional<double> recent_day_mean_c(const BenchClimate& climate);

} // namespace nightsow::planner
