#pragma once

#include "climate/outlook.hpp"
#include "planner/answers/spread.hpp"

namespace nightsow::planner {

// Figures are rounded once, here, when an answer is made: °C, years and plants to 0.1, shares to
// 0.001.

[[nodiscard]] double rounded_tenth(double value);
[[nodiscard]] double rounded_share(double share);
[[nodiscard]] Spread to_spread(const climate::DateSpread& spread);

} // namespace nightsow::planner
