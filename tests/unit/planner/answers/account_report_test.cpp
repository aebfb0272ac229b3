#include "planner/answers/account_report.hpp"

#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace nightsow::planner {
namespace {

using support::InventedGarden;

/// Nights fall from 17 to 7 °C; one sowing of 40 seeds, watered as it was sown.
class AccountOnBothHalves : public testing::TestWithParam<int> {
protected:
  /// A garden so many days after its hottest night.
  [[nodiscard]] static InventedGarden invented(int days_after_hottest) {
    InventedGarden garden;
    garden.climate.hottest_day_of_year = GetParam();
    garden.days_after_hottest = days_after_hottest;
    garden.benches = {support::open_bench(), support::bench_with("frame", 2.0, 4.0)};
    return garden;
  }

  [[nodiscard]] static Date after_hottest(int days) {
    return support::hottest_night_of(invented(0)) + Days{days};
  }

  [[nodiscard]] static RecordedSowing sowing(const std::string& packet, int sown) {
    RecordedSowing sowing;
    sowing.id = 1;
    sowing.on = after_hottest(sown);
    sowing.first_water = sowing.on;
    sowing.packet = support::packet_from(packet, sowing.on);
    sowing.packet_id = sowing.packet.id;
    sowing.taxon = sowing.packet.taxon;
    sowing.seeds = 40;
    sowing.bench = support::open_bench().name;
    return sowing;
  }

  [[nodiscard]] static SeedlingCount count(int day, int seen) {
    SeedlingCount count;
    count.sowing = 1;
    count.on = after_hottest(day);
    count.seen = seen;
    return count;
  }

  [[nodiscard]] static SowingAccount account_in(const InventedGarden& invented, Records records) {
    LoadedGarden garden = support::garden_of(invented);
    garden.records = std::move(records);
    AccountAnswer answer = account_report(garden, {{1}, false, false});
    return answer.accounts.empty() ? SowingAccount{} : answer.accounts.front();
  }

  [[nodiscard]] static SowingAccount account_on(int day,
                                                const RecordedSowing& sowing,
                                                std::vector<SeedlingCount> counts) {
    Records records;
    records.sowings = {sowing};
    records.counts = std::move(counts);
    return account_in(invented(day), std::move(records));
  }

  [[nodiscard]] static bool says(const std::vector<Reason>& reasons, ReasonCode code) {
    return std::any_of(
        reasons.begin(), reasons.end(), [code](const Reason& one) { return one.code == code; });
  }

  [[nodiscard]] static MissingShare share(const SowingAccount& account, const std::string& cause) {
    const auto found = std::find_if(account.missing.begin(),
                                    account.missing.end(),
                                    [&](const MissingShare& one) { return one.cause == cause; });
    return found == account.missing.end() ? MissingShare{} : *found;
  }
};

INSTANTIATE_TEST_SUITE_P(Halves,
                         AccountOnBothHalves,
                         testing::Values(support::hottest_in_the_south,
                                         support::hottest_in_the_north));

const std::string bulbine = "Bulbine annua, 40 seeds, harvested 300 days ago";

TEST_P(AccountOnBothHalves, TheDayOfSowingIsTooEarlyToTell) {
  const SowingAccount account = account_on(60, sowing(bulbine, 60), {});
  EXPECT_EQ(account.step, "too_early");
  EXPECT_TRUE(account.missing.empty());
  EXPECT_GT(account.until, after_hottest(60));
}

TEST_P(AccountOnBothHalves, SeedSownIntoWarmNightsWaitsForThem) {
  InventedGarden garden = invented(40);
  garden.climate.night_mean_c = 17.0;
  Records records;
  records.sowings = {sowing(bulbine, 10)};
  records.counts = {count(39, 3)};
  const SowingAccount account = account_in(garden, records);
  EXPECT_GT(share(account, "nights_too_warm").share, 0.2);
  EXPECT_LT(share(account, "to_come").share, 0.1);
  ASSERT_TRUE(account.nights);
  EXPECT_FALSE(account.nights->came);
  EXPECT_GT(account.nights->short_k, 0.0);
  EXPECT_LT(account.nights->met, account.nights->needed);
  EXPECT_EQ(account.step, "wait");
  EXPECT_GT(account.until, after_hottest(40));
}

TEST_P(AccountOnBothHalves, NightsThatCameAreTold) {
  const SowingAccount account = account_on(160, sowing(bulbine, 70), {count(159, 25)});
  ASSERT_TRUE(account.nights);
  EXPECT_TRUE(account.nights->came);
  EXPECT_LT(share(account, "nights_too_warm").share, 0.2);
}

TEST_P(AccountOnBothHalves, SharesSumToOneAndLieWithinTheirRanges) {
  const SowingAccount account = account_on(120, sowing(bulbine, 70), {count(119, 12)});
  double sum = 0.0;
  for (const MissingShare& one : account.missing) {
    sum += one.share;
    EXPECT_LE(one.p10, one.p90) << one.cause;
  }
  EXPECT_NEAR(sum, 1.0, 0.01);
}

TEST_P(AccountOnBothHalves, TheCurveRisesAndHoldsTheCounts) {
  const SowingAccount account =
      account_on(120, sowing(bulbine, 70), {count(91, 3), count(119, 12)});
  ASSERT_GT(account.curve.size(), 5U);
  for (std::size_t i = 1; i < account.curve.size(); ++i) {
    EXPECT_GE(account.curve[i].expected.mean, account.curve[i - 1].expected.mean);
  }
  const auto counted =
      std::count_if(account.curve.begin(), account.curve.end(), [](const CurvePoint& point) {
        return point.counted.has_value();
      });
  EXPECT_EQ(counted, 2);
}

TEST_P(AccountOnBothHalves, SeedThatIsNotCountedIsCountedFirst) {
  const SowingAccount account = account_on(140, sowing(bulbine, 70), {});
  EXPECT_EQ(account.step, "count_first");
  ASSERT_TRUE(account.expected_up);
  EXPECT_GT(account.expected_up->mean, 5.0);
}

TEST_P(AccountOnBothHalves, AnOldCountAsksForANewOne) {
  const SowingAccount account = account_on(140, sowing(bulbine, 70), {count(84, 2)});
  EXPECT_EQ(account.step, "look_again");
  EXPECT_TRUE(says(account.advice, ReasonCode::account_look_again));
}

TEST_P(AccountOnBothHalves, PressedSeedTellsSoundFromLost) {
  Records records;
  records.sowings = {sowing(bulbine, 70)};
  records.counts = {count(199, 4)};
  records.press_tests = {{0, 1, after_hottest(200), 6, 0}};
  const SowingAccount firm = account_in(invented(200), records);
  records.press_tests = {{0, 1, after_hottest(200), 0, 6}};
  const SowingAccount soft = account_in(invented(200), records);
  const auto lost = [](const SowingAccount& account) {
    return share(account, "dead").share + share(account, "lost_wet").share +
           share(account, "heat").share + share(account, "dried").share;
  };
  EXPECT_LT(lost(firm), 0.35);
  EXPECT_GT(lost(soft), 0.6);
  EXPECT_FALSE(soft.press);
}

TEST_P(AccountOnBothHalves, CountsThatFallAreSaidAndDoNotMakeSeedMissing) {
  const SowingAccount account =
      account_on(130, sowing(bulbine, 70), {count(110, 20), count(129, 15)});
  EXPECT_EQ(account.up, 20);
  EXPECT_EQ(account.alive, 15);
  EXPECT_TRUE(says(account.notes, ReasonCode::counted_fell));
}

TEST_P(AccountOnBothHalves, MoreThanWereSownIsSaid) {
  const SowingAccount account = account_on(130, sowing(bulbine, 70), {count(129, 44)});
  EXPECT_EQ(account.step, "nothing_missing");
  EXPECT_EQ(account.up, 40);
  EXPECT_TRUE(says(account.notes, ReasonCode::counted_more_than_sown));
}

TEST_P(AccountOnBothHalves, ATaxonWithoutARuleKeepsItsCounts) {
  const SowingAccount account =
      account_on(130, sowing("Nusquamia ignota, 40 seeds", 70), {count(129, 4)});
  EXPECT_EQ(account.step, "nothing_reckoned");
  EXPECT_EQ(account.up, 4);
  EXPECT_TRUE(says(account.advice, ReasonCode::unknown_taxon));
}

TEST_P(AccountOnBothHalves, ABenchThatIsGoneIsReckonedAsTheFirst) {
  RecordedSowing sown = sowing(bulbine, 70);
  sown.bench = "old bench";
  sown.mat = "old mat";
  const SowingAccount account = account_on(130, sown, {count(129, 4)});
  EXPECT_EQ(account.bench, support::open_bench().name);
  EXPECT_TRUE(says(account.notes, ReasonCode::sown_bench_gone));
  EXPECT_TRUE(says(account.notes, ReasonCode::sown_mat_gone));
}

TEST_P(AccountOnBothHalves, NightsThatNobodyReadAreCounted) {
  InventedGarden garden = invented(130);
  garden.readings_end_before_today = 20;
  Records records;
  records.sowings = {sowing(bulbine, 70)};
  records.counts = {count(129, 4)};
  const SowingAccount account = account_in(garden, records);
  ASSERT_TRUE(account.nights);
  EXPECT_NEAR(account.nights->unread, 19, 1);
  EXPECT_TRUE(says(account.notes, ReasonCode::nights_unread));
}

TEST_P(AccountOnBothHalves, DrySeedWaitsForItsFirstWater) {
  RecordedSowing sown = sowing(bulbine, 70);
  sown.first_water.reset();
  EXPECT_EQ(account_on(130, sown, {}).step, "water_first");
}

TEST_P(AccountOnBothHalves, AMovedPotIsReckonedWhereItStood) {
  Records records;
  records.sowings = {sowing(bulbine, 60)};
  records.counts = {count(99, 0)};
  const SowingAccount stayed = account_in(invented(100), records);
  records.moves = {{0, 1, after_hottest(61), MoveKind::bench, "frame"}};
  const SowingAccount moved = account_in(invented(100), records);
  EXPECT_EQ(moved.bench, "frame");
  EXPECT_LT(moved.expected_up->mean, stayed.expected_up->mean);
}

TEST_P(AccountOnBothHalves, APotOfTwoSeasonsIsTakenAsWateredAgain) {
  const SowingAccount account =
      account_on(130, sowing(bulbine, 80 - 365), {count(200 - 365, 4), count(129, 9)});
  EXPECT_TRUE(says(account.notes, ReasonCode::watered_again_taken));
  EXPECT_EQ(account.up, 9);
  EXPECT_FALSE(account.closed);
  EXPECT_FALSE(account.missing.empty());
}

TEST_P(AccountOnBothHalves, APotOfAllItsSeasonsIsClosedAndLeftOutUntilAskedFor) {
  LoadedGarden garden = support::garden_of(invented(290));
  garden.records.sowings = {sowing(bulbine, 80 - 3 * 365)};
  garden.records.counts = {count(289, 9)};
  const AccountAnswer open = account_report(garden, {{}, false, false});
  EXPECT_TRUE(open.accounts.empty());
  EXPECT_EQ(open.closed, 1);
  const AccountAnswer all = account_report(garden, {{}, true, false});
  ASSERT_EQ(all.accounts.size(), 1U);
  EXPECT_TRUE(all.accounts.front().closed);
}

TEST_P(AccountOnBothHalves, AClosedSowingStandsAsOnTheDayOfItsClosing) {
  Records records;
  records.sowings = {sowing(bulbine, 20)};
  records.counts = {count(60, 3)};
  const SowingAccount then = account_in(invented(70), records);
  records.closings = {{5, 1, after_hottest(70), ClosingReason::emptied}};
  const SowingAccount now = account_in(invented(200), records);
  EXPECT_EQ(now.step, "closed");
  EXPECT_TRUE(now.closed);
  EXPECT_EQ(now.closed_on, after_hottest(70));
  EXPECT_EQ(now.closed_why, "emptied");
  EXPECT_FALSE(now.until);
  EXPECT_FALSE(now.press);
  EXPECT_TRUE(says(now.advice, ReasonCode::account_closed));
  ASSERT_FALSE(then.missing.empty());
  ASSERT_EQ(now.missing.size(), then.missing.size());
  // What was not known then is known now, so that shares may differ a little.
  EXPECT_NEAR(share(now, "heat").share, share(then, "heat").share, 0.1);
  LoadedGarden garden = support::garden_of(invented(200));
  garden.records = records;
  const AccountAnswer all = account_report(garden, {{}, false, false});
  EXPECT_TRUE(all.accounts.empty());
  EXPECT_EQ(all.closed, 1);
}

TEST_P(AccountOnBothHalves, WhatInTheRuleDecidesIsFound) {
  LoadedGarden garden = support::garden_of(invented(45));
  garden.records.sowings = {sowing(bulbine, 10)};
  garden.records.counts = {count(44, 1)};
  const AccountAnswer answer = account_report(garden, {{1}, false, true});
  const std::vector<DecidingValue>& deciding = answer.accounts.front().deciding;
  ASSERT_FALSE(deciding.empty());
  for (const DecidingValue& value : deciding) {
    EXPECT_LT(value.low, value.high);
    EXPECT_TRUE(value.step_low != value.step_high || value.moves >= 0.1) << value.field;
  }
}

} // namespace
} // namespace nightsow::planner
