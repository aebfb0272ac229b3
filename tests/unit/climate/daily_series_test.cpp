#include "climate/daily_series.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace nightsow::climate {
namespace {

Date day(unsigned day_of_march) {
  return make_date(2024, 3, day_of_march).value();
}

// Nights from 1 March 2024 on.
DailySeries nights(const std::vector<float>& values) {
  DailySeries series{day(1), values.size()};
  for (std::size_t i = 0; i < values.size(); ++i) {
    series.set_night(i, values[i]);
  }
  return series;
}

std::size_t missing(const std::vector<float>& values) {
  std::size_t count = 0;
  for (const float value : values) {
    count += std::isnan(value) ? 1U : 0U;
  }
  return count;
}

TEST(DailySeries, BeginsWithEveryDayMissing) {
  const DailySeries series{day(1), 3};
  EXPECT_EQ(series.last(), day(3));
  EXPECT_EQ(missing({series.night_c().begin(), series.night_c().end()}), 3U);
  EXPECT_EQ(missing({series.day_c().begin(), series.day_c().end()}), 3U);
}

TEST(DailySeries, FindsTheDaysItHolds) {
  const DailySeries series{day(5), 3};
  EXPECT_FALSE(series.index_of(day(4)));
  EXPECT_EQ(series.index_of(day(5)), 0U);
  EXPECT_EQ(series.index_of(day(7)), 2U);
  EXPECT_FALSE(series.index_of(day(8)));
}

TEST(DailySeries, AnEmptyOneHoldsNoDay) {
  EXPECT_TRUE(DailySeries{}.empty());
  EXPECT_FALSE(DailySeries{}.index_of(Date{}));
  EXPECT_FALSE(last_night(DailySeries{}));
}

TEST(DailySeries, APartBeyondEitherEndIsMissingThere) {
  const std::vector<float> part = nights({1, 2, 3}).nights_from(day(1) - Days{1}, 5);
  ASSERT_EQ(part.size(), 5U);
  EXPECT_TRUE(std::isnan(part[0]));
  EXPECT_EQ(part[1], 1.0F);
  EXPECT_EQ(part[3], 3.0F);
  EXPECT_TRUE(std::isnan(part[4]));
}

TEST(DailySeries, APartWhollyOutsideIsWhollyMissing) {
  EXPECT_EQ(missing(nights({1, 2}).nights_from(day(20), 4)), 4U);
  EXPECT_EQ(missing(nights({1, 2}).nights_from(day(1) - Days{20}, 4)), 4U);
  EXPECT_EQ(missing(DailySeries{}.days_from(day(1), 4)), 4U);
  EXPECT_TRUE(nights({1, 2}).nights_from(day(1), 0).empty());
}

TEST(DailySeries, AHoleOfThreeIsFilledOnTheStraightLine) {
  DailySeries series = nights({10, missing_c, missing_c, missing_c, 2});
  EXPECT_EQ(fill_short_holes(series), 3);
  EXPECT_FLOAT_EQ(series.night_c()[1], 8.0F);
  EXPECT_FLOAT_EQ(series.night_c()[2], 6.0F);
  EXPECT_FLOAT_EQ(series.night_c()[3], 4.0F);
}

TEST(DailySeries, AHoleOfFourStaysOpen) {
  DailySeries series = nights({10, missing_c, missing_c, missing_c, missing_c, 2});
  EXPECT_EQ(fill_short_holes(series), 0);
  EXPECT_TRUE(std::isnan(series.night_c()[2]));
}

TEST(DailySeries, FilledNightsAreMarkedAndTheOthersAreNot) {
  DailySeries series = nights({10, missing_c, 8});
  fill_short_holes(series);
  EXPECT_EQ(series.night_mark()[0], Mark::observed);
  EXPECT_EQ(series.night_mark()[1], Mark::filled);
  EXPECT_EQ(series.night_mark()[2], Mark::observed);
}

TEST(DailySeries, HolesAtTheEndsHaveNoNeighbourAndStayOpen) {
  DailySeries series = nights({missing_c, 5, missing_c});
  EXPECT_EQ(fill_short_holes(series), 0);
}

TEST(DailySeries, FillingLeavesTheDaysAlone) {
  DailySeries series = nights({10, missing_c, 8});
  fill_short_holes(series);
  EXPECT_TRUE(std::isnan(series.day_c()[1]));
}

TEST(DailySeries, TheLastNightIsTheLastThatIsThere) {
  EXPECT_EQ(last_night(nights({1, 2, missing_c})), day(2));
  EXPECT_FALSE(last_night(nights({missing_c, missing_c})));
}

} // namespace
} // namespace nightsow::climate
