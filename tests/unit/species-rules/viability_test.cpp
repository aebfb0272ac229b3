#include "species-rules/viability.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

TEST(Viability, SeedAgesAtTheToldRateInTheRoom) {
  EXPECT_DOUBLE_EQ(ageing_factor(room_c), 1.0);
}

TEST(Viability, ColderSeedAgesMoreSlowlyThroughoutTheRange) {
  for (int store_c = -20; store_c < 90; ++store_c) {
    EXPECT_LT(ageing_factor(store_c), ageing_factor(store_c + 1)) << store_c;
  }
}

TEST(Viability, NineteenOfTwentySeedsAreSoundWhenHarvested) {
  EXPECT_NEAR(share_alive(5, 0), 0.95, 0.0001);
}

TEST(Viability, HalfIsAliveAfterTheHalfLife) {
  EXPECT_DOUBLE_EQ(share_alive(5, 5), 0.5);
  EXPECT_DOUBLE_EQ(share_alive(0.01, 0.01), 0.5);
}

TEST(Viability, TwoHalfLivesLeaveAsFewAliveAsWereDeadAtFirst) {
  EXPECT_NEAR(share_alive(5, 10), 0.05, 0.0001);
}

TEST(Viability, TheShareFallsWithTimeAndStaysAShare) {
  double before = 1.0;
  for (int years = 0; years <= 60; ++years) {
    const double alive = share_alive(4, years);
    EXPECT_LE(alive, before);
    EXPECT_GE(alive, 0.0);
    before = alive;
  }
}

} // namespace
} // namespace nightsow::species_rules
