#pragma once

#include "planner/answers/account_answer.hpp"

#include <string>
#include <vector>

namespace nightsow::planner {

/// Expected against counted, a line a point: "-" the range that holds 8 in 10 cases, "+" its mean,
/// "o" what was counted. Whole lines; empty without points.
[[nodiscard]] std::string account_chart(const std::vector<CurvePoint>& curve, int seeds);

} // namespace nightsow::planner
