#include "planner/model/account.hpp"

#include "planner/model/account_advice.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

constexpr int today = 60;

// Ten seeds in a hundred came on day 40, as many will on day 80, unless something else is said.
SeedsOnDay seeds_now(double up, double later) {
  SeedsOnDay seeds;
  seeds.up.assign(200, 0.0);
  seeds.up.at(40) = up;
  seeds.up.at(80) = later;
  seeds.up_so_far = up;
  seeds.to_come = later;
  return seeds;
}

SeedsOnDay sound_seed() {
  SeedsOnDay seeds = seeds_now(0.7, 0.0);
  seeds.dead = 0.2;
  seeds.lost_wet = 0.1;
  return seeds;
}

SeedsOnDay dead_seed() {
  SeedsOnDay seeds = seeds_now(0.05, 0.0);
  seeds.dead = 0.95;
  return seeds;
}

SeedsOnDay waiting_seed() {
  SeedsOnDay seeds = seeds_now(0.05, 0.0);
  seeds.nights_too_warm = 0.95;
  return seeds;
}

SowingRecord record_of(int seeds, int seen) {
  SowingRecord record;
  record.seeds = seeds;
  record.looks = {{today, seen}};
  return record;
}

double share(const Account& account, Cause cause) {
  const auto found = std::find_if(account.causes.begin(),
                                  account.causes.end(),
                                  [&](const CauseShare& one) { return one.cause == cause; });
  return found->share;
}

SowingSituation in_season() {
  SowingSituation situation;
  situation.today = today;
  situation.rest_begins = 150;
  return situation;
}

TEST(AccountOfSeeds, CountsWeighTheCasesThatWouldGiveThem) {
  const std::vector<SeedsOnDay> cases{sound_seed(), dead_seed()};
  const Account poor = account(cases, record_of(40, 1));
  EXPECT_LT(poor.weights.at(0), 0.05);
  EXPECT_GT(share(poor, Cause::dead), 0.9);
  const Account good = account(cases, record_of(40, 30));
  EXPECT_GT(good.weights.at(0), 0.95);
  EXPECT_NEAR(share(good, Cause::dead), 2.0 / 3.0, 0.02);
}

TEST(AccountOfSeeds, SharesSumToOneAndLieWithinTheirRanges) {
  const std::vector<SeedsOnDay> cases{sound_seed(), dead_seed(), waiting_seed()};
  for (const int seen : {0, 3, 20, 39}) {
    const Account result = account(cases, record_of(40, seen));
    double sum = 0.0;
    for (const CauseShare& one : result.causes) {
      sum += one.share;
      EXPECT_LE(one.p10, one.p90);
      EXPECT_GE(one.p10, 0.0);
      EXPECT_LE(one.p90, 1.0);
    }
    EXPECT_NEAR(sum, 1.0, 1e-6) << seen;
  }
}

TEST(AccountOfSeeds, WhereAllAreUpNothingIsMissing) {
  const std::vector<SeedsOnDay> cases{sound_seed()};
  const Account result = account(cases, record_of(10, 10));
  EXPECT_EQ(result.missing, 0);
  EXPECT_TRUE(result.causes.empty());
  EXPECT_EQ(advice_for(cases, record_of(10, 10), result, in_season()).step,
            NextStep::nothing_missing);
}

TEST(AccountOfSeeds, PressedSeedTellsDeadFromWaiting) {
  const std::vector<SeedsOnDay> cases{dead_seed(), waiting_seed()};
  SowingRecord record = record_of(40, 1);
  const Account unpressed = account(cases, record);
  EXPECT_NEAR(share(unpressed, Cause::dead), 0.5, 1e-3);
  record.pressed = {5, 0};
  EXPECT_GT(share(account(cases, record), Cause::nights_too_warm), 0.95);
  record.pressed = {0, 5};
  EXPECT_GT(share(account(cases, record), Cause::dead), 0.95);
}

TEST(AccountOfSeeds, PressedSeedIsCountedAmongTheMissing) {
  SeedsOnDay seeds = seeds_now(0.0, 0.0);
  seeds.dead = 0.5;
  seeds.deferred = 0.5;
  const std::vector<SeedsOnDay> cases{seeds};
  SowingRecord record = record_of(10, 0);
  record.pressed = {4, 6};
  const Account result = account(cases, record);
  EXPECT_NEAR(share(result, Cause::deferred), 0.4, 1e-3);
  EXPECT_NEAR(share(result, Cause::dead), 0.6, 1e-3);
}

TEST(AccountOfSeeds, MorePotsTellMore) {
  const std::vector<SeedsOnDay> cases{sound_seed(), dead_seed()};
  SowingRecord record = record_of(40, 12);
  const double of_one = account(cases, record).cases_left;
  record.pots = 8;
  EXPECT_LT(account(cases, record).cases_left, of_one);
}

TEST(AccountOfSeeds, WhatHardlyFitsTheRuleIsSaid) {
  const std::vector<SeedsOnDay> cases{sound_seed()};
  EXPECT_LT(account(cases, record_of(100, 0)).like_the_rule, 0.02);
  EXPECT_GT(account(cases, record_of(100, 72)).like_the_rule, 0.5);
}

TEST(AdviceOnASowing, FollowsFromWhatIsMissing) {
  struct Row {
    std::string name;
    SeedsOnDay seeds;
    int seen = 0;
    SowingSituation situation;
    NextStep expected;
  };

  SeedsOnDay deferred = seeds_now(0.3, 0.0);
  deferred.deferred = 0.7;
  SeedsOnDay lost = seeds_now(0.3, 0.0);
  lost.lost_wet = 0.7;
  SeedsOnDay young = seeds_now(0.0, 0.8);
  young.dead = 0.2;
  SowingSituation rested = in_season();
  rested.rest_begins = today;
  SowingSituation last = in_season();
  last.cool_seasons_had = 3;
  const std::vector<Row> rows{
      {"more on their way", seeds_now(0.4, 0.6), 12, in_season(), NextStep::wait},
      {"nothing due yet", young, 0, in_season(), NextStep::too_early},
      {"nights too warm", waiting_seed(), 1, in_season(), NextStep::cool_it},
      {"nights too warm to the rest", waiting_seed(), 1, rested, NextStep::keep_for_next_limb},
      {"deferred", deferred, 10, in_season(), NextStep::keep_for_next_limb},
      {"lost", lost, 10, in_season(), NextStep::sow_again},
      {"lost after all its cool seasons", lost, 10, last, NextStep::stop}};
  for (const Row& row : rows) {
    const std::vector<SeedsOnDay> cases{row.seeds};
    const SowingRecord record = record_of(30, row.seen);
    const AccountAdvice advice = advice_for(cases, record, account(cases, record), row.situation);
    EXPECT_EQ(advice.step, row.expected) << row.name;
  }
}

TEST(AdviceOnASowing, WaitingHasAnEnd) {
  const std::vector<SeedsOnDay> cases{seeds_now(0.4, 0.6)};
  const SowingRecord record = record_of(30, 12);
  EXPECT_EQ(advice_for(cases, record, account(cases, record), in_season()).wait_until, 80);
}

TEST(AdviceOnASowing, FiveSeedsArePressedWhereTheyDecide) {
  const std::vector<SeedsOnDay> cases{dead_seed(), waiting_seed()};
  const SowingRecord record = record_of(40, 1);
  const AccountAdvice advice = advice_for(cases, record, account(cases, record), in_season());
  ASSERT_TRUE(advice.press_five);
  EXPECT_EQ(advice.by_firm.front(), NextStep::stop);
  EXPECT_EQ(advice.by_firm.back(), NextStep::cool_it);
}

TEST(AdviceOnASowing, NothingIsPressedWhereItDecidesNothing) {
  const std::vector<SeedsOnDay> cases{waiting_seed()};
  const SowingRecord record = record_of(40, 1);
  EXPECT_FALSE(advice_for(cases, record, account(cases, record), in_season()).press_five);
}

TEST(AdviceOnASowing, APotIsEmptiedOnlyOnceItsSeedWasPressed) {
  SeedsOnDay lost = seeds_now(0.3, 0.0);
  lost.lost_wet = 0.7;
  const std::vector<SeedsOnDay> cases{lost};
  const SowingRecord record = record_of(30, 10);
  const AccountAdvice advice = advice_for(cases, record, account(cases, record), in_season());
  EXPECT_EQ(advice.step, NextStep::sow_again);
  ASSERT_TRUE(advice.press_five);
  EXPECT_EQ(advice.by_firm.front(), NextStep::stop);
}

TEST(AdviceOnASowing, SoftSeedOnlyEndsIt) {
  const std::vector<SeedsOnDay> cases{dead_seed(), waiting_seed()};
  SowingRecord record = record_of(40, 1);
  record.pressed = {0, 12};
  EXPECT_EQ(advice_for(cases, record, account(cases, record), in_season()).step, NextStep::stop);
}

} // namespace
} // namespace nightsow::planner
