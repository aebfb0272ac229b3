#pragma once

#include "climate/base/date.hpp"
#include "climate/departures.hpp"

namespace nightsow::climate {

/// How much of what the last days were like is still there so many days ahead: weights of four
/// things that the weather remembers, each a departure from the smooth year in K. They belong
/// together: least squares of the departure ahead on all four at once.
struct MemoryWeights {
  double last_night = 0.0;
  double last_day = 0.0;
  double mean_30 = 0.0; ///< of the last 30 nights (for a night ahead) or days (for a day ahead)
  double mean_90 = 0.0;
};

/// Nothing is remembered from so many days ahead on.
inline constexpr int memory_days = 140;

/// House constants, linear between knots. Fitted on 24 open station records of 31 to 108 years
/// together; DEVELOPERS.md says how and what they are worth. `days_ahead` counts from the last
/// night known (that of `last_day` from the last maximum), 1 is the next.
[[nodiscard]] MemoryWeights night_memory(int days_ahead);
[[nodiscard]] MemoryWeights day_memory(int days_ahead);

/// The last days of one course of weather, K from the smooth year; NaN where too little is known.
struct LastDays {
  double last_night = 0.0;
  double last_day = 0.0;
  double night_mean_30 = 0.0;
  double night_mean_90 = 0.0;
  double day_mean_30 = 0.0;
  double day_mean_90 = 0.0;
};

[[nodiscard]] LastDays last_days(const Departures& departures, Date last_night, Date last_day);

/// By how much the first course differed from the second one; unknown differences are 0.
[[nodiscard]] LastDays difference(const LastDays& first, const LastDays& second);

/// What a difference of the last days leaves of itself in a night, or a day, ahead, K.
[[nodiscard]] double remembered_night_k(const LastDays& difference, const MemoryWeights& weights);
[[nodiscard]] double remembered_day_k(const LastDays& difference, const MemoryWeights& weights);

} // namespace nightsow::climate
