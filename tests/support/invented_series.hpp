#pragma once

#include "climate/base/date.hpp"
#include "climate/daily_series.hpp"

#include <string_view>
#include <vector>

namespace nightsow::support {

/// A made-up climate: nights and days follow a cosine of the year, so that every phase is known
/// beforehand. Without weather they follow it exactly.
struct InventedClimate {
  Date first{date::year{1990} / date::January / 1};
  int years = 20;
  double night_mean_c = 12.0;
  double night_half_swing_k = 5.0;
  double day_above_night_k = 10.0;
  double trend_k_per_year = 0.0;
  int hottest_day_of_year = 36; ///< 5 February; 218 is 6 August
  /// Nights alternate by plus and minus so much about the smooth course.
  double flicker_k = 0.0;
  /// Weather: standard deviation of single nights about the smooth course. It persists from night
  /// to night, and a little over weeks, so that no season is like another. The same weather on the
  /// same day after `first`, always; with it, readings are in tenths as stations write them.
  double night_sd_k = 0.0;
};

[[nodiscard]] climate::DailySeries invented_series(const InventedClimate& climate);

/// The nights of a text: "17 16.5 - 14", "-" is missing.
[[nodiscard]] std::vector<float> nights(std::string_view text);

} // namespace nightsow::support
