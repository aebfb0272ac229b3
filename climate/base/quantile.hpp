#pragma once

#include <vector>

namespace nightsow {

/// Sample quantile of type 7 or 8 after Hyndman & Fan (1996): linear between order statistics.
/// Values need not be sorted. Empty input gives NaN. 0 <= p <= 1, ends included.
[[nodiscard]] double quantile_type7(std::vector<double> values, double p);
[[nodiscard]] double quantile_type8(std::vector<double> values, double p);

} // namespace nightsow
