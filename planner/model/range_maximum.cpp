#include "planner/model/range_maximum.hpp"

#include <algorithm>
#include <bit>
#include <numeric>
#include <utility>

namespace nightsow::planner {

RangeMaximum::RangeMaximum(std::vector<double> values) : values_(std::move(values)) {
  std::vector<int> each(values_.size());
  std::iota(each.begin(), each.end(), 0);
  largest_.push_back(std::move(each));
  for (std::size_t half = 1; 2 * half <= values_.size(); half *= 2) {
    const std::vector<int>& halves = largest_.back();
    std::vector<int> whole(values_.size() - 2 * half + 1);
    for (std::size_t i = 0; i < whole.size(); ++i) {
      whole[i] = value(halves[i + half]) > value(halves[i]) ? halves[i + half] : halves[i];
    }
    largest_.push_back(std::move(whole));
  }
}

int RangeMaximum::of(int first, int last) const {
  const auto length = static_cast<unsigned>(std::max(1, last - first + 1));
  const auto level = static_cast<std::size_t>(std::bit_width(length) - 1);
  const int begins = largest_[level][static_cast<std::size_t>(first)];
  const int ends = largest_[level][static_cast<std::size_t>(last + 1) - (std::size_t{1} << level)];
  return value(ends) > value(begins) ? ends : begins;
}

} // namespace nightsow::planner
