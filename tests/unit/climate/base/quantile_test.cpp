#include "climate/base/quantile.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace nightsow {
namespace {

TEST(Quantile, OfNothingIsMissing) {
  EXPECT_TRUE(std::isnan(quantile_type7({}, 0.5)));
  EXPECT_TRUE(std::isnan(quantile_type8({}, 0.5)));
}

TEST(Quantile, OfOneValueIsThatValue) {
  for (const double p : {0.0, 0.1, 0.5, 0.9, 1.0}) {
    EXPECT_DOUBLE_EQ(quantile_type7({4.5}, p), 4.5);
    EXPECT_DOUBLE_EQ(quantile_type8({4.5}, p), 4.5);
  }
}

TEST(Quantile, ValuesNeedNoOrder) {
  EXPECT_DOUBLE_EQ(quantile_type7({9, 1, 5}, 0.5), 5.0);
  EXPECT_DOUBLE_EQ(quantile_type8({9, 1, 5}, 0.5), 5.0);
}

TEST(Quantile, TheEndsAreTheExtremes) {
  EXPECT_DOUBLE_EQ(quantile_type7({3, 1, 2}, 0.0), 1.0);
  EXPECT_DOUBLE_EQ(quantile_type7({3, 1, 2}, 1.0), 3.0);
  EXPECT_DOUBLE_EQ(quantile_type8({3, 1, 2}, 0.0), 1.0);
  EXPECT_DOUBLE_EQ(quantile_type8({3, 1, 2}, 1.0), 3.0);
}

TEST(Quantile, AShareThatFallsOnAValueGivesThatValue) {
  EXPECT_DOUBLE_EQ(quantile_type7({10, 20, 30, 40, 50, 60}, 0.2), 20.0);
  EXPECT_DOUBLE_EQ(quantile_type7({10, 20, 30, 40, 50, 60}, 0.6), 40.0);
}

} // namespace
} // namespace nightsow
