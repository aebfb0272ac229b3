#include "species-rules/ripeness.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace nightsow::species_rules {
namespace {

// The corners are common practice, no source.
TEST(Ripeness, TheRateFollowsTheAirOfTheStore) {
  for (const auto& [humidity, weight] : {std::pair{0.0, 0.2},
                                         {0.15, 0.2},
                                         {0.225, 0.6},
                                         {0.3, 1.0},
                                         {0.45, 1.0},
                                         {0.6, 1.0},
                                         {0.7, 0.5},
                                         {0.8, 0.0},
                                         {1.0, 0.0}}) {
    EXPECT_NEAR(ripening_weight(humidity), weight, 1e-12) << humidity;
  }
}

TEST(Ripeness, NothingRipensAtTheBaseOrUnderAndWarmthAboveItCounts) {
  EXPECT_EQ(ripening_c_d_a_day(5, 0.45, 5), 0.0);
  EXPECT_EQ(ripening_c_d_a_day(-18, 0.15, 5), 0.0);
  EXPECT_DOUBLE_EQ(ripening_c_d_a_day(5, 0.45, 2), 3.0);
  EXPECT_DOUBLE_EQ(ripening_c_d_a_day(20, 0.45, 5), 15.0);
  EXPECT_DOUBLE_EQ(ripening_c_d_a_day(25, 0.15, 5), 4.0);
}

TEST(Ripeness, HalfIsRipeAtTheHalfPointAndMostAtTwiceIt) {
  EXPECT_DOUBLE_EQ(ripe_share(1200, 1200), 0.5);
  // ln 2 / 0.5 = 1.3863 standard deviations: 0.9172.
  EXPECT_NEAR(ripe_share(2400, 1200), 0.9172, 0.0001);
  EXPECT_NEAR(ripe_share(600, 1200), 1 - 0.9172, 0.0001);
  EXPECT_EQ(ripe_share(0, 1200), 0.0);
}

TEST(Ripeness, SeedThatNeedsNoneIsRipe) {
  EXPECT_EQ(ripe_share(0, 0), 1.0);
  EXPECT_EQ(ripe_range(0, {0, 0, 0, {}}), (ShareRange{1, 1, 1}));
}

TEST(Ripeness, TheRangeComesFromWhatIsNotKnownOfTheNeed) {
  const ShareRange ripe = ripe_range(1200, {1200, 700, 2200, {}});
  EXPECT_DOUBLE_EQ(ripe.share, 0.5);
  EXPECT_DOUBLE_EQ(ripe.low, ripe_share(1200, 2200));
  EXPECT_DOUBLE_EQ(ripe.high, ripe_share(1200, 700));
}

TEST(Ripeness, DeferralTakesOfRipeSoundSeedOnly) {
  EXPECT_DOUBLE_EQ(share_for_this_season(0.8, 0.5, 0.25), 0.3);
  EXPECT_DOUBLE_EQ(share_for_this_season(0.8, 0.5, 0.0), 0.4);
}

} // namespace
} // namespace nightsow::species_rules
