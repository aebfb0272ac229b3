#include "climate/sun_year.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <numeric>

namespace nightsow::climate {
namespace {

TEST(SunYear, HasTheSunOfItsLatitudeOnEachDay) {
  const SunYear year{-33.1};
  for (const char* date : {"2026-01-01", "2026-06-21", "2024-02-29", "2024-12-31"}) {
    const Date day = support::day(date);
    const SunTimes sun = sun_times(-33.1, day_of_year(day));
    EXPECT_DOUBLE_EQ(year.on(day).times.rises_h, sun.rises_h) << date;
    EXPECT_DOUBLE_EQ(year.on(day).above_mj, extraterrestrial_radiation_mj(-33.1, day_of_year(day)))
        << date;
  }
}

// A watt for an hour is 0.0036 MJ; hours that begin at full ones sum a half-sine to a few percent.
TEST(SunYear, SpreadsTheSunOfADayOverItsHours) {
  for (const double latitude : {-33.1, 0.0, 52.0}) {
    const SunYear year{latitude};
    const SunDay& day = year.on(support::day("2026-03-21"));
    const double mj =
        0.0036 * std::accumulate(day.sun_w_per_mj.begin(), day.sun_w_per_mj.end(), 0.0);
    EXPECT_NEAR(mj, 1.0, 0.03) << latitude;
    EXPECT_TRUE(day.is_night(0));
    EXPECT_FALSE(day.is_night(12));
    EXPECT_EQ(day.sun_w_per_mj[0], 0.0);
  }
}

TEST(SunYear, HasNoSunInThePolarNight) {
  const SunYear year{80.0};
  for (const double sun : year.on(support::day("2026-12-21")).sun_w_per_mj) {
    EXPECT_EQ(sun, 0.0);
  }
}

TEST(SunYear, GoesOnOverTheTurnOfTheYearAsWithinIt) {
  const SunYear year{-33.1};
  const ExtremesAround even{10.0, 25.0, 10.0, 25.0, 10.0};
  const double before = hourly_air_c(even, year.on(support::day("2025-12-31")).air[20]);
  const double after = hourly_air_c(even, year.on(support::day("2026-01-01")).air[20]);
  EXPECT_NEAR(before, after, 0.02);
}

} // namespace
} // namespace nightsow::climate
