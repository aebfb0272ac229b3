#include "climate/frost.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace nightsow::climate {
namespace {

constexpr date::month_day hottest = date::February / 1;

Date day(int year, unsigned month, unsigned of_month) {
  return make_date(year, month, of_month).value();
}

/// Ten seasons of mild nights from 1 February 2001 on, with frost on the dates given.
DailySeries with_frost(const std::set<Date>& frosty) {
  const Date first = day(2001, 2, 1);
  DailySeries series{first, static_cast<std::size_t>(days_between(first, day(2011, 2, 1)))};
  for (std::size_t i = 0; i < series.size(); ++i) {
    series.set_night(i, frosty.count(series.date_of(i)) > 0 ? 0.0F : 4.0F);
  }
  return series;
}

TEST(FrostSeasons, AreTenWithoutAFrost) {
  const FrostSeasons frost = frost_seasons(with_frost({}), hottest);
  EXPECT_EQ(frost.seasons, 10);
  EXPECT_EQ(frost.without, 10);
  EXPECT_FALSE(frost.first);
  EXPECT_FALSE(frost.last);
  EXPECT_EQ(frost.nights_a_season, 0.0);
}

TEST(FrostSeasons, CountFirstAndLastFromTheHottestNight) {
  // In eight seasons the first frost comes 100 to 107 days after 1 February, the last 50 days on.
  std::set<Date> frosty;
  for (int i = 0; i < 8; ++i) {
    frosty.insert(day(2001 + i, 2, 1) + Days{100 + i});
    frosty.insert(day(2001 + i, 2, 1) + Days{150 + i});
  }
  const FrostSeasons frost = frost_seasons(with_frost(frosty), hottest);
  EXPECT_EQ(frost.without, 2);
  EXPECT_EQ(frost.first, (DaySpread{100, 103, 107}));
  EXPECT_EQ(frost.last, (DaySpread{150, 153, 157}));
  EXPECT_DOUBLE_EQ(frost.nights_a_season, 1.6);
}

TEST(FrostSeasons, AFrostAfterTheNewYearBelongsToTheSameCold) {
  const FrostSeasons frost =
      frost_seasons(with_frost({day(2003, 12, 20), day(2004, 1, 20)}), hottest);
  EXPECT_EQ(frost.without, 9);
  EXPECT_EQ(frost.last->p50 - frost.first->p50, 31);
}

TEST(FrostSeasons, NeedMostOfTheirNights) {
  DailySeries series = with_frost({});
  for (std::size_t i = 100; i < 118; ++i) {
    series.set_night(i, missing_c);
  }
  EXPECT_EQ(frost_seasons(series, hottest).seasons, 10);
  series.set_night(118, missing_c); // 19 of 365 are over a twentieth
  EXPECT_EQ(frost_seasons(series, hottest).seasons, 9);
}

TEST(FrostSeasons, CountOnlyWholeOnes) {
  EXPECT_EQ(frost_seasons(with_frost({}), date::February / 2).seasons, 9);
  EXPECT_EQ(frost_seasons(DailySeries{}, hottest).seasons, 0);
}

} // namespace
} // namespace nightsow::climate
