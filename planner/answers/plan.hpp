#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/saved_plan.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

struct PlanRequest {
  enum class Only { all, cool, hot };

  std::optional<int> season = std::nullopt; ///< empty: the season whose planning year holds today
  Only only = Only::all;                    ///< cool: all that is not sown in the hot season
  std::vector<SavedPlan> saved{};           ///< one a season; none of a day after today
};

/// This season's sowing plan: what, when first water, how, what waits and why. Where a plan of the
/// season was saved, its days and routes stay unless others gain something, and what is different
/// is told (of all packets only, not of `only` some).
/// Throws UsageError for a season outside of what the readings tell.
[[nodiscard]] PlanAnswer plan(const LoadedGarden& garden, const PlanRequest& request);

} // namespace nightsow::planner
