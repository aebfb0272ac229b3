#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/garden/load_garden.hpp"

#include <optional>

namespace nightsow::planner {

struct PlanRequest {
  enum class Only { all, cool, hot };

  std::optional<int> season = std::nullopt; ///< empty: the season whose planning year holds today
  Only only = Only::all;                    ///< cool: all that is not sown in the hot season
};

/// This season's sowing plan: what, when first water, how, what waits and why.
[[nodiscard]] PlanAnswer plan(const LoadedGarden& garden, const PlanRequest& request);

} // namespace nightsow::planner
