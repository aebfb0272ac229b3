#pragma once

#include "climate/base/date.hpp"
#include "climate/normals.hpp"
#include "climate/past_seasons.hpp"
#include "climate/smooth_year.hpp"
#include "climate/trend.hpp"

#include <array>
#include <optional>
#include <span>

namespace nightsow::climate {

/// A trend over years, and how many of them stand behind it.
struct YearlyTrend {
  int years = 0;
  TheilSen a_year;
  MannKendall test;
};

/// How the mean of the whole year and of each site-own quarter moves, K a year. A mean counts when
/// 80 % of its days are there; years whose days are missing on one side do not lean to the other,
/// since departures from the season are averaged, not values. Empty under
/// `least_values_for_theil_sen` such means.
struct SeasonTrends {
  std::optional<YearlyTrend> year;
  std::array<std::optional<YearlyTrend>, quarters_a_year> quarter;
};

[[nodiscard]] SeasonTrends season_trends(Date first,
                                         std::span<const float> values_c,
                                         const SmoothCurve& curve,
                                         date::month_day hottest);

/// How the day on which nights come down to a limit moves, days a year (above 0: later). Usable
/// seasons only; those in which they never came are counted, and left out.
struct GateTrend {
  int never = 0;
  std::optional<YearlyTrend> stirs;
  std::optional<YearlyTrend> holds;
};

[[nodiscard]] GateTrend gate_trend(std::span<const PastSeason> seasons);

} // namespace nightsow::climate
