#pragma once

#include "climate/base/date.hpp"
#include "climate/phases.hpp"

namespace nightsow::climate {

/// How many nights after the hottest one are searched for cool ones.
inline constexpr int nights_searched = 230;

/// A season runs from one hottest night to the day before the next, and is named by the calendar
/// year that holds the middle of its cooling limb.
struct Season {
  int name = 0;
  Date hottest{};
  Date limb_begins{};
  Date coldest{};
  Date next_hottest{};
  /// First day of its planning year: the middle of the warming limb before `hottest`.
  Date planning_begins{};
  /// First day of the next planning year.
  Date next_planning_begins{};
};

/// The last time the recurring day came on or before `from`.
[[nodiscard]] Date last_on_or_before(Date from, date::month_day day);

/// The first day after H on which `holds` may fall: the later of H + 13, the end of the first
/// window of 14 nights, and the start of the cooling limb.
[[nodiscard]] int first_allowed_day(const Season& season);

/// The same as a date.
[[nodiscard]] Date first_allowed_date(const Season& season);

[[nodiscard]] Season season_named(const Phases& phases, int name);

/// The season whose hottest night is the last one on or before the day.
[[nodiscard]] Season season_of(const Phases& phases, Date day);

/// The season whose planning year holds the day.
[[nodiscard]] Season season_planned_on(const Phases& phases, Date day);

/// The season to look at when `season` offers nothing more on `today`: the next one, or, when that
/// is over as well, the one that is planned on `today`.
[[nodiscard]] Season season_after(const Phases& phases, const Season& season, Date today);

} // namespace nightsow::climate
