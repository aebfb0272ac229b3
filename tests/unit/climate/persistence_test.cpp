#include "climate/persistence.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace nightsow::climate {
namespace {

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
constexpr Date last{date::year{2001} / date::May / 31};

TEST(Memory, OfTheLastNightFadesWithinDaysAndThatOfTheSeasonWithinMonths) {
  EXPECT_GT(night_memory(1).last_night, 0.3);
  EXPECT_LT(night_memory(5).last_night, 0.05);
  EXPECT_EQ(night_memory(11).last_night, 0.0);
  EXPECT_GT(night_memory(30).mean_90, 0.1);
  EXPECT_EQ(night_memory(140).mean_90, 0.0);
  EXPECT_EQ(night_memory(1000).mean_90, 0.0);
}

TEST(Memory, FallsSteadilyBetweenItsKnots) {
  for (int ahead = 21; ahead < 140; ++ahead) {
    EXPECT_GE(night_memory(ahead).mean_90, night_memory(ahead + 1).mean_90) << ahead;
    EXPECT_GE(day_memory(ahead).mean_30, day_memory(ahead + 1).mean_30) << ahead;
  }
}

TEST(Memory, OfDaysLeansOnTheLastDay) {
  EXPECT_GT(day_memory(1).last_day, night_memory(1).last_day);
  EXPECT_LT(day_memory(1).last_night, 0.0);
}

TEST(LastDaysOfACourse, AreItsLastNightAndDayAndTheirMeans) {
  std::vector<float> nights(90, 1.0F);
  nights.back() = 31.0F;
  const Departures gone{{last - Days{89}, nights},
                        {last - Days{89}, std::vector<float>(90, -2.0F)}};
  const LastDays days = last_days(gone, last, last - Days{1});
  EXPECT_EQ(days.last_night, 31.0);
  EXPECT_EQ(days.last_day, -2.0);
  EXPECT_DOUBLE_EQ(days.night_mean_30, 2.0);
  EXPECT_NEAR(days.night_mean_90, 1.0 + 30.0 / 90.0, 1e-12);
  EXPECT_DOUBLE_EQ(days.day_mean_30, -2.0);
}

TEST(LastDaysOfACourse, DifferByNothingWhereOneOfTwoIsUnknown) {
  const LastDays known{1.0, 2.0, 3.0, 4.0, 5.0, 6.0};
  const LastDays half{unknown, 1.0, unknown, 1.0, unknown, 1.0};
  const LastDays differs = difference(known, half);
  EXPECT_EQ(differs.last_night, 0.0);
  EXPECT_EQ(differs.last_day, 1.0);
  EXPECT_EQ(differs.night_mean_30, 0.0);
  EXPECT_EQ(differs.night_mean_90, 3.0);
  EXPECT_EQ(differs.day_mean_30, 0.0);
  EXPECT_EQ(differs.day_mean_90, 5.0);
}

TEST(Memory, AddsUpWhatEachThingLeaves) {
  const LastDays differs{1.0, 2.0, 3.0, 4.0, 30.0, 40.0};
  const MemoryWeights weights{0.1, 0.2, 0.3, 0.4};
  EXPECT_NEAR(remembered_night_k(differs, weights), 0.1 + 0.4 + 0.9 + 1.6, 1e-12);
  EXPECT_NEAR(remembered_day_k(differs, weights), 0.1 + 0.4 + 9.0 + 16.0, 1e-12);
}

} // namespace
} // namespace nightsow::climate
