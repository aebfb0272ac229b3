#pragma once

#include <cmath>

namespace nightsow::planner {

/// A figure that is worked out when first asked for: NaN until then.
template <class Work> [[nodiscard]] double once(double& kept, Work work) {
  if (std::isnan(kept)) {
    kept = work();
  }
  return kept;
}

} // namespace nightsow::planner
