#include "planner/model/range_maximum.hpp"

#include <numeric>
#include <utility>

namespace nightsow::planner {

RangeMaximum::RangeMaximum(std::vector<double> values) : values_(std::move(values)) {
  const std::size_t size = values_.size();
  for (std::size_t length = 1; length <= size; length *= 2) {
    largest_.resize(largest_.size() + size);
  }
  std::iota(largest_.begin(), largest_.begin() + static_cast<std::ptrdiff_t>(size), 0);
  std::size_t level_begins = 0;
  for (std::size_t half = 1; 2 * half <= size; half *= 2) {
    const int* const halves = largest_.data() + level_begins;
    level_begins += size;
    int* const whole = largest_.data() + level_begins;
    for (std::size_t i = 0; i + 2 * half <= size; ++i) {
      whole[i] = value(halves[i + half]) > value(halves[i]) ? halves[i + half] : halves[i];
    }
  }
}

} // namespace nightsow::planner
