#pragma once

#include "planner/answers/plan.hpp"
#include "planner/answers/today_answer.hpp"
#include "planner/garden/load_garden.hpp"

namespace nightsow::planner {

// Common practice, no source.
inline constexpr double frost_alarm_c = 3.0; ///< in air: under a clear sky pots are colder
inline constexpr double heat_alarm_c = 35.0; ///< where no tray on the bench has a limit of its own
inline constexpr int alarm_days_ahead = 3;   ///< of a forecast, today included
inline constexpr int alarm_days_back = 3;    ///< of the readings, where no forecast tells
inline constexpr int coming_days = 7;

/// What there is to do today and in the coming week, over all trays, and what to keep pots from.
[[nodiscard]] TodayAnswer today(const LoadedGarden& garden, const PlanRequest& request = {});

} // namespace nightsow::planner
