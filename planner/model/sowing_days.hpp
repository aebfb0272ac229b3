#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/garden.hpp"

#include <optional>
#include <span>

namespace nightsow::planner {

/// So many days are looked at for one to sow on.
inline constexpr int sowing_days_searched = 366;

/// Whether the day lies in one of the periods in which the grower is away.
[[nodiscard]] bool is_away(std::span<const AwayPeriod> away, Date day);

/// Whether the grower sows on that day: one of the garden's weekdays (any, when it names none) and
/// not away.
[[nodiscard]] bool is_sowing_day(const Garden& garden, Date day);

/// The day nearest to `day` on which the grower is there: before it, but not before `earliest`,
/// else after it.
[[nodiscard]] Date nearest_day_there(std::span<const AwayPeriod> away, Date day, Date earliest);

/// The day on which to put the seed into its pot, dry, for a first water expected on `water`: the
/// last sowing day from `today` to `water`, else the first after it. Empty when there is none
/// within a year.
[[nodiscard]] std::optional<Date> sowing_day_for(const Garden& garden, Date today, Date water);

} // namespace nightsow::planner
