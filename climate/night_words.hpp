#pragma once

#include "climate/base/celsius.hpp"
#include "climate/base/date.hpp"

#include <compare>
#include <optional>
#include <span>

namespace nightsow::climate {

// House constants of `holds`, `settles` and relapse.
inline constexpr int holds_nights = 10; ///< nights at or under the limit …
inline constexpr int holds_of = 14;     ///< … of so many
inline constexpr double holds_day_weight = 0.5;
inline constexpr int settles_most_warm = 2; ///< of the `holds_of` nights that follow
inline constexpr int relapse_window = 7;
inline constexpr int relapse_within = 28;
inline constexpr int binds_slack_days = 3;
/// The day term of `holds` is the mean of the maxima that are there, when at least so many of the
/// 14 are; otherwise it is left out (common practice, no source).
inline constexpr int holds_least_maxima = 7;

/// When nights are cool enough for a kind of seed, counted on bench air.
struct NightLimit {
  Celsius at_or_under;
  std::optional<Celsius> day_limit = std::nullopt;
  int nights = 5; ///< of the last …
  int of = 7;

  auto operator<=>(const NightLimit&) const = default;
};

/// A day counted from the hottest night (0). `unknown`: missing nights could change the answer;
/// then `day` is the first day on which it is certainly met.
struct WordDay {
  std::optional<int> day;
  bool unknown = false;

  bool operator==(const WordDay&) const = default;
};

struct NightWords {
  WordDay stirs;   ///< N of the last M nights at or under the limit, first met
  WordDay holds;   ///< see hold_level; the earliest day to act on
  WordDay settles; ///< from stirs on: at most 2 of the 14 nights that follow are warm
  bool day_limit_left_out = false; ///< `holds` was met with too few maxima for the day term
};

/// The words of one season. `night_c` and `day_c` begin on the hottest night; NaN is missing; the
/// shorter of them does not limit the longer (missing maxima leave the day term out).
/// `first_allowed` is the first day `holds` may fall on, see first_allowed_day in seasons.hpp.
[[nodiscard]] NightWords night_words(std::span<const float> night_c,
                                     std::span<const float> day_c,
                                     const NightLimit& limit,
                                     int first_allowed);

/// c(t): the 10th smallest of 14 nights + 0.5 * max(0, mean of their 14 maxima - day limit). Both
/// spans end on t; NaN nights count as `missing_as`. Requires: night_c.size() == holds_of.
struct HoldLevel {
  double level_c = 0.0;
  bool day_limit_left_out = false;
};

[[nodiscard]] HoldLevel hold_level(std::span<const float> night_c,
                                   std::span<const float> day_c,
                                   const NightLimit& limit,
                                   double missing_as);

/// First day from `first_allowed` on with a mean of the last 14 maxima at or under the day limit,
/// in the same way as in hold_level; without a limit, or where maxima are missing, `first_allowed`.
[[nodiscard]] std::optional<int> first_mild_day(std::span<const float> day_c,
                                                std::optional<Celsius> day_limit,
                                                int first_allowed);

/// Mean of the values that are there; empty when fewer than `least` are.
[[nodiscard]] std::optional<double> mean_of_those_there(std::span<const float> values_c, int least);

/// Whether a 7-night mean above the limit ends within 28 days after day `after` (windows wholly
/// after it). Windows with a missing night are passed over.
[[nodiscard]] bool relapses(std::span<const float> night_c, const NightLimit& limit, int after);

/// How many of the last `of` nights up to and including index `last` lie at or under the
/// limit, and how many are missing.
struct NightCount {
  int cool = 0;
  int missing = 0;
  int of = 0;
};

[[nodiscard]] NightCount count_nights(std::span<const float> night_c,
                                      std::size_t last,
                                      Celsius at_or_under_limit,
                                      int of);

} // namespace nightsow::climate
