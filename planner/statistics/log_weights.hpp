#pragma once

#include <vector>

namespace nightsow::planner {

/// Weights of which the natural logarithms are known up to a common constant, as shares that sum to
/// 1. Requires: not empty, one of them finite.
[[nodiscard]] std::vector<double> shares_of_logs(std::vector<double> logs);

} // namespace nightsow::planner
