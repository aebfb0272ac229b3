#include "species-rules/release.hpp"

#include <gtest/gtest.h>

#include <optional>

namespace nightsow::species_rules {
namespace {

TEST(Release, HalfOfTheWaitingSeedStartsAtTheLimit) {
  EXPECT_DOUBLE_EQ(released_by_cool(14.0, {14.0, 2.5, 0.0}), 0.5);
  EXPECT_DOUBLE_EQ(released_by_warmth(20.0, {20.0, 2.5, 0.0}), 0.5);
}

TEST(Release, OneSpreadCoolerAboutFiveInSixStart) {
  EXPECT_NEAR(released_by_cool(11.5, {14.0, 2.5, 0.0}), 0.8413, 1e-4);
  EXPECT_NEAR(released_by_cool(16.5, {14.0, 2.5, 0.0}), 0.1587, 1e-4);
}

TEST(Release, WarmStartersAreTheSameTurnedRound) {
  const ReleaseLimit limit{20.0, 3.0, 0.3};
  for (const double past_k : {-7.0, -1.0, 0.0, 2.0, 9.0}) {
    EXPECT_DOUBLE_EQ(released_by_warmth(20.0 + past_k, limit),
                     released_by_cool(20.0 - past_k, limit));
  }
}

TEST(Release, TheIndifferentShareNeedsNoCoolNight) {
  EXPECT_NEAR(released_by_cool(40.0, {14.0, 2.5, 0.15}), 0.15, 1e-12);
  EXPECT_NEAR(released_by_cool(-10.0, {14.0, 2.5, 0.15}), 1.0, 1e-12);
}

TEST(Release, WithoutSpreadAllStartTogetherAndEqualCountsAsCool) {
  const ReleaseLimit all_alike{14.0, 0.0, 0.0};
  EXPECT_EQ(released_by_cool(14.0, all_alike), 1.0);
  EXPECT_EQ(released_by_cool(14.004, all_alike), 1.0);
  EXPECT_EQ(released_by_cool(14.006, all_alike), 0.0);
  EXPECT_EQ(released_by_warmth(13.996, all_alike), 1.0);
}

TEST(Release, BeforeTheWindowIsFullAShareOfItsNightsDecides) {
  struct Case {
    int so_far;
    std::optional<int> rank;
  };

  for (const Case& known : {Case{0, std::nullopt},
                            {1, std::nullopt},
                            {2, std::nullopt},
                            {3, 3},
                            {4, 3},
                            {5, 4},
                            {6, 5},
                            {7, 5},
                            {30, 5}}) {
    EXPECT_EQ(deciding_night(5, 7, known.so_far), known.rank) << known.so_far;
  }
}

TEST(Release, AWindowOfOneNightDecidesAtOnce) {
  EXPECT_EQ(deciding_night(1, 1, 0), std::nullopt);
  EXPECT_EQ(deciding_night(1, 1, 1), 1);
  EXPECT_EQ(deciding_night(2, 2, 2), 2);
}

} // namespace
} // namespace nightsow::species_rules
