#pragma once

#include <cstddef>
#include <vector>

namespace nightsow::planner {

/// Answers at once which day of a stretch has the largest value, however many stretches are asked
/// for.
class RangeMaximum {
public:
  explicit RangeMaximum(std::vector<double> values = {});

  /// The first of the largest. Requires: 0 <= first <= last, both within the row.
  [[nodiscard]] int of(int first, int last) const;

  [[nodiscard]] double value(int day) const { return values_[static_cast<std::size_t>(day)]; }

private:
  std::vector<double> values_;
  std::vector<std::vector<int>> largest_; ///< of the 2^level entries from each on, level by level
};

} // namespace nightsow::planner
