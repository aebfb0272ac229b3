#pragma once

#include "climate/sun.hpp"

namespace nightsow::climate {

/// What the air of one hour follows from: the extremes of its date and of the two beside it, and
/// when the sun rose and set. Solar hours throughout.
struct HourlyDay {
  double night_c = 0.0; ///< the date's minimum, taken to fall at sunrise
  double day_c = 0.0;
  double next_night_c = 0.0;
  SunTimes sun;
  SunTimes next_sun;
  double previous_night_c = 0.0;
  double previous_day_c = 0.0;
  SunTimes previous_sun;
};

/// The air at `hour` (0..24) of the date: a sine from sunrise to sunset, a logarithm through the
/// night before and the one after (Linvill 1990, HortScience 25: 14-16). The night's divisor is
/// ln(length + 1) on both sides of midnight, so that the curve has no step there. Where the sun
/// hardly rises or hardly sets (under two hours of day or of night) there is nothing to hang it on,
/// and the air swings as a plain cosine, coldest at 3, warmest at 15 (common practice, no source).
[[nodiscard]] double hourly_air_c(const HourlyDay& day, double hour);

/// Whether there is night enough for the curve of Linvill.
[[nodiscard]] bool rises_and_sets(const SunTimes& sun);

} // namespace nightsow::climate
