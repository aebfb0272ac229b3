#pragma once

#include "planner/answers/plan.hpp"
#include "planner/answers/whatif_answer.hpp"
#include "planner/garden/change.hpp"

#include <span>
#include <vector>

namespace nightsow::planner {

struct WhatIfRequest {
  std::vector<Change> changes; ///< applied one after the other
  PlanRequest plan;
};

/// The plan as it is beside the plan under the changes.
[[nodiscard]] WhatIfAnswer whatif(const LoadedGarden& garden, const WhatIfRequest& request);

/// The plan under the changes, made so much warmer, for each value in turn.
[[nodiscard]] SweepAnswer whatif_sweep(const LoadedGarden& garden,
                                       const WhatIfRequest& request,
                                       std::span<const double> by_k);

} // namespace nightsow::planner
