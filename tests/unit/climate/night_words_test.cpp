#include "climate/night_words.hpp"

#include "climate/daily_series.hpp"
#include "tests/support/invented_series.hpp"
#include "tests/support/numbers.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace nightsow::climate {
namespace {

using support::nights;

const NightLimit at_13{.at_or_under = Celsius{13.0}};
const NightLimit at_13_days_25{.at_or_under = Celsius{13.0}, .day_limit = Celsius{25.0}};

std::vector<float> constant(std::size_t count, float value) {
  return std::vector<float>(count, value);
}

std::vector<float> joined(std::vector<float> a, const std::vector<float>& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

TEST(NightWords, StirWithTheFifthCoolNightOfSeven) {
  const auto words = night_words(nights("20 13 13 20 13 13 20 13 20 20"), {}, at_13, 13);
  EXPECT_EQ(words.stirs.day, 7);
}

TEST(NightWords, DoNotStirBeforeAWholeWindowHasPassed) {
  const auto words = night_words(nights("10 10 10 10 10 10 10 10"), {}, at_13, 13);
  EXPECT_EQ(words.stirs.day, 6);
}

TEST(NightWords, CountANightEqualToTheLimitAsCool) {
  EXPECT_TRUE(night_words(nights("13 13 13 13 13 20 20"), {}, at_13, 13).stirs.day);
  EXPECT_FALSE(night_words(nights("13.1 13 13 13 13 20 20"), {}, at_13, 13).stirs.day);
}

TEST(NightWords, HoldWithTheTenthCoolNightOfFourteen) {
  const auto nine = joined(constant(5, 20.0F), constant(9, 12.0F));
  EXPECT_FALSE(night_words(nine, {}, at_13, 13).holds.day);
  EXPECT_EQ(night_words(joined(nine, nights("12")), {}, at_13, 13).holds.day, 14);
}

TEST(NightWords, DoNotHoldBeforeTheFirstAllowedDay) {
  const auto cool = constant(60, 10.0F);
  EXPECT_EQ(night_words(cool, {}, at_13, 33).holds.day, 33);
  EXPECT_EQ(night_words(cool, {}, at_13, 0).holds.day, 13);
}

TEST(NightWords, HoldLaterWhileDaysAreHot) {
  const auto night_c = constant(60, 12.5F);
  // 0.5 * (mean - 25) must not pass 0.5: the mean of 14 maxima must come down to 26.
  const auto day_c = joined(constant(30, 30.0F), constant(30, 20.0F));
  EXPECT_EQ(night_words(night_c, day_c, at_13_days_25, 13).holds.day, 35);
  EXPECT_EQ(night_words(night_c, day_c, at_13, 13).holds.day, 13);
}

TEST(NightWords, LeaveTheDayLimitOutWhereMaximaAreMissingAndSaySo) {
  const auto night_c = constant(30, 12.5F);
  const auto words = night_words(night_c, constant(30, missing_c), at_13_days_25, 13);
  EXPECT_EQ(words.holds.day, 13);
  EXPECT_TRUE(words.day_limit_left_out);
}

TEST(NightWords, KeepTheDayLimitWhenHalfOfTheMaximaAreThere) {
  auto day_c = constant(14, 35.0F);
  for (std::size_t i = 0; i < 7; ++i) {
    day_c[i] = missing_c;
  }
  const HoldLevel level = hold_level(constant(14, 12.0F), day_c, at_13_days_25, 0.0);
  EXPECT_FALSE(level.day_limit_left_out);
  EXPECT_NEAR(level.level_c, 17.0, 1e-9);
}

TEST(NightWords, AMissingNightThatCouldMatterLeavesTheVerdictUnknown) {
  const auto words = night_words(nights("13 13 13 13 - 20 20 13 13 13 13 13 20"), {}, at_13, 13);
  EXPECT_TRUE(words.stirs.unknown);
  EXPECT_EQ(words.stirs.day, 11); // the first day on which it is certain
}

TEST(NightWords, AMissingNightThatCannotMatterChangesNothing) {
  const auto words = night_words(nights("20 20 - 20 20 20 13 13 13 13 13 20"), {}, at_13, 13);
  EXPECT_FALSE(words.stirs.unknown);
  EXPECT_EQ(words.stirs.day, 10);
}

TEST(NightWords, SettleOnceAtMostTwoOfTheNextFourteenAreWarm) {
  const auto stirred = nights("10 10 10 10 10 10 10");
  const auto three_warm = nights("20 20 20 10 10 10 10 10 10 10 10 10 10 10 10 10 10");
  const auto words = night_words(joined(stirred, three_warm), {}, at_13, 13);
  EXPECT_EQ(words.stirs.day, 6);
  EXPECT_EQ(words.settles.day, 7); // from there on two of fourteen are warm
}

TEST(NightWords, SettleCountsAMissingNightAsWarm) {
  const auto words = night_words(
      joined(nights("10 10 10 10 10 10 10"), nights("- 20 20 10 10 10 10 10 10 10 10 10 10 10 10")),
      {},
      at_13,
      13);
  EXPECT_EQ(words.settles.day, 7);
}

TEST(NightWords, RelapseIsAWarmWeekThatEndsWithinFourWeeks) {
  const auto cool = constant(10, 10.0F);
  const auto warm_week = joined(constant(21, 10.0F), constant(7, 20.0F));
  EXPECT_FALSE(relapses(joined(cool, constant(40, 10.0F)), at_13, 9));
  EXPECT_TRUE(relapses(joined(cool, warm_week), at_13, 9));
  // The seventh warm night is the 29th after; six of seven at 14 and one at 10 stay under 13.5.
  const auto late = joined(joined(cool, constant(22, 10.0F)), constant(7, 13.5F));
  EXPECT_FALSE(relapses(late, at_13, 9));
}

TEST(NightWords, RelapseWindowsLieWhollyAfterTheDay) {
  const auto night_c = joined(constant(10, 30.0F), constant(40, 12.0F));
  EXPECT_FALSE(relapses(night_c, at_13, 9));
}

TEST(NightWords, CountTheLastNightsAndWhatIsMissing) {
  const NightCount count = count_nights(nights("10 10 20 - 13"), 4, Celsius{13.0}, 4);
  EXPECT_EQ(count.cool, 2);
  EXPECT_EQ(count.missing, 1);
  EXPECT_EQ(count.of, 4);
}

TEST(NightWords, MildDaysWaitForTheMeanOfFourteenMaxima) {
  const auto day_c = joined(constant(20, 30.0F), constant(30, 20.0F));
  EXPECT_EQ(first_mild_day(day_c, Celsius{25.0}, 13), 26);
  EXPECT_EQ(first_mild_day(day_c, Celsius{25.0}, 40), 40);
  EXPECT_EQ(first_mild_day(day_c, std::nullopt, 13), 13);
  EXPECT_EQ(first_mild_day(day_c, Celsius{10.0}, 13), std::nullopt);
}

// Nothing later: a day that is not met is later than all.
void expect_no_later(const WordDay& one, const WordDay& than, const char* word) {
  if (than.day) {
    ASSERT_TRUE(one.day) << word;
    EXPECT_LE(*one.day, *than.day) << word;
  }
}

void expect_no_later(const NightWords& one, const NightWords& than) {
  expect_no_later(one.stirs, than.stirs, "stirs");
  expect_no_later(one.holds, than.holds, "holds");
  expect_no_later(one.settles, than.settles, "settles");
}

// Made-up autumns, nights from 20 °C down to 8 and days from 32 to 18, up and down by some kelvin.
TEST(NightWords, AHigherLimitNeverDelaysAndWarmerNightsNeverHasten) {
  constexpr int days = 160;
  for (unsigned example = 1; example <= 60; ++example) {
    SCOPED_TRACE(example);
    support::Numbers numbers{example};
    std::vector<float> night_c;
    std::vector<float> warmer_c;
    std::vector<float> day_c;
    for (int day = 0; day < days; ++day) {
      const float part = static_cast<float>(day) / days;
      night_c.push_back(20.0F - 12.0F * part + 0.1F * static_cast<float>(numbers.upto(80) - 40));
      warmer_c.push_back(night_c.back() + 0.1F * static_cast<float>(numbers.upto(20)));
      day_c.push_back(32.0F - 14.0F * part + 0.1F * static_cast<float>(numbers.upto(60) - 30));
    }
    const NightLimit& limit = at_13_days_25;
    NightLimit higher = limit;
    higher.at_or_under = Celsius{13.0 + 0.1 * numbers.upto(30)};
    const NightWords usual = night_words(night_c, day_c, limit, 13);
    expect_no_later(night_words(night_c, day_c, higher, 13), usual);
    expect_no_later(usual, night_words(warmer_c, day_c, limit, 13));
  }
}

} // namespace
} // namespace nightsow::climate
