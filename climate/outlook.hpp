#pragma once

#include "climate/bench.hpp"
#include "climate/night_words.hpp"
#include "climate/phases.hpp"
#include "climate/seasons.hpp"
#include "climate/smooth_year.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace nightsow::climate {

/// Below so many usable past seasons a spread says little; each season then stands for several,
/// shifted in time and level.
inline constexpr int few_seasons = 5;

/// Many possible courses of one season at the bench: what has been observed, continued by what past
/// seasons brought, carried to today's climate. Two matrices, member-major: the nights of member m
/// stand at [m * days, (m + 1) * days).
struct Outlook {
  Date first{}; ///< the season's hottest night
  int days = 0;
  int members = 0;
  int observed_days = 0; ///< days from `first` on that come from readings; the same in all members
  int past_seasons = 0;  ///< usable seasons behind the members
  std::vector<float> night_c;
  std::vector<float> day_c;

  [[nodiscard]] std::span<const float> night_of(int member) const;
  [[nodiscard]] std::span<const float> day_of(int member) const;
};

/// Members are the usable past seasons (by nights missing), their nights and days raised by the
/// shrunk trend from their own year to the target season; up to the last reading every member is
/// what was observed, holes included. With fewer than `few_seasons` each season also stands shifted
/// by -10, +10 days and by -1, +1 K. Where the bench's nights are in doubt, each also stands with
/// its nights that much colder and warmer; what has been observed is left as it is. No usable
/// season: no members.
[[nodiscard]] Outlook season_outlook(const BenchAir& bench,
                                     const SmoothYear& smooth,
                                     const Phases& phases,
                                     const Season& season);

/// A spread of dates over members: percentiles of type 1 (the first date by which at least that
/// share of the members is there), empty when they lie in the never part.
struct DateSpread {
  std::optional<Date> p10;
  std::optional<Date> p50;
  std::optional<Date> p90;
  double never = 0.0;

  bool operator==(const DateSpread&) const = default;
};

/// Requires: days counted from `first`; an empty one is "never".
[[nodiscard]] DateSpread date_spread(Date first, std::vector<std::optional<int>> days);

/// Days over members on which first water is due where nights do not decide: the cooling limb has
/// begun, and the mean of the last 14 maxima lies at or under the day limit (where there is one).
/// `first_allowed` is a day after `first`.
[[nodiscard]] DateSpread outlook_mild_days(const Outlook& outlook,
                                           std::optional<Celsius> day_limit,
                                           int first_allowed);

/// The words over all members. A member's unknown window counts as not met.
struct OutlookWords {
  DateSpread stirs;
  DateSpread holds;
  DateSpread settles;
  std::vector<std::optional<int>> holds_day; ///< one a member, days after `first`
  NightWords observed;                       ///< of the nights that are known so far
  double relapse = 0.0; ///< share of members that turn warm again within 28 days of `holds`
};

[[nodiscard]] OutlookWords outlook_words(const Outlook& outlook,
                                         const NightLimit& limit,
                                         int first_allowed);

} // namespace nightsow::climate
