#pragma once

#include "planner/answers/saved_answer.hpp"
#include "planner/garden/load_garden.hpp"

namespace nightsow::planner {

/// Short marks of what a plan is made from, besides readings: the same facts give the same mark on
/// every machine, other ones almost surely another. A packet's mark knows what was acquired, not
/// how much of it is left.
[[nodiscard]] PlanMarks plan_marks(const LoadedGarden& garden);

} // namespace nightsow::planner
