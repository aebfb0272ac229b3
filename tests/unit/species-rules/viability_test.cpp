#include "species-rules/viability.hpp"

#include "species-rules/seed_moisture.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

TEST(Viability, SeedAgesAtTheToldRateInTheRoom) {
  EXPECT_DOUBLE_EQ(ageing_factor(room_c, room_humidity), 1.0);
}

TEST(Viability, ColderSeedAgesMoreSlowlyThroughoutTheRange) {
  for (int store_c = -20; store_c < 90; ++store_c) {
    EXPECT_LT(ageing_factor(store_c, room_humidity), ageing_factor(store_c + 1, room_humidity))
        << store_c;
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

// Half-lives are told for a dry room, whatever the seed.
TEST(Viability, SeedThatDiesDryAgesAtTheToldRateInTheDryRoomToo) {
  EXPECT_DOUBLE_EQ(recalcitrant_ageing_factor(room_c, 0.45), 1.0);
  EXPECT_DOUBLE_EQ(ageing_factor(SeedStorage::recalcitrant, room_c, 0.45), 1.0);
}

TEST(Viability, SeedThatDiesDryLivesLongerTheDamperAndAboveFrostTheCoolerItLies) {
  for (int percent = 15; percent < 100; percent += 5) {
    EXPECT_GT(recalcitrant_ageing_factor(5, percent / 100.0),
              recalcitrant_ageing_factor(5, (percent + 5) / 100.0));
  }
  for (int store_c = 0; store_c < 30; ++store_c) {
    EXPECT_LT(recalcitrant_ageing_factor(store_c, 0.85),
              recalcitrant_ageing_factor(store_c + 1, 0.85));
  }
  EXPECT_GT(recalcitrant_ageing_factor(-1, 0.85), recalcitrant_ageing_factor(30, 0.15));
}

// Growers give such seed some weeks in the fridge, not seasons (list posts on Haemanthus,
// Melbourne, 2020: several weeks at most).
TEST(Viability, AFridgeHoldsSeedThatDiesDryForWeeksAndNotForSeasons) {
  const double half_life_years = 0.12; // of the fleshy amaryllids
  const double damp = recalcitrant_ageing_factor(5, 0.85);
  EXPECT_GT(share_alive(half_life_years, 28 / 365.25 * damp), 0.85);
  EXPECT_LT(share_alive(half_life_years, damp), 0.05);
}

} // namespace
} // namespace nightsow::species_rules
