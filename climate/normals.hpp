#pragma once

#include "climate/base/date.hpp"
#include "climate/daily_series.hpp"
#include "climate/smooth_year.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>

namespace nightsow::climate {

// What is usual here: how far nights and days spread, and in which shape. Only sound values that
// were read count; nothing is filled.

/// Percentiles of all years' values in the 31 calendar days about a day of the year, of type 8
/// (definitions of ETCCDI take 5 days; a month gives a smooth course without another fit).
struct PercentileBand {
  double p10_c = 0.0;
  double p50_c = 0.0;
  double p90_c = 0.0;
  std::size_t values = 0;
};

inline constexpr int band_days = 31;
inline constexpr std::size_t least_values_for_a_band = 30; // common practice, no source

/// Empty when fewer than `least_values_for_a_band` values are there.
[[nodiscard]] std::optional<PercentileBand> percentile_band(Date first,
                                                            std::span<const float> values_c,
                                                            date::month_day centre);

/// Quarters of the site's own year: 0 lies about the hottest night, 1 follows as nights cool, 2 is
/// the cold one, 3 the warming one. Each has a quarter of the days of a year.
inline constexpr int quarters_a_year = 4;

/// A quarter and the year it belongs to; years begin with their quarter 0. They are numbered from
/// that of the year 2000.
struct SiteQuarter {
  int year = 0;
  int quarter = 0;
};

[[nodiscard]] SiteQuarter site_quarter(Date day, date::month_day hottest);

/// How single values depart from the smooth course, its trend included. Nothing says that they are
/// normal: skewness below 0 is a longer tail to the cold.
struct DepartureShape {
  std::size_t values = 0;
  double mean_k = 0.0;
  double sd_k = 0.0;
  double skewness = 0.0; ///< third moment over the cube of the deviation (g1)
};

/// One a quarter; of fewer than `least_values_for_a_band` values only their number is told.
[[nodiscard]] std::array<DepartureShape, quarters_a_year> departure_shapes(
    Date first, std::span<const float> values_c, const SmoothCurve& curve, date::month_day hottest);

} // namespace nightsow::climate
