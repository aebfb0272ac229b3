#include "planner/garden/time_zone.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace nightsow::planner {
namespace {

using support::day;

// 2026-02-20 23:30 UTC.
constexpr std::chrono::system_clock::time_point late_evening{std::chrono::seconds{1771630200}};

TEST(TimeZone, NamesOfTheTzDatabaseAreKnown) {
  EXPECT_TRUE(is_time_zone("Africa/Johannesburg"));
  EXPECT_TRUE(is_time_zone("UTC"));
  for (const std::string_view name : {"Africa/Capetown", "SAST+2", "../passwd", "Africa", ""}) {
    EXPECT_FALSE(is_time_zone(name)) << name;
  }
}

TEST(TimeZone, NamesAreListed) {
  const auto names = time_zone_names();
  EXPECT_NE(std::find(names.begin(), names.end(), "Europe/Amsterdam"), names.end());
}

TEST(TimeZone, TheCivilDateIsTheOneOfTheZone) {
  EXPECT_EQ(civil_date(late_evening, "UTC"), day("2026-02-20"));
  EXPECT_EQ(civil_date(late_evening, "Africa/Johannesburg"), day("2026-02-21"));
  EXPECT_EQ(civil_date(late_evening, "America/Santiago"), day("2026-02-20"));
}

TEST(TimeZone, WithoutAZoneItIsADayOfTheMachine) {
  const int away = days_between(day("2026-02-20"), civil_date(late_evening, ""));
  EXPECT_GE(away, -1);
  EXPECT_LE(away, 1);
}

} // namespace
} // namespace nightsow::planner
