#include "climate/sun.hpp"

#include <gtest/gtest.h>

#include <numbers>

namespace nightsow::climate {
namespace {

constexpr int june_solstice = 172;
constexpr int december_solstice = 355;

TEST(Sun, DaysAtTheEquatorAreTwelveHours) {
  for (const int day : {1, 80, 172, 266, 366}) {
    EXPECT_NEAR(day_length_hours(0.0, day), 12.0, 1e-9);
  }
}

TEST(Sun, ThePolarDayAndNightAreWhole) {
  EXPECT_DOUBLE_EQ(day_length_hours(80.0, june_solstice), 24.0);
  EXPECT_DOUBLE_EQ(day_length_hours(-80.0, june_solstice), 0.0);
  EXPECT_DOUBLE_EQ(day_length_hours(90.0, december_solstice), 0.0);
  EXPECT_DOUBLE_EQ(day_length_hours(-90.0, december_solstice), 24.0);
  EXPECT_DOUBLE_EQ(sunset_hour_angle_rad(80.0, june_solstice), std::numbers::pi);
}

TEST(Sun, DayAndNightOfOppositeLatitudesMakeOneDay) {
  for (int day = 1; day <= 366; day += 5) {
    EXPECT_NEAR(day_length_hours(34.0, day) + day_length_hours(-34.0, day), 24.0, 1e-9) << day;
  }
}

TEST(Sun, ADateStandsForItsDayOfTheYear) {
  const Date leap_end = make_date(2024, 12, 31).value();
  EXPECT_DOUBLE_EQ(day_length_hours(50.0, leap_end), day_length_hours(50.0, 366));
}

TEST(Sun, ThePolarNightHasNoRadiation) {
  EXPECT_DOUBLE_EQ(extraterrestrial_radiation_mj(-85.0, june_solstice), 0.0);
  EXPECT_DOUBLE_EQ(extraterrestrial_radiation_mj(90.0, december_solstice), 0.0);
}

TEST(Sun, TheEarthIsNearestInEarlyJanuary) {
  EXPECT_GT(inverse_relative_distance(3), inverse_relative_distance(184));
}

TEST(Sun, AClearSkyLetsMoreThroughUpTheMountain) {
  EXPECT_DOUBLE_EQ(clear_sky_radiation_mj(40.0, 0.0), 30.0);
  EXPECT_DOUBLE_EQ(clear_sky_radiation_mj(40.0, 1000.0), 30.8);
}

} // namespace
} // namespace nightsow::climate
