#pragma once

#include "planner/answers/plan_answer.hpp"

#include <string>
#include <vector>

namespace nightsow::planner {

/// Leaves only the lines asked for in a plan, and the trays and work in which they take part; what
/// has to be bought for all of it goes. A name is a packet's id, or the beginning of its taxon as
/// written or accepted, capitals or not. No names: the plan as it is. Throws UsageError on a name
/// that no packet has, with the nearest right one.
void keep_asked(const std::vector<std::string>& names, PlanAnswer& answer);

} // namespace nightsow::planner
