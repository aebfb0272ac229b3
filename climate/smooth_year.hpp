#pragma once

#include "climate/base/date.hpp"
#include "climate/daily_series.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace nightsow::climate {

/// Years on the axis of every fit: days since 2000-01-01 divided by 365.2425, so that leap days
/// need no rule.
[[nodiscard]] double years_since_2000(Date day);

/// How much of a shrunk trend is carried on: the warming of a whole record lies partly behind it.
/// Found on past seasons (see the backtest): 1 is worse, 0 is worse.
inline constexpr double trend_carried = 0.5;

/// The smooth course of one element: constant + linear trend + two harmonics of the year.
struct SmoothCurve {
  double constant_c = 0.0;  ///< mean level at `centre_year`, without season
  double centre_year = 0.0; ///< mean time of the values fitted, on the axis of years_since_2000
  double trend_c_per_year = 0.0;
  double trend_standard_error = 0.0; ///< widened for the persistence of the residuals
  std::array<double, 2> cosine_c{};  ///< of one and of two cycles a year
  std::array<double, 2> sine_c{};
  double residual_sd_c = 0.0;
  double residual_lag1 = 0.0; ///< correlation of one night's residual with the next
  std::size_t count = 0;      ///< values fitted
  bool trend_fitted = false;  ///< false when the record is too short to tell a trend from weather

  /// Level and season at the centre of the record, without trend: the same every year.
  [[nodiscard]] double season_c(Date day) const;

  /// The trend shrunk by its own uncertainty, b * b^2 / (b^2 + se^2).
  [[nodiscard]] double shrunk_trend_c_per_year() const;

  /// `trend_carried` of the shrunk trend: what carries past years to the present.
  [[nodiscard]] double carried_trend_c_per_year() const;

  /// Season, and the carried trend away from the centre of the record: today's climate, not that of
  /// the record's middle.
  [[nodiscard]] double value_c(Date day) const;

  /// value_c of that many days from `first` on.
  [[nodiscard]] std::vector<double> values_c(Date first, int days) const;
};

struct SmoothYear {
  SmoothCurve night;
  std::optional<SmoothCurve> day; ///< empty when there are too few maxima
};

/// The mean year of the calendar: the step of the axis of years_since_2000.
inline constexpr double days_a_year = 365.2425;

/// A record of fewer values than this cannot show a year.
inline constexpr std::size_t least_values_for_a_year = 300;

/// The trend is left out of records shorter than this: over so few years it is weather, and it
/// would lean on the season.
inline constexpr double least_years_for_a_trend = 10.0;

/// Values at times on the axis of years_since_2000, in the order of time. Same length.
struct TimedValues {
  std::vector<double> years;
  std::vector<double> values;
};

/// Least squares by column-pivoted QR, with or without the trend. Requires: more values than
/// coefficients (6).
[[nodiscard]] SmoothCurve fit_curve(const TimedValues& points, bool with_trend);

/// Whether the record, from its first value to its last, is long enough to tell a trend.
[[nodiscard]] bool spans_a_trend(Date first, std::span<const float> values);

/// fit_curve over the values that are there, with the trend where the record is long enough. Empty
/// when there are fewer than `least_values_for_a_year`, or when they leave a quarter of the year
/// bare.
[[nodiscard]] std::optional<SmoothCurve> fit_smooth_curve(Date first,
                                                          std::span<const float> values);

/// Empty when the nights cannot be fitted.
[[nodiscard]] std::optional<SmoothYear> fit_smooth_year(const DailySeries& series);

} // namespace nightsow::climate
