#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/saved_plan.hpp"

namespace nightsow::planner {

/// The plan beside the one saved last of its season: every packet of either that is new, gone or
/// sown, or whose verdict, route, planned day or last day is another, and what may be behind it.
/// Requires: both are of one season, and of all packets.
[[nodiscard]] SinceSaved since_saved(const SavedPlan& saved,
                                     const PlanAnswer& now,
                                     const LoadedGarden& garden);

} // namespace nightsow::planner
