#pragma once

#include "climate/base/date.hpp"
#include "climate/daily_series.hpp"

#include <optional>
#include <vector>

namespace nightsow::climate {

/// Days after the hottest night by which so large a share of the seasons that had frost had theirs
/// (type 1).
struct DaySpread {
  int p10 = 0;
  int p50 = 0;
  int p90 = 0;

  bool operator==(const DaySpread&) const = default;
};

/// Nights at or under 0 °C, season by season, each from one hottest night to the next.
struct FrostSeasons {
  int seasons = 0; ///< wholly inside the readings and with few nights missing
  int without = 0; ///< those without a frost
  /// Of the seasons with frost; empty when none had any.
  std::optional<DaySpread> first;
  std::optional<DaySpread> last;
  double nights_a_season = 0.0; ///< frosty nights, mean over all seasons
};

/// `hottest` need not come from phases: a year has to be cut somewhere.
[[nodiscard]] FrostSeasons frost_seasons(const DailySeries& series, date::month_day hottest);

} // namespace nightsow::climate
