#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/garden/load_garden.hpp"

namespace nightsow::planner {

/// Lays the sowings on the grower's free days, within pots a day, places on benches and places on
/// mats: sets `sow_on` of each (empty: left over), `free_days`, and warnings that tell the cheapest
/// way out where something is left over. A sowing may be made dry on the free days before its first
/// water, or on later ones at the price of a week's delay, up to its last day. Lines without a day
/// stay as they are. Requires: `how` of each line is complete.
void lay_on_free_days(const LoadedGarden& garden, PlanAnswer& answer);

} // namespace nightsow::planner
