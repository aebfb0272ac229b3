#pragma once

#include "climate/daily_series.hpp"

#include <span>

namespace nightsow::climate {

// Where only monthly normals are known, years are drawn from them: the course of the normals, and
// on it departures as nights usually have them. Nothing in them was measured.

inline constexpr double drawn_night_sd_k = 2.5; ///< common practice, no source
inline constexpr double drawn_day_sd_k = 3.5;   ///< common practice, no source
/// Of a night's departure so much lasts to the next (common practice, no source; 0.4 to 0.8 at
/// stations).
inline constexpr double drawn_lag1 = 0.6;
/// Correlation of a day's departure with that of its night (common practice, no source).
inline constexpr double drawn_night_day = 0.5;

/// `days` days from `first` on. Departures are sums of many sine waves whose periods share out the
/// spectrum of a first-order autoregression evenly: they have its deviation and its persistence,
/// come near a normal distribution, and hold no random number. The same day always has the same
/// value. Requires: twelve means each.
[[nodiscard]] DailySeries drawn_years(std::span<const double> night_mean_c,
                                      std::span<const double> day_mean_c,
                                      Date first,
                                      int days);

} // namespace nightsow::climate
