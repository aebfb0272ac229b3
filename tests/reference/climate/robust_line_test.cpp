// R's own robust regression: robust_line.R beside this test, its output in robust_line.txt
// (R 4.2.2, MASS 7.3-58.2).
#include "climate/transfer.hpp"

#include <gtest/gtest.h>

#include <array>

namespace nightsow::climate {
namespace {

constexpr std::array station{3.1,  4.4,  5.0,  5.2,  6.7,  7.3,  7.9,  8.8,  9.1,  9.6,
                             10.3, 11.0, 11.4, 12.2, 12.9, 13.5, 14.1, 14.8, 15.6, 16.2};
constexpr std::array logger{5.6,  6.2,  7.4,  7.0,  8.9,  9.0, 9.9,  19.5, 10.8, 11.0,
                            12.1, 12.3, 13.1, 13.4, 14.6, 4.0, 15.4, 16.2, 16.5, 17.8};

TEST(RobustLine, IsTheLineOfAnIndependentComputation) {
  const RobustLine line = robust_line(station, logger);
  EXPECT_NEAR(line.level, 11.6321002783, 1e-6);
  EXPECT_NEAR(line.slope, 0.9112154848, 1e-6);
  EXPECT_NEAR(line.spread, 0.4104453162, 1e-5);
}

TEST(RobustLine, WithItsSlopeAtOneIsTheLevelOfAnIndependentComputation) {
  const RobustLine line = robust_line(station, logger, SlopeOf::one);
  EXPECT_NEAR(line.level - line.centre, 1.6798813936, 1e-6);
  EXPECT_NEAR(line.spread, 0.4447739066, 1e-5);
}

} // namespace
} // namespace nightsow::climate
