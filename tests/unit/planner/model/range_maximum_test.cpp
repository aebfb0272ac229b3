#include "planner/model/range_maximum.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

namespace nightsow::planner {
namespace {

TEST(RangeMaximum, IsTheFirstOfTheLargestOfEveryStretch) {
  const std::vector<double> values{2.0, 7.0, 1.0, 7.0, 3.0, 3.0, 9.0, 0.0, 4.0, 9.0, 9.0};
  const RangeMaximum largest{values};
  const auto days = static_cast<int>(values.size());
  for (int first = 0; first < days; ++first) {
    for (int last = first; last < days; ++last) {
      const auto found =
          std::max_element(values.begin() + first, values.begin() + last + 1) - values.begin();
      EXPECT_EQ(largest.of(first, last), found) << first << " to " << last;
    }
  }
}

} // namespace
} // namespace nightsow::planner
