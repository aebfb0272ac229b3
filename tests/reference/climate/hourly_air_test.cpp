// Hourly temperatures of the R package chillR, vignette "Hourly temperatures" (after Linvill 1990).
#include "climate/hourly.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace nightsow::climate {
namespace {

constexpr double pi = std::numbers::pi;

// The package's own sun: Spencer's declination (1971), the disc's upper edge with refraction.
SunTimes chillr_sun(double latitude_deg, int day_of_year) {
  const double g = 2.0 * pi * (day_of_year - 1) / 365.0;
  const double declination = 0.006918 - 0.399912 * std::cos(g) + 0.070257 * std::sin(g) -
                             0.006758 * std::cos(2.0 * g) + 0.000907 * std::sin(2.0 * g) -
                             0.002697 * std::cos(3.0 * g) + 0.00148 * std::sin(3.0 * g);
  const double latitude = latitude_deg * pi / 180.0;
  const double cosine =
      (std::sin(-0.8333 * pi / 180.0) - std::sin(latitude) * std::sin(declination)) /
      (std::cos(latitude) * std::cos(declination));
  const double half = std::acos(cosine) * 12.0 / pi;
  return {12.0 - half, 12.0 + half};
}

TEST(HourlyAir, HasTheSunOfThePackageInThisTest) {
  // daylength(50.4, 15): sunrise, sunset.
  EXPECT_NEAR(chillr_sun(50.4, 15).rises_h, 7.766425, 6e-6);
  EXPECT_NEAR(chillr_sun(50.4, 15).sets_h, 16.23357, 6e-6);
  // Its table daylength(50.5, 1:365); our own days have no refraction, see sun_fao56_test.
  constexpr std::array<std::pair<int, double>, 5> table{
      {{1, 8.074373}, {2, 8.091618}, {3, 8.110474}, {5, 8.152932}, {6, 8.176486}}};
  for (const auto& [day, hours] : table) {
    const SunTimes sun = chillr_sun(50.5, day);
    EXPECT_NEAR(sun.sets_h - sun.rises_h, hours, 6e-7) << day;
  }
}

TEST(HourlyAir, FollowsThePackageAfterSunset) {
  // stack_hourly_temps(KA_weather, 50.4), 1 January 1998, hours 19 and 23. Before sunrise the
  // package leaves out the + 1 under the logarithm, and steps at midnight; we do not.
  const ExtremesAround air{5.1, 8.2, 5.1, 8.2, 5.0};
  const SunsAround around{chillr_sun(50.4, 1), chillr_sun(50.4, 1), chillr_sun(50.4, 2)};
  EXPECT_NEAR(hourly_air_c(air, hour_shares(around, 19.0)), 6.424223, 1e-3);
  EXPECT_NEAR(hourly_air_c(air, hour_shares(around, 23.0)), 5.738969, 1e-3);
}

// Hours 2, 3 and 5 of 2 January of the same table. The package there divides by the logarithm of
// the night's length instead of length + 1, which is 0.06 K.
TEST(HourlyAir, LiesNearThePackageBeforeSunrise) {
  const ExtremesAround air{5.1, 8.2, 5.0, 9.1, 3.3};
  const SunsAround around{chillr_sun(50.4, 1), chillr_sun(50.4, 2), chillr_sun(50.4, 3)};
  const auto at = [&](double hour) { return hourly_air_c(air, hour_shares(around, hour)); };
  EXPECT_NEAR(at(2.0), 5.373123, 0.06);
  EXPECT_NEAR(at(3.0), 5.28565, 0.06);
  EXPECT_NEAR(at(5.0), 5.13075, 0.06);
}

// Cesaraccio and others 2001 (R package TrenchR, test-22-DTRFunctions.R), 10 to 30 °C, sun from 6
// to 18: their sine from sunrise to four hours before sunset is Linvill's rise where days have
// twelve hours.
TEST(HourlyAir, RisesAsThatOfCesaraccioDoes) {
  const SunTimes sun{6.0, 18.0};
  const ExtremesAround air{10.0, 30.0, 10.0, 30.0, 12.0};
  EXPECT_NEAR(hourly_air_c(air, hour_shares({sun, sun, sun}, 8.0)), 17.65367, 6e-6);
}

TEST(HourlyAir, HasNoStepAtMidnightSunriseOrSunset) {
  const SunsAround first_nights{{6.1, 17.9}, {6.2, 17.8}, {6.3, 17.7}};
  const SunsAround second_nights{{6.2, 17.8}, {6.3, 17.7}, {6.3, 17.7}};
  const auto first = [&](double hour) {
    return hourly_air_c({6.0, 17.0, 6.0, 17.0, 9.0}, hour_shares(first_nights, hour));
  };
  const auto second = [&](double hour) {
    return hourly_air_c({6.0, 17.0, 9.0, 15.0, 9.0}, hour_shares(second_nights, hour));
  };
  EXPECT_NEAR(first(24.0), second(0.0), 1e-9);
  EXPECT_NEAR(second(6.3 - 1e-9), 9.0, 1e-6);
  EXPECT_NEAR(second(6.3), 9.0, 1e-9);
  EXPECT_NEAR(first(17.8), first(17.8 + 1e-9), 1e-6);
}

TEST(HourlyAir, IsSharedOutAmongTheExtremesWholly) {
  for (const double hours_of_day : {0.5, 8.0, 12.0, 16.0, 23.5}) {
    const SunTimes sun{12.0 - 0.5 * hours_of_day, 12.0 + 0.5 * hours_of_day};
    for (int hour = 0; hour <= 24; ++hour) {
      const HourShares shares = hour_shares({sun, sun, sun}, hour);
      EXPECT_NEAR(hourly_air_c({1.0, 1.0, 1.0, 1.0, 1.0}, shares), 1.0, 1e-12)
          << hours_of_day << " hours of day, at " << hour;
    }
  }
}

} // namespace
} // namespace nightsow::climate
