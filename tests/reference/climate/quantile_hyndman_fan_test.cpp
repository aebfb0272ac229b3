// Hyndman & Fan (1996), Sample quantiles in statistical packages, The American Statistician 50(4):
// their types 7 and 8 as R's stats::quantile gives them.
#include "climate/base/quantile.hpp"

#include <gtest/gtest.h>

#include <array>
#include <vector>

namespace nightsow {
namespace {

TEST(QuantileHyndmanFan, FortiethPercentileOfFiveValues) {
  // Figures of R, as held in the tests of xclim (tests/test_utils.py, test_calc_perc_type7 and 8).
  const std::vector<double> values{15, 20, 35, 40, 50};
  EXPECT_NEAR(quantile_type7(values, 0.4), 29.0, 1e-9);
  EXPECT_NEAR(quantile_type8(values, 0.4), 27.0, 1e-9);
}

TEST(QuantileHyndmanFan, MedianBetweenTies) {
  // xclim, test_calc_perc_partial_nan: the four values that are there.
  EXPECT_NEAR(quantile_type8({41, 41, 43, 43}, 0.5), 42.0, 1e-9);
}

TEST(QuantileHyndmanFan, FivePointsOfTenValues) {
  // R 4.2, quantile(x, c(0, 0.1, 0.5, 0.9, 1), type = 7 and 8), data of climdex.pcic's test.
  const std::vector<double> values{5, 8, 1, 2, 10, 3, 9, 4, 7, 6};
  constexpr std::array shares{0.0, 0.1, 0.5, 0.9, 1.0};
  constexpr std::array type7{1.0, 1.9, 5.5, 9.1, 10.0};
  constexpr std::array type8{1.0, 1.36666666667, 5.5, 9.63333333333, 10.0};
  for (std::size_t i = 0; i < shares.size(); ++i) {
    EXPECT_NEAR(quantile_type7(values, shares[i]), type7[i], 1e-9) << shares[i];
    EXPECT_NEAR(quantile_type8(values, shares[i]), type8[i], 1e-9) << shares[i];
  }
}

} // namespace
} // namespace nightsow
