#include "planner/statistics/germination_indices.hpp"

#include <gtest/gtest.h>

#include <array>
#include <numeric>
#include <span>

namespace nightsow::planner {
namespace {

// Daily counts of 50 seeds over 14 days, and what the tests and manual of the R package
// germinationmetrics (ICAR-NBPGR) say of them; the file of each figure beside it.
constexpr std::array daily{0, 0, 0, 0, 4, 17, 10, 7, 1, 0, 1, 0, 0, 0};
constexpr int sown = 50;
constexpr double percent = 100.0 / sown;

std::span<const int> first_ten() {
  return std::span(daily).first(10);
}

TEST(GerminationIndices, TimesAreThoseOfThePackage) {
  const std::optional<GerminationTimes> times = germination_times(daily);
  ASSERT_TRUE(times);
  EXPECT_NEAR(times->came * percent, 80.0, 1e-9);                       // GermPercent
  EXPECT_NEAR(times->peak * percent, 34.0, 1e-9);                       // GermPercent
  EXPECT_EQ(times->peak_day, 6);                                        // FirstGermTime
  EXPECT_EQ(times->first_day, 5);                                       // FirstGermTime
  EXPECT_EQ(times->last_day, 11);                                       // FirstGermTime
  EXPECT_EQ(times->last_day - times->first_day, 6);                     // FirstGermTime
  EXPECT_NEAR(times->variance, 1.44615384615385, 1e-12);                // MeanGermTime
  EXPECT_NEAR(times->mean_error, 0.190141647604743, 1e-12);             // MeanGermTime
  EXPECT_NEAR(times->rate_a_day, 0.149253731343284, 1e-12);             // MeanGermRate
  EXPECT_NEAR(100.0 / times->mean_days, 14.9253731343284, 1e-11);       // MeanGermRate, CVG
  EXPECT_NEAR(times->rate_variance, 0.000717654291368627, 1e-15);       // MeanGermRate
  EXPECT_NEAR(times->entropy_bits, 2.06298725227405, 1e-12);            // GermSynchrony
  EXPECT_NEAR(times->uniformity, 0.709219858156028, 1e-12);             // CUGerm
  EXPECT_NEAR(times->came / times->mean_days, 5.97014925373134, 1e-11); // EmergenceRateIndex
  EXPECT_NEAR(times->came * percent / 14.0, 5.71428571428571, 1e-12);   // MeanGermPercent
  EXPECT_NEAR(times->came / 14.0, 2.85714285714286, 1e-12);             // MeanGermPercent
}

TEST(GerminationIndices, HalfIsThatOfThePackage) { // t50
  EXPECT_NEAR(half_came_days(daily).value_or(0.0), 5.97058823529412, 1e-12);
  EXPECT_NEAR(half_came_days(daily, MiddleSeed::farooq).value_or(0.0), 5.94117647058824, 1e-12);
}

TEST(GerminationIndices, SpeedsAreThoseOfThePackage) { // GermSpeed
  EXPECT_NEAR(germination_speed(daily), 6.13892496392496, 1e-12);
  EXPECT_NEAR(germination_speed(daily) * percent, 12.2778499278499, 1e-12);
  EXPECT_NEAR(accumulated_speed(daily), 34.6156676656677, 1e-12);
  EXPECT_NEAR(germination_speed(daily) * percent / 80.0, 0.153473124098124, 1e-12);
  EXPECT_NEAR(accumulated_speed(daily) * percent / 80.0, 0.865391691641692, 1e-12);
}

TEST(GerminationIndices, SumsAreThoseOfThePackage) { // TimsonsIndex, EmergenceRateIndex
  EXPECT_NEAR(cumulative_sum(daily) * percent, 664.0, 1e-9);
  EXPECT_NEAR(cumulative_sum(first_ten()) * percent, 344.0, 1e-9);
  EXPECT_NEAR(cumulative_sum(daily), 332.0, 1e-9);
  EXPECT_NEAR(cumulative_sum(first_ten()), 172.0, 1e-9);
  EXPECT_NEAR(emergence_index(daily), 292.0, 1e-9);
  EXPECT_NEAR(emergence_index(daily) / std::accumulate(daily.begin(), daily.end(), 0), 7.3, 1e-9);
}

TEST(GerminationIndices, TheHillCurveIsThatOfThePackage) { // FourPHFfit
  const HillCurve curve{0.0, 80.0, 9.88193689219798, 6.03495355423453};
  EXPECT_NEAR(hill_days_to(curve, 50.0).value_or(0.0), 6.3551214973865, 1e-6);
  EXPECT_NEAR(hill_days(curve, 0.5), 6.03495355423453, 1e-6);
  EXPECT_NEAR(hill_days(curve, 0.9), 7.53768963497883, 1e-6);
  EXPECT_NEAR(hill_days(curve, 0.1), 4.83180737938015, 1e-6);
  EXPECT_NEAR(hill_days(curve, 0.9) - hill_days(curve, 0.1), 2.70588225559868, 1e-6);
  EXPECT_FALSE(hill_days_to(curve, 80.0));
}

TEST(GerminationIndices, WhereNoneCameThereIsNoTime) {
  constexpr std::array none{0, 0, 0};
  EXPECT_FALSE(germination_times(none));
  EXPECT_FALSE(half_came_days(none));
  EXPECT_FALSE(half_came_days({}));
}

TEST(GerminationIndices, SeedThatAllCameOnOneDayHasNoSpread) {
  constexpr std::array once{0, 5, 0};
  const std::optional<GerminationTimes> times = germination_times(once);
  ASSERT_TRUE(times);
  EXPECT_EQ(times->variance, 0.0);
  EXPECT_EQ(times->entropy_bits, 0.0);
  EXPECT_EQ(half_came_days(once), 2.0);
}

} // namespace
} // namespace nightsow::planner
