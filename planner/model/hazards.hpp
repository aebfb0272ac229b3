#pragma once

#include <cstddef>
#include <vector>

namespace nightsow::planner {

// Losses as hazards: -ln(1 - loss). They add up over days, and what several of them take together
// is shared in proportion to each.

/// Not above 30, which leaves nothing. Requires: loss in 0..1.
[[nodiscard]] double hazard_of(double loss);

/// The other way round: 1 - exp(-hazard). Requires: hazard >= 0.
[[nodiscard]] double loss_of(double hazard);

/// A hazard's part of what all of them took together.
[[nodiscard]] inline double part_of(double lost, double hazard, double all_hazards) {
  return all_hazards > 0.0 ? lost * hazard / all_hazards : 0.0;
}

/// The sum over the days first..last, both included, from a row of sums up to and with each day.
/// Nothing where last < first.
[[nodiscard]] inline double between(const std::vector<double>& sums, int first, int last) {
  if (last < first) {
    return 0.0;
  }
  const double before = first > 0 ? sums[static_cast<std::size_t>(first) - 1] : 0.0;
  return sums[static_cast<std::size_t>(last)] - before;
}

} // namespace nightsow::planner
