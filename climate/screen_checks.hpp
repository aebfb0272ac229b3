#pragma once

#include "climate/base/date.hpp"
#include "climate/daily_series.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace nightsow::climate {

// Checks of screening, each on whole rows of values with one day a place; NaN is missing. After
// Durre, Menne, Gleason, Houston & Vose (2010), Comprehensive automated quality assurance of daily
// surface observations, J. Appl. Meteorol. Climatol. 49:1615-1633, as the archive GHCN-Daily
// documents them; what differs is said with each.

/// Month (1..12) and day of a leap year (1..366) of each day of a series.
struct CalendarDays {
  std::vector<std::uint8_t> month;
  std::vector<std::uint16_t> day_of_leap_year;
};

[[nodiscard]] CalendarDays calendar_days(Date first, std::size_t size);

/// A value that failed a check, and the value it was held against.
struct Doubt {
  std::size_t index = 0;
  float other_c = missing_c;
};

/// Night and day both 0.0 °C, or both -17.8 °C (0 °F): in the archive mostly missing values written
/// as naught. Half a tenth is allowed for.
[[nodiscard]] std::vector<std::size_t> both_naught(std::span<const float> night_c,
                                                   std::span<const float> day_c);

/// Equal values on consecutive days; missing days inside do not end a streak, holes of over a week
/// do.
struct Streak {
  std::size_t first = 0;
  std::size_t last = 0;
  int values = 0;
};

inline constexpr int least_streak = 15; ///< said from so many equal values on …
inline constexpr int stuck_streak = 20; ///< … and not used from so many on

[[nodiscard]] std::vector<Streak> streaks(std::span<const float> values_c);

/// The rarest checks need a month, or a time of year, that has been seen often enough (the 100 of
/// the archive's outlier check, used for gaps as well).
inline constexpr std::size_t least_values_to_judge = 100;

inline constexpr float gap_k = 10.0F;

/// Values of a calendar month beyond a gap of 10 K in its sorted values, counted outwards from the
/// median. Held against the nearest value within.
[[nodiscard]] std::vector<Doubt> beyond_gap(std::span<const float> values_c,
                                            const CalendarDays& calendar);

inline constexpr double outlier_sd = 6.0;
inline constexpr int outlier_window_days = 15;

/// Values six standard deviations or more from the mean of all years' values in the 15 calendar
/// days about their own. Mean and deviation are plain ones, taken twice: the second time without
/// the values that failed first (the publication takes biweight ones). Held against the mean.
[[nodiscard]] std::vector<Doubt> outliers(std::span<const float> values_c,
                                          const CalendarDays& calendar);

inline constexpr float spike_k = 25.0F; // threshold from memory of the publication's table

/// Values 25 K or more from those of the day before and of the day after, both of which must be
/// there. Held against the day before.
[[nodiscard]] std::vector<Doubt> spikes(std::span<const float> values_c);

inline constexpr float lagged_range_k = 40.0F; // from memory of the publication's table

/// Days 40 K or more above the warmest of the three nights about them.
[[nodiscard]] std::vector<Doubt> days_too_far(std::span<const float> night_c,
                                              std::span<const float> day_c);

/// Nights 40 K or more below the coldest of the three days about them.
[[nodiscard]] std::vector<Doubt> nights_too_far(std::span<const float> night_c,
                                                std::span<const float> day_c);

} // namespace nightsow::climate
