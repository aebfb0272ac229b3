#pragma once

#include <algorithm>
#include <bit>
#include <cstddef>
#include <vector>

namespace nightsow::planner {

/// Answers at once which day of a stretch has the largest value, however many stretches are asked
/// for.
class RangeMaximum {
public:
  explicit RangeMaximum(std::vector<double> values = {});

  /// The first of the largest. Requires: 0 <= first <= last, both within the row.
  [[nodiscard]] int of(int first, int last) const {
    const auto length = static_cast<unsigned>(std::max(1, last - first + 1));
    const auto level = static_cast<std::size_t>(std::bit_width(length) - 1);
    const int* const from = largest_.data() + level * values_.size();
    const int begins = from[first];
    const int ends = from[last + 1 - (1 << level)];
    return value(ends) > value(begins) ? ends : begins;
  }

  [[nodiscard]] double value(int day) const { return values_[static_cast<std::size_t>(day)]; }

  [[nodiscard]] std::size_t size() const { return values_.size(); }

private:
  std::vector<double> values_;
  std::vector<int> largest_; ///< of the 2^level entries from each on, level after level
};

} // namespace nightsow::planner
