// Published figures of FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes, Smith 1998).
#include "climate/sun.hpp"

#include <gtest/gtest.h>

#include <array>

namespace nightsow::climate {
namespace {

// The 15th of each month, the days that the tables of Annex 2 are for.
constexpr std::array middle_days{15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349};

struct TableRow {
  double latitude;
  std::array<double, 12> months;
};

TEST(SunFao56, NumbersDaysAsTable25Does) {
  // Annex 2 table 2.5; example 8: 3 September is day 246.
  EXPECT_EQ(day_of_year(make_date(2023, 9, 3).value()), 246);
  EXPECT_EQ(day_of_year(make_date(2023, 1, 15).value()), 15);
  EXPECT_EQ(day_of_year(make_date(2023, 12, 15).value()), 349);
}

TEST(SunFao56, FollowsExample8) {
  // 3 September at 20 degrees south.
  EXPECT_NEAR(inverse_relative_distance(246), 0.985, 0.0005);
  EXPECT_NEAR(solar_declination_rad(246), 0.120, 0.0005);
  EXPECT_NEAR(sunset_hour_angle_rad(-20.0, 246), 1.527, 0.0005);
  EXPECT_NEAR(extraterrestrial_radiation_mj(-20.0, 246), 32.2, 0.05);
}

TEST(SunFao56, FollowsExample9) {
  // Daylight hours of the same day and place.
  EXPECT_NEAR(day_length_hours(-20.0, 246), 11.7, 0.05);
}

TEST(SunFao56, ReproducesTheRadiationOfTable26) {
  // Annex 2 table 2.6, MJ m-2 d-1 with one decimal; equation 21 comes within 0.11 of it.
  constexpr std::array rows{
      TableRow{50, {8.9, 14.4, 22.2, 31.5, 38.5, 41.7, 40.2, 34.4, 25.7, 16.9, 10.2, 7.5}},
      TableRow{30, {21.1, 25.8, 31.4, 36.8, 40.0, 41.2, 40.6, 38.1, 33.4, 27.6, 22.2, 19.8}},
      TableRow{10, {31.8, 34.5, 36.9, 37.9, 37.6, 37.0, 37.1, 37.5, 37.1, 35.1, 32.4, 31.0}},
      TableRow{0, {36.2, 37.5, 37.9, 36.8, 34.8, 33.4, 33.9, 35.7, 37.2, 37.4, 36.3, 35.6}},
      TableRow{-20, {41.9, 40.0, 36.6, 31.3, 26.6, 24.1, 25.0, 28.9, 34.2, 38.6, 41.2, 42.1}},
      TableRow{-32, {43.3, 39.4, 33.7, 26.3, 20.3, 17.4, 18.5, 23.3, 30.4, 37.1, 42.0, 44.1}},
      TableRow{-34, {43.4, 39.2, 33.0, 25.3, 19.2, 16.2, 17.4, 22.3, 29.6, 36.7, 42.0, 44.3}},
      TableRow{-40, {43.4, 38.1, 30.9, 22.3, 15.8, 12.8, 13.9, 19.1, 27.1, 35.3, 41.8, 44.6}}};
  for (const TableRow& row : rows) {
    for (std::size_t month = 0; month < 12; ++month) {
      EXPECT_NEAR(
          extraterrestrial_radiation_mj(row.latitude, middle_days[month]), row.months[month], 0.15)
          << "latitude " << row.latitude << ", month " << month + 1;
    }
  }
}

TEST(SunFao56, ReproducesTheDaylightOfTable27) {
  // Annex 2 table 2.7, hours with one decimal.
  constexpr std::array rows{
      TableRow{-20, {13.1, 12.7, 12.1, 11.5, 11.1, 10.8, 10.9, 11.3, 11.9, 12.5, 13.0, 13.2}},
      TableRow{-30, {13.7, 13.0, 12.2, 11.3, 10.5, 10.1, 10.2, 10.9, 11.8, 12.7, 13.5, 13.9}},
      TableRow{-32, {13.9, 13.1, 12.2, 11.2, 10.4, 9.9, 10.1, 10.8, 11.8, 12.8, 13.7, 14.1}},
      TableRow{-40, {14.5, 13.5, 12.3, 10.9, 9.8, 9.2, 9.4, 10.4, 11.8, 13.1, 14.3, 14.8}}};
  for (const TableRow& row : rows) {
    for (std::size_t month = 0; month < 12; ++month) {
      EXPECT_NEAR(day_length_hours(row.latitude, middle_days[month]), row.months[month], 0.1)
          << "latitude " << row.latitude << ", month " << month + 1;
    }
  }
}

TEST(SunFao56, AClearSkyAtSeaLevelLetsThreeQuartersThrough) {
  // Equations 36 and 37.
  EXPECT_NEAR(clear_sky_radiation_mj(32.2, 0.0), 24.15, 0.005);
}

} // namespace
} // namespace nightsow::climate
