#include "species-rules/development.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace nightsow::species_rules {
namespace {

TEST(Development, IsATriangleBetweenBaseAndCeiling) {
  const CardinalTemperatures cardinal{3.0, 17.0, 28.0};
  for (const auto& [seed_c, rate] : {std::pair{-5.0, 0.0},
                                     {3.0, 0.0},
                                     {10.0, 7.0},
                                     {17.0, 14.0},
                                     {22.5, 7.0},
                                     {28.0, 0.0},
                                     {45.0, 0.0}}) {
    EXPECT_DOUBLE_EQ(thermal_rate(seed_c, cardinal), rate) << seed_c;
  }
}

TEST(Development, ASwingHelpsTheMoreItIsNeeded) {
  for (const Swing need : {Swing::needed, Swing::helpful, Swing::indifferent}) {
    EXPECT_NEAR(swing_factor(30.0, need), 1.0, 1e-6);
    EXPECT_LT(swing_factor(2.0, need), swing_factor(12.0, need));
  }
  EXPECT_NEAR(swing_factor(6.0, Swing::needed), 0.55, 1e-12);
  EXPECT_NEAR(swing_factor(6.0, Swing::helpful), 0.8, 1e-12);
  EXPECT_NEAR(swing_factor(6.0, Swing::indifferent), 0.925, 1e-12);
}

TEST(Development, HalfIsUpAtTheThermalTimeAndNothingBeforeAnyPassed) {
  EXPECT_DOUBLE_EQ(emerged_share(150.0, 150.0, 0.35), 0.5);
  EXPECT_EQ(emerged_share(0.0, 150.0, 0.35), 0.0);
  EXPECT_EQ(emerged_share(-1.0, 150.0, 0.35), 0.0);
}

TEST(Development, WithoutSpreadAllComeUpTogether) {
  EXPECT_EQ(emerged_share(149.9, 150.0, 0.0), 0.0);
  EXPECT_EQ(emerged_share(150.0, 150.0, 0.0), 1.0);
  EXPECT_DOUBLE_EQ(emergence_time_c_d(0.1, 150.0, 0.0), 150.0);
}

TEST(Development, TheTimeOfAShareAndTheShareOfATimeAgree) {
  for (const double share : {0.05, 0.1, 0.5, 0.8, 0.99}) {
    EXPECT_NEAR(emerged_share(emergence_time_c_d(share, 210.0, 0.35), 210.0, 0.35), share, 1e-12);
  }
}

} // namespace
} // namespace nightsow::species_rules
