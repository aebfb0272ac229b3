#pragma once

#include "climate/bench.hpp"
#include "climate/departures.hpp"
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
/// raised and lowered too.
inline constexpr int few_seasons = 5;

/// Older seasons than these many are left aside: their climate is not today's.
inline constexpr int most_seasons = 40;

/// What past seasons lend to another one.
struct PastCourses {
  SmoothYear smooth;  ///< what departures are from: fitted to these readings
  SmoothYear present; ///< what members are put on: as it is known today, the trend carried on
  Departures departures;
  std::vector<Season> seasons; ///< usable ones (by nights missing), oldest first
};

/// The present is another smooth year than that of the readings where these are few and lean on
/// something else (lean_on_normals.hpp).
[[nodiscard]] PastCourses past_courses(const BenchAir& bench,
                                       const SmoothYear& smooth,
                                       const SmoothYear& present,
                                       const Phases& phases);

/// The same where the readings alone tell the present.
[[nodiscard]] PastCourses past_courses(const BenchAir& bench,
                                       const SmoothYear& smooth,
                                       const Phases& phases);

/// Many possible courses of one season at the bench: what has been observed, continued by what past
/// seasons brought, carried to today's climate. Two matrices, member-major: the nights of member m
/// stand at [m * days, (m + 1) * days).
struct Outlook {
  Date first{}; ///< the season's hottest night
  int days = 0;
  int members = 0;
  int observed_days = 0; ///< days from `first` on up to the last night that was read
  int forecast_days = 0; ///< nights after them that a forecast had a say in
  int past_seasons = 0;  ///< usable seasons behind the members
  std::vector<float> night_c;
  std::vector<float> day_c;
  std::vector<float> observed_night_c; ///< `observed_days` of them as they were read, holes open
  std::vector<float> observed_day_c;

  [[nodiscard]] std::span<const float> night_of(int member) const;
  [[nodiscard]] std::span<const float> day_of(int member) const;
};

/// A member is the smooth year of the season, and on it the departures of one past season, as they
/// were or shifted by one or two weeks either way. What the last days known differed from those of
/// that past season is added as far as weather remembers it (persistence.hpp), so that members
/// start from what has been observed and part by and by. What has been read is the same in all
/// members; a day in between that nobody read is each member's own, as uncertain as one to come.
/// What a past season lacks is taken as usual.
///
/// Members stray from their mean by `stray_factor` of what they did, so that the ranges told hold
/// what they say. A forecast (known.forecast) is weighed against the members by what each usually
/// misses, see forecast_error_k; members go on from there.
///
/// With fewer than `few_seasons` each member also stands 1 K lower and higher. Where the bench's
/// nights are in doubt, each also stands with its nights that much colder and warmer. No usable
/// season before this one: no members.
[[nodiscard]] Outlook season_outlook(const PastCourses& past,
                                     const BenchAir& known,
                                     const Season& season);

/// How much wider (above 1) or narrower members stray from their mean so many days ahead than past
/// seasons did: 0.75 up to 8 days ahead, 1.1 from 14 on. Found on past seasons, so that the 80 %
/// interval covers four dates in five.
[[nodiscard]] double stray_factor(int days_ahead);

/// Usual error of a forecast of one night or day, standard deviation in K: 1.6 on its first day,
/// 0.2 more each day after (of the size that global forecasts show at stations on land; from
/// memory, no source at hand).
[[nodiscard]] double forecast_error_k(int day_of_forecast);

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
