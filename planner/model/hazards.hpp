#pragma once

#include <cmath>
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

/// The sums up to and with each day.
[[nodiscard]] std::vector<double> running_sums(const std::vector<double>& days);

/// The sum over the days first..last, both included, from a row of sums up to and with each day.
/// Nothing where last < first.
[[nodiscard]] inline double between(const std::vector<double>& sums, int first, int last) {
  if (last < first) {
    return 0.0;
  }
  const double before = first > 0 ? sums[static_cast<std::size_t>(first) - 1] : 0.0;
  return sums[static_cast<std::size_t>(last)] - before;
}

/// What lives through the days of a course under hazards that add up, for many stretches of them:
/// as a quotient of two shares, as long as no share is too small for that.
class Survival {
public:
  /// Hazards up to and with each day.
  explicit Survival(std::vector<double> sums);

  /// Share that lives from the beginning of one day to the end of another; 1 where last < first.
  [[nodiscard]] double share(int first, int last) const {
    if (last < first) {
      return 1.0;
    }
    return left_.empty()
               ? std::exp(-between(sums_, first, last))
               : left_[static_cast<std::size_t>(last) + 1] / left_[static_cast<std::size_t>(first)];
  }

private:
  std::vector<double> left_; ///< by the beginning of each day; empty: too little for quotients
  std::vector<double> sums_; ///< where there are none
};

} // namespace nightsow::planner
