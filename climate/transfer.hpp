#pragma once

#include "climate/daily_series.hpp"

#include <optional>
#include <span>

namespace nightsow::climate {

/// A straight line through pairs, y = level + slope (x - centre), and how far pairs stray from it.
struct RobustLine {
  double centre = 0.0; ///< mean of x
  double level = 0.0;  ///< y at the centre
  double slope = 1.0;
  double spread =
      0.0; ///< median of the absolute residuals / 0.6745: their sd, had they been normal
  int pairs = 0;

  [[nodiscard]] double at(double x) const { return level + slope * (x - centre); }
};

enum class SlopeOf { one, fitted };

/// Huber's M-estimate (Huber 1964), k = 1.345, by reweighted least squares, the scale taken anew
/// from the median absolute residual in every round. Chosen over Theil and Sen's median of slopes:
/// it takes time in proportion to the pairs, and what spoils a logger's readings (a door left open,
/// a night on the kitchen table) strays in y, where Huber resists, not in the station's x.
/// Requires: same length, two pairs or more, no NaN. All x alike: the slope stays one.
[[nodiscard]] RobustLine robust_line(std::span<const double> x,
                                     std::span<const double> y,
                                     SlopeOf slope = SlopeOf::fitted);

/// From how many paired nights on a logger counts for the other days of the year, too.
inline constexpr int least_pairs = 14;
/// A slope is fitted from so many pairs on, when the station's own readings spread so far (their
/// middle 80 %). A few weeks of one season do not show it, and would carry nonsense into the
/// others.
inline constexpr int least_pairs_for_slope = 60;
inline constexpr double least_range_for_slope_k = 6.0;
/// A logger's maximum so far above the station's was taken in the sun.
inline constexpr double most_day_rise_k = 8.0;

/// From the station's air to that beside a logger, nights and days apart. Empty where there are too
/// few pairs.
struct Transfer {
  std::optional<RobustLine> night;
  std::optional<RobustLine> day; ///< empty, too, when over a fifth of the days was in the sun
  int paired_nights = 0;
  int paired_days = 0; ///< those in the sun not among them
  int days_in_sun = 0;
};

/// Only nights that were observed at both count; the station's filled ones do not.
[[nodiscard]] Transfer fit_transfer(const DailySeries& station, const DailySeries& logger);

/// Whether a logger's maximum is to be doubted; false where either is missing.
[[nodiscard]] bool in_the_sun(double logger_day_c, double station_day_c);

} // namespace nightsow::climate
