#include "species-rules/wet_losses.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace nightsow::species_rules {
namespace {

TEST(WaitingLoss, DoublesWithEachTenKelvinAndNeverPassesAll) {
  EXPECT_DOUBLE_EQ(waiting_loss(20.0, 0.0005), 0.0005);
  EXPECT_DOUBLE_EQ(waiting_loss(30.0, 0.0005), 0.001);
  EXPECT_DOUBLE_EQ(waiting_loss(10.0, 0.0005), 0.00025);
  EXPECT_DOUBLE_EQ(waiting_loss(60.0, 0.5), 1.0);
}

TEST(DampingOff, IsWorstAtTwentyEightDegreesAndSparesTheCold) {
  EXPECT_DOUBLE_EQ(damping_off(28.0, 0.02), 0.02);
  EXPECT_EQ(damping_off(3.0, 0.02), 0.0);
  EXPECT_EQ(damping_off(38.0, 0.02), 0.0);
  EXPECT_LT(damping_off(10.0, 0.02), damping_off(15.0, 0.02));
  EXPECT_LT(damping_off(15.0, 0.02), damping_off(22.0, 0.02));
}

TEST(DampingOff, UsedMixIsWorseThanCleanMineralMix) {
  EXPECT_GT(damping_off_at_best(MixHygiene::used), damping_off_at_best(MixHygiene::clean_mineral));
}

TEST(DampingOff, LetsUpAsSeedlingsAgeButNotWholly) {
  for (const auto& [age_days, relief] :
       {std::pair{0.0, 1.0}, {10.0, 0.36787944}, {23.1, 0.1}, {200.0, 0.1}}) {
    EXPECT_NEAR(damping_off_relief(age_days), relief, 1e-3) << age_days;
  }
}

TEST(HeatKill, AnHourAtFortyFiveHalvesHalfOfNothingUnderForty) {
  EXPECT_DOUBLE_EQ(heat_half_life_hours(45.0), 60.0);
  EXPECT_NEAR(heat_half_life_hours(50.0), 7.554, 1e-3);
  EXPECT_EQ(heat_dose_of_hour(39.99), 0.0);
  EXPECT_NEAR(heat_dose_of_hour(45.0), 1.0 / 60.0, 1e-15);
}

TEST(CardinalGrowth, RisesToTheOptimumAndFallsToTheEnds) {
  EXPECT_DOUBLE_EQ(cardinal_growth(28.0, 3.0, 28.0, 38.0), 1.0);
  EXPECT_EQ(cardinal_growth(2.0, 3.0, 28.0, 38.0), 0.0);
  EXPECT_EQ(cardinal_growth(39.0, 3.0, 28.0, 38.0), 0.0);
  double before = 0.0;
  for (double c = 3.5; c <= 28.0; c += 0.5) {
    EXPECT_GT(cardinal_growth(c, 3.0, 28.0, 38.0), before) << c;
    before = cardinal_growth(c, 3.0, 28.0, 38.0);
  }
}

} // namespace
} // namespace nightsow::species_rules
