#include "planner/model/learned_limit.hpp"

#include "species-rules/development.hpp"
#include "species-rules/release.hpp"
#include "species-rules/seed_parameters.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace nightsow::planner {
namespace {

constexpr int days = 160;
constexpr double progress_a_day = 9.0;

species_rules::Rule rule_of(double limit_c = 13.5,
                            double half_range_k = 2.5,
                            double spread_k = 2.5) {
  species_rules::Rule rule;
  rule.gate.night_limit_c = {limit_c, limit_c - half_range_k, limit_c + half_range_k, {}};
  rule.gate.night_limit_spread_k = {spread_k, spread_k, spread_k, {}};
  rule.development.thermal_time_c_d = {200.0, 130.0, 310.0, {}};
  return rule;
}

/// Nights cool from `warmest_c` by a kelvin in eight days; what comes is what seed of that limit
/// and time does, to whole seedlings.
WatchedSowing sowing_of(int number,
                        int season,
                        double limit_c,
                        double warmest_c = 21.0,
                        double time_c_d = 200.0,
                        int seeds = 60) {
  WatchedSowing sowing;
  sowing.sowing = number;
  sowing.season = season;
  sowing.seeds = seeds;
  sowing.pots = 4;
  for (int day = 0; day < days; ++day) {
    sowing.progress_c_d.push_back(progress_a_day * (day + 1));
    sowing.coolest_c.push_back(day < 2 ? std::nullopt : std::optional{warmest_c - day / 8.0});
  }
  const species_rules::SeedParameters seed = species_rules::seed_parameters(rule_of());
  const species_rules::ReleaseLimit limit{
      limit_c, seed.release->spread_k, seed.release->indifferent_share};
  for (int look = 7; look < days; look += 7) {
    double up = 0.0;
    double before = 0.0;
    for (int day = 0; day < look; ++day) {
      const double released = day < 2
                                  ? limit.indifferent_share
                                  : species_rules::released_by_cool(
                                        *sowing.coolest_c[static_cast<std::size_t>(day)], limit);
      up += (released - before) * species_rules::emerged_share(progress_a_day * (look - day),
                                                               time_c_d,
                                                               seed.thermal_time_spread);
      before = released;
    }
    sowing.looks.push_back({look, static_cast<int>(std::lround(0.7 * seeds * up))});
  }
  return sowing;
}

std::vector<WatchedSowing> record_of(double limit_c,
                                     int sowings,
                                     int seasons,
                                     double time_c_d = 200.0) {
  std::vector<WatchedSowing> list;
  for (int i = 0; i < sowings; ++i) {
    list.push_back(sowing_of(i, i % seasons, limit_c, 20.0 + i, time_c_d));
  }
  return list;
}

TEST(NightLimitLearned, ComesFromTheRecordWhereItTells) {
  for (const double limit_c : {11.5, 15.5}) {
    const LearnedLimit found = learned_limit(record_of(limit_c, 5, 2), rule_of());
    ASSERT_FALSE(found.refused);
    EXPECT_NEAR(found.limit_c.value, limit_c, 0.8);
    EXPECT_LT(found.limit_c.limits.low, limit_c);
    EXPECT_GT(found.limit_c.limits.high, limit_c);
    EXPECT_TRUE(found.offered);
    EXPECT_GT(found.predicts_better, 0.0);
  }
}

TEST(NightLimitLearned, IsNotMistakenForASlowEmergence) {
  const LearnedLimit found = learned_limit(record_of(15.5, 5, 2, 280.0), rule_of());
  ASSERT_FALSE(found.refused);
  EXPECT_NEAR(found.limit_c.value, 15.5, 1.0);
  ASSERT_TRUE(found.thermal_time_c_d);
  EXPECT_NEAR(found.thermal_time_c_d->value, 280.0, 30.0);
}

TEST(NightLimitLearned, IsDrawnTowardTheRule) {
  const std::vector<WatchedSowing> few{sowing_of(0, 0, 16.5, 20.0, 200.0, 30),
                                       sowing_of(1, 1, 16.5, 22.0, 200.0, 30)};
  const LearnedLimit of_few = learned_limit(few, rule_of());
  ASSERT_FALSE(of_few.refused);
  EXPECT_LT(of_few.limit_c.value, learned_limit(record_of(16.5, 6, 2), rule_of()).limit_c.value);
  EXPECT_GT(of_few.limit_c.value, 13.5);
}

TEST(NightLimitLearned, IsNotOfferedFromOneSeasonOrFewSowings) {
  EXPECT_FALSE(learned_limit(record_of(16.0, 4, 1), rule_of()).offered);
  EXPECT_FALSE(learned_limit(record_of(16.0, 2, 2), rule_of()).offered);
}

TEST(NightLimitLearned, IsNotOfferedWhereTheRuleForetellsAsWell) {
  const LearnedLimit found = learned_limit(record_of(13.5, 6, 3), rule_of());
  ASSERT_FALSE(found.refused);
  EXPECT_NEAR(found.limit_c.value, 13.5, 0.6);
  EXPECT_FALSE(found.offered);
}

TEST(NightLimitLearned, IsRefusedWhereTheRecordCannotTell) {
  EXPECT_EQ(learned_limit({}, rule_of()).refused, LimitRefusal::too_few_sowings);
  EXPECT_EQ(learned_limit(record_of(16.0, 1, 1), rule_of()).refused, LimitRefusal::too_few_sowings);
  std::vector<WatchedSowing> unwatched = record_of(16.0, 3, 2);
  for (WatchedSowing& sowing : unwatched) {
    sowing.looks.clear();
  }
  EXPECT_EQ(learned_limit(unwatched, rule_of()).refused, LimitRefusal::too_few_sowings);
  const std::vector<WatchedSowing> small{sowing_of(0, 0, 16.0, 20.0, 200.0, 8),
                                         sowing_of(1, 1, 16.0, 20.0, 200.0, 8)};
  EXPECT_EQ(learned_limit(small, rule_of()).refused, LimitRefusal::too_few_seedlings);
  std::vector<WatchedSowing> alike = record_of(16.0, 3, 2);
  for (WatchedSowing& sowing : alike) {
    sowing.coolest_c.assign(sowing.coolest_c.size(), 9.0);
  }
  EXPECT_EQ(learned_limit(alike, rule_of()).refused, LimitRefusal::nights_too_alike);
}

TEST(NightLimitLearned, FarOffTheRuleIsNoLimitOfThisKind) {
  EXPECT_EQ(learned_limit(record_of(24.0, 8, 2), rule_of(10.0, 1.0)).refused,
            LimitRefusal::fits_no_limit);
}

TEST(NightLimitLearned, SeedThatNobodyPressedTellsNothing) {
  std::vector<WatchedSowing> record = record_of(15.5, 4, 2);
  const double without = learned_limit(record, rule_of()).limit_c.value;
  for (WatchedSowing& sowing : record) {
    sowing.seeds += 40;
    sowing.pots = sowing.seeds / 15;
  }
  EXPECT_NEAR(learned_limit(record, rule_of()).limit_c.value, without, 0.3);
}

TEST(NightLimitLearned, FirmSeedThatDidNotComeSpeaksForACoolerLimit) {
  std::vector<WatchedSowing> record = record_of(13.5, 4, 2);
  // Watched for so long only, while nights were still warm.
  for (WatchedSowing& sowing : record) {
    sowing.looks.resize(12);
  }
  const double without = learned_limit(record, rule_of()).limit_c.value;
  for (WatchedSowing& sowing : record) {
    sowing.firm_share = 1.0;
  }
  EXPECT_LT(learned_limit(record, rule_of()).limit_c.value, without);
}

TEST(NightLimitLearned, ARuleWithoutSpreadOrRangeIsNoFault) {
  const LearnedLimit certain = learned_limit(record_of(15.5, 4, 2), rule_of(13.5, 0.0, 0.0));
  EXPECT_TRUE(certain.refused || std::isfinite(certain.limit_c.value));
}

} // namespace
} // namespace nightsow::planner
