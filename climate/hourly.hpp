#pragma once

#include "climate/sun.hpp"

namespace nightsow::climate {

/// When the sun rose and set on a date and on the two beside it, solar hours.
struct SunsAround {
  SunTimes previous;
  SunTimes today;
  SunTimes next;
};

/// Extremes of the air of a date and of the two beside it. Minima are taken to fall at sunrise.
struct ExtremesAround {
  double previous_night_c = 0.0;
  double previous_day_c = 0.0;
  double night_c = 0.0;
  double day_c = 0.0;
  double next_night_c = 0.0;
};

/// The air of one hour is these shares of the extremes around it. They sum to 1; some can lie
/// outside 0..1.
struct HourShares {
  double previous_night = 0.0;
  double previous_day = 0.0;
  double night = 0.0;
  double day = 0.0;
  double next_night = 0.0;
};

/// The air at `hour` (0..24) of the date: a sine from sunrise to sunset, a logarithm through the
/// night before and the one after (Linvill 1990, HortScience 25: 14-16). The night's divisor is
/// ln(length + 1) on both sides of midnight, so that the curve has no step there. Where the sun
/// hardly rises or hardly sets (under two hours of day or of night) there is nothing to hang it on,
/// and the air swings as a plain cosine, coldest at 3, warmest at 15 (common practice, no source).
[[nodiscard]] HourShares hour_shares(const SunsAround& around, double hour);

[[nodiscard]] constexpr double hourly_air_c(const ExtremesAround& air, const HourShares& shares) {
  return shares.previous_night * air.previous_night_c + shares.previous_day * air.previous_day_c +
         shares.night * air.night_c + shares.day * air.day_c + shares.next_night * air.next_night_c;
}

/// Whether there is night enough for the curve of Linvill.
[[nodiscard]] bool rises_and_sets(const SunTimes& sun);

} // namespace nightsow::climate
