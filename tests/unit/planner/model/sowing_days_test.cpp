#include "planner/model/sowing_days.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using nightsow::support::day;

/// 4 and 5 April 2026 are a Saturday and a Sunday.
Garden weekends() {
  Garden garden;
  garden.sowing_days = {"sat", "sun"};
  return garden;
}

TEST(SowingDays, AreAllDaysWhereNoneIsNamed) {
  EXPECT_TRUE(is_sowing_day(Garden{}, day("2026-04-01")));
}

TEST(SowingDays, AreTheWeekdaysThatAreNamed) {
  EXPECT_FALSE(is_sowing_day(weekends(), day("2026-04-03")));
  EXPECT_TRUE(is_sowing_day(weekends(), day("2026-04-04")));
  EXPECT_TRUE(is_sowing_day(weekends(), day("2026-04-05")));
  EXPECT_FALSE(is_sowing_day(weekends(), day("2026-04-06")));
}

TEST(SowingDays, AreNoneOfThoseAwayFirstAndLastIncluded) {
  Garden garden;
  garden.away = {{day("2026-04-04"), day("2026-04-11")}};
  EXPECT_TRUE(is_sowing_day(garden, day("2026-04-03")));
  EXPECT_FALSE(is_sowing_day(garden, day("2026-04-04")));
  EXPECT_FALSE(is_sowing_day(garden, day("2026-04-11")));
  EXPECT_TRUE(is_sowing_day(garden, day("2026-04-12")));
}

TEST(SowingDayFor, IsTheLastSowingDayBeforeFirstWater) {
  const Date today = day("2026-04-01");
  EXPECT_EQ(sowing_day_for(weekends(), today, day("2026-04-15")), day("2026-04-12"));
  EXPECT_EQ(sowing_day_for(weekends(), today, day("2026-04-11")), day("2026-04-11"));
}

TEST(SowingDayFor, IsTheFirstAfterItWhereNoneComesBefore) {
  const Date today = day("2026-04-06"); // a Monday
  EXPECT_EQ(sowing_day_for(weekends(), today, day("2026-04-09")), day("2026-04-11"));
}

TEST(SowingDayFor, PassesOverDaysAway) {
  Garden garden = weekends();
  garden.away = {{day("2026-04-10"), day("2026-04-12")}};
  EXPECT_EQ(sowing_day_for(garden, day("2026-04-01"), day("2026-04-15")), day("2026-04-05"));
  EXPECT_EQ(sowing_day_for(garden, day("2026-04-06"), day("2026-04-15")), day("2026-04-18"));
}

TEST(SowingDayFor, IsNeverBeforeToday) {
  EXPECT_EQ(sowing_day_for(Garden{}, day("2026-04-06"), day("2026-03-01")), day("2026-04-06"));
}

TEST(SowingDayFor, IsNoneForAGrowerWhoIsAwayAllYear) {
  Garden garden;
  garden.away = {{day("2026-01-01"), day("2028-01-01")}};
  EXPECT_FALSE(sowing_day_for(garden, day("2026-04-06"), day("2026-05-01")));
}

} // namespace
} // namespace nightsow::planner
