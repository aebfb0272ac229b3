#include "planner/model/learned_limit.hpp"

#include "planner/statistics/hazard_regression.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

namespace nightsow::planner {
namespace {

constexpr LimitBefore rule{13.0, 2.0, 2.5};

// Looks a fortnight apart while nights cool from `warmest_c`; as many come as a limit would have
// it, to fractions of seeds.
void add_sowing(std::vector<WindowLook>& looks,
                int sowing,
                int season,
                double limit_c,
                double warmest_c = 22.0,
                double cooling_k = 2.0,
                double seeds = 40.0) {
  double waiting = seeds;
  for (int i = 0; i < 7; ++i) {
    const double window_c = warmest_c - cooling_k * i;
    const double sum = std::log(std::numbers::ln2) - 0.46 * (window_c - limit_c);
    const double came = waiting * hazard_share(sum);
    looks.push_back({sowing, season, waiting, came, window_c, 14.0});
    waiting -= came;
  }
}

std::vector<WindowLook> record_of(double limit_c, int sowings, int seasons) {
  std::vector<WindowLook> looks;
  for (int i = 0; i < sowings; ++i) {
    add_sowing(looks, i, i % seasons, limit_c, 22.0 + 0.5 * i);
  }
  return looks;
}

TEST(NightLimitLearned, ComesFromTheRecordWhereItTells) {
  const LearnedLimit found = learned_limit(record_of(16.5, 4, 2), rule);
  ASSERT_FALSE(found.refused);
  EXPECT_NEAR(found.limit_c, 16.5, 0.5);
  EXPECT_LT(found.limits_c.low, 16.5);
  EXPECT_GT(found.limits_c.high, 16.2);
  EXPECT_TRUE(found.offered);
  EXPECT_GT(found.predicts_better, 0.0);
}

TEST(NightLimitLearned, IsDrawnTowardTheRule) {
  std::vector<WindowLook> few;
  add_sowing(few, 0, 0, 16.5, 22.0, 2.0, 12.0);
  add_sowing(few, 1, 1, 16.5, 22.0, 2.0, 12.0);
  const LearnedLimit of_few = learned_limit(few, rule);
  ASSERT_FALSE(of_few.refused);
  EXPECT_LT(of_few.limit_c, learned_limit(record_of(16.5, 6, 2), rule).limit_c);
  EXPECT_GT(of_few.limit_c, rule.limit_c);
}

TEST(NightLimitLearned, IsNotOfferedFromOneSeasonOrFewSowings) {
  EXPECT_FALSE(learned_limit(record_of(16.5, 4, 1), rule).offered);
  EXPECT_FALSE(learned_limit(record_of(16.5, 2, 2), rule).offered);
}

TEST(NightLimitLearned, IsNotOfferedWhereTheRuleForetellsAsWell) {
  const LearnedLimit found = learned_limit(record_of(rule.limit_c, 5, 2), rule);
  ASSERT_FALSE(found.refused);
  EXPECT_NEAR(found.limit_c, rule.limit_c, 0.1);
  EXPECT_FALSE(found.offered);
}

TEST(NightLimitLearned, IsRefusedWhereTheRecordCannotTell) {
  EXPECT_EQ(learned_limit({}, rule).refused, LimitRefusal::too_few_sowings);
  EXPECT_EQ(learned_limit(record_of(16.5, 1, 1), rule).refused, LimitRefusal::too_few_sowings);
  std::vector<WindowLook> alike;
  add_sowing(alike, 0, 0, 16.0, 15.0, 0.2);
  add_sowing(alike, 1, 1, 16.0, 15.0, 0.2);
  EXPECT_EQ(learned_limit(alike, rule).refused, LimitRefusal::nights_too_alike);
  std::vector<WindowLook> small;
  add_sowing(small, 0, 0, 16.0, 22.0, 2.0, 5.0);
  add_sowing(small, 1, 1, 16.0, 22.0, 2.0, 5.0);
  EXPECT_EQ(learned_limit(small, rule).refused, LimitRefusal::too_few_seedlings);
}

TEST(NightLimitLearned, IsRefusedWhereCoolerNightsBringNoMore) {
  std::vector<WindowLook> looks;
  for (int sowing = 0; sowing < 4; ++sowing) {
    double waiting = 40.0;
    for (int i = 0; i < 7; ++i) {
      looks.push_back({sowing, sowing % 2, waiting, 0.2 * waiting, 22.0 - 2.0 * i, 14.0});
      waiting *= 0.8;
    }
  }
  EXPECT_EQ(learned_limit(looks, rule).refused, LimitRefusal::not_told_by_nights);
}

} // namespace
} // namespace nightsow::planner
