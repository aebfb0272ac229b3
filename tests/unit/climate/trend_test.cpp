#include "climate/trend.hpp"

#include <gtest/gtest.h>

#include <array>
#include <vector>

namespace nightsow::climate {
namespace {

TEST(MannKendall, OfEqualValuesShowsNoTrend) {
  const MannKendall test = mann_kendall(std::array{4.0, 4.0, 4.0, 4.0});
  EXPECT_EQ(test.s, 0.0);
  EXPECT_EQ(test.z, 0.0);
  EXPECT_EQ(test.p_value, 1.0);
}

TEST(MannKendall, OfOneValueShowsNoTrend) {
  EXPECT_EQ(mann_kendall(std::array{4.0}).p_value, 1.0);
  EXPECT_EQ(mann_kendall(std::vector<double>{}).p_value, 1.0);
}

TEST(MannKendall, TurnsItsSignWithTheValues) {
  const std::array rising{1.0, 2.0, 4.0, 3.0, 5.0, 7.0};
  const std::array falling{7.0, 5.0, 3.0, 4.0, 2.0, 1.0};
  EXPECT_EQ(mann_kendall(rising).s, 13.0);
  EXPECT_EQ(mann_kendall(falling).z, -mann_kendall(rising).z);
}

TEST(TheilSen, OfAStraightLineIsItsSlopeAndIntercept) {
  std::vector<double> times;
  std::vector<double> values;
  for (int i = 0; i < 12; ++i) {
    times.push_back(2000.0 + i);
    values.push_back(3.0 - 0.5 * i);
  }
  const TheilSen trend = theil_sen(times, values).value();
  EXPECT_DOUBLE_EQ(trend.slope, -0.5);
  EXPECT_DOUBLE_EQ(trend.low, -0.5);
  EXPECT_DOUBLE_EQ(trend.high, -0.5);
}

TEST(TheilSen, IsNotMovedByOneWildValue) {
  std::vector<double> times;
  std::vector<double> values;
  for (int i = 0; i < 21; ++i) {
    times.push_back(i);
    values.push_back(0.1 * i + (i % 2 == 0 ? 0.2 : -0.2));
  }
  values[20] = 1000.0;
  const TheilSen trend = theil_sen(times, values).value();
  EXPECT_NEAR(trend.slope, 0.1, 0.03);
  EXPECT_LT(trend.low, trend.slope);
  EXPECT_GT(trend.high, trend.slope);
}

TEST(TheilSen, NeedsTwoTimes) {
  EXPECT_FALSE(theil_sen(std::array{1.0, 1.0}, std::array{2.0, 3.0}));
  EXPECT_FALSE(theil_sen(std::array{1.0}, std::array{2.0}));
}

TEST(TheilSen, OfFewPointsHasLimitsWithinItsSlopes) {
  const TheilSen trend = theil_sen(std::array{0.0, 1.0, 2.0}, std::array{0.0, 5.0, 6.0}).value();
  EXPECT_EQ(trend.slope, 3.0);
  EXPECT_EQ(trend.low, 1.0);
  EXPECT_EQ(trend.high, 5.0);
}

} // namespace
} // namespace nightsow::climate
