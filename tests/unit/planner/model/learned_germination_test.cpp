#include "planner/model/learned_germination.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace nightsow::planner {
namespace {

using species_rules::Estimate;

const Estimate rule{0.5, 0.3, 0.7, {}};

/// Sowings of 100 seeds in five pots, in three seasons, of which half could come up.
std::vector<ReachedSowing> sowings(const std::vector<int>& came) {
  std::vector<ReachedSowing> list;
  for (const int seedlings : came) {
    list.push_back({2020 + static_cast<int>(list.size()) % 3, {seedlings, 100}, 5, 0.5});
  }
  return list;
}

TEST(LearnedGermination, FindsTheShareThatSowingsCameBy) {
  // 0.8 of fresh seed is 0.84 of living seed: 42 of the 50 that could come.
  const LearnedGermination learned = learned_germination(sowings({42, 44, 40, 43, 41}), rule);
  ASSERT_FALSE(learned.refused);
  EXPECT_NEAR(learned.share.value, 0.8, 0.06);
  EXPECT_LT(learned.share.limits.low, learned.share.value);
  EXPECT_GT(learned.share.limits.high, learned.share.value);
  EXPECT_GT(learned.predicts_better, 1.0);
  EXPECT_TRUE(learned.offered);
}

TEST(LearnedGermination, OffersNothingWhereTheRuleIsRight) {
  const LearnedGermination learned = learned_germination(sowings({26, 24, 28, 25, 27}), rule);
  EXPECT_FALSE(learned.offered);
  EXPECT_NEAR(learned.share.value, 0.5, 0.06);
}

TEST(LearnedGermination, OffersNothingFromTwoSowingsOrOneSeason) {
  EXPECT_FALSE(learned_germination(sowings({42, 44}), rule).offered);
  std::vector<ReachedSowing> one_season = sowings({42, 44, 40, 43, 41});
  for (ReachedSowing& sowing : one_season) {
    sowing.season = 2020;
  }
  EXPECT_FALSE(learned_germination(one_season, rule).offered);
}

TEST(LearnedGermination, SaysWhyARecordCannotTell) {
  EXPECT_EQ(learned_germination(sowings({42}), rule).refused, GerminationRefusal::too_few_sowings);
  std::vector<ReachedSowing> hardly = sowings({1, 2, 0});
  for (ReachedSowing& sowing : hardly) {
    sowing.reached = 0.05;
  }
  EXPECT_EQ(learned_germination(hardly, rule).refused, GerminationRefusal::too_few_seeds);
  const Estimate sure{0.5, 0.49, 0.51, {}};
  EXPECT_EQ(learned_germination(sowings(std::vector<int>(20, 50)), sure).refused,
            GerminationRefusal::fits_no_share);
  EXPECT_EQ(learned_germination(sowings({26, 24}), sure).refused, GerminationRefusal::too_unsure);
}

TEST(LearnedGermination, StaysNearerToTheRuleTheLessIsRecorded) {
  const double two = learned_germination(sowings({42, 42}), rule).share.value;
  const double six = learned_germination(sowings({42, 42, 42, 42, 42, 42}), rule).share.value;
  EXPECT_GT(two, 0.5);
  EXPECT_GT(six, two);
}

TEST(LearnedGermination, DoesNotTakeWarmNightsForBadSeed) {
  // As many came, of fewer that could.
  std::vector<ReachedSowing> warm = sowings({26, 24, 28, 25, 27});
  for (ReachedSowing& sowing : warm) {
    sowing.reached = 0.3;
  }
  const LearnedGermination learned = learned_germination(warm, rule);
  ASSERT_FALSE(learned.refused);
  EXPECT_GT(learned.share.value, 0.65);
}

} // namespace
} // namespace nightsow::planner
