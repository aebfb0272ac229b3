#include "climate/archive/station_list.hpp"

#include "climate/base/problem.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

// Invented stations in the columns of the archive's own files.
constexpr std::string_view stations =
    "XX000000002 -33.1000   19.2000  950.0    INVENTED PEAK                  GSN     99999\n"
    "XX000000001 -33.0000   19.0000  200.0 WC INVENTED SLOPE\r\n"
    "XX000000003 -33.0500   19.1000 -999.9    KLOOF DES PR\xC3\xA9S\n"
    "\n"
    "XX000000004 -33.0000\n"
    "XX000000005 -93.0000   19.0000  200.0    BEYOND THE POLE\n"
    "XX000000006 -33.0000   19.0000";

constexpr std::string_view inventory = "XX000000001 -33.0000   19.0000 TMAX 1961 2025\n"
                                       "XX000000001 -33.0000   19.0000 TMIN 1971 2024\n"
                                       "XX000000002 -33.1000   19.2000 TMAX 1981 2025\n"
                                       "XX000000002 -33.1000   19.2000 TMIN 1981 2025\n"
                                       "XX000000003 -33.0500   19.1000 TMIN 1990 1999\n"
                                       "XX000000099 -33.0500   19.1000 TMIN 1990 1999\n"
                                       "XX000000003 -33.0500   19.1000 TMAX 1999\n"
                                       "XX000000006 -33.0000   19.0000 PRCP 1961 2025\n";

const Place garden{-33.0, 19.0, 300.0};

std::vector<WeighedStation> nearest(std::size_t most = 10) {
  return nearest_stations(read_station_list(stations, inventory), garden, 2026, most);
}

TEST(StationList, AShortLineIsReadAsFarAsItGoes) {
  const StationList list = read_station_list(stations, inventory);
  ASSERT_EQ(list.stations.size(), 4U);
  EXPECT_EQ(list.stations[3].id, "XX000000006");
  EXPECT_EQ(list.stations[3].elevation_m, std::nullopt);
  EXPECT_EQ(list.stations[0].name, "INVENTED SLOPE");
  EXPECT_EQ(list.stations[2].name, "KLOOF DES PR\xC3\xA9S");
}

TEST(StationList, WhatCannotBeReadIsCounted) {
  EXPECT_EQ(read_station_list(stations, inventory).unread_lines, 3U);
}

TEST(StationList, TheMarkForAnUnknownHeightIsNoHeight) {
  EXPECT_EQ(read_station_list(stations, inventory).stations[2].elevation_m, std::nullopt);
}

TEST(StationList, NightsAndDaysHaveYearsOfTheirOwn) {
  const StationList list = read_station_list(stations, inventory);
  EXPECT_EQ(list.stations[0].days, (YearSpan{1961, 2025}));
  EXPECT_EQ(list.stations[0].nights, (YearSpan{1971, 2024}));
  EXPECT_EQ(list.stations[2].days, std::nullopt);
}

TEST(StationList, AnotherFileIsRefused) {
  EXPECT_THROW((void)read_station_list("<html>log in</html>\n", inventory), InputError);
  EXPECT_THROW((void)read_station_list(stations, "<html>log in</html>\n"), InputError);
}

TEST(StationList, AQuarterOfTheEarthIsTenThousandKilometres) {
  // A quarter of a great circle of a sphere of 6371 km: 6371 * pi / 2.
  EXPECT_NEAR(distance_km(0, 0, 90, 0), 10007.5, 0.1);
  EXPECT_NEAR(distance_km(0, 170, 0, -100), 10007.5, 0.1);
  EXPECT_DOUBLE_EQ(distance_km(-33, 19, -33, 19), 0.0);
}

TEST(NearestStations, OnlyStationsWithNightsAndDaysCount) {
  const auto best = nearest();
  ASSERT_EQ(best.size(), 2U);
  EXPECT_EQ(best[0].station.id, "XX000000001");
  EXPECT_EQ(nearest(1).size(), 1U);
}

TEST(NearestStations, YearsAreThoseThatNightsAndDaysShare) {
  EXPECT_EQ(nearest()[0].years, 2024 - 1971 + 1);
  EXPECT_EQ(nearest()[0].last_year, 2024);
}

TEST(NearestStations, ThePartsOfTheDoubtAddUp) {
  const WeighedStation slope = nearest()[0];
  EXPECT_DOUBLE_EQ(slope.distance_km, 0.0);
  EXPECT_DOUBLE_EQ(*slope.higher_m, -100.0);
  EXPECT_DOUBLE_EQ(slope.for_height, 15.0); // 0.15 km a metre
  EXPECT_DOUBLE_EQ(slope.for_years, 0.0);   // more than thirty
  EXPECT_DOUBLE_EQ(slope.for_age, 5.0);     // one full year is missing
  EXPECT_DOUBLE_EQ(slope.doubt(), 20.0);
}

TEST(NearestStations, AShortOrEndedRecordFartherUpIsWorthLess) {
  const auto doubt = [](std::string_view years) {
    const std::string text = "XX000000001 -33.0000   19.0000 TMAX " + std::string(years) +
                             "\nXX000000001 -33.0000   19.0000 TMIN " + std::string(years) + "\n";
    return nearest_stations(read_station_list(stations, text), garden, 2026, 1).at(0).doubt();
  };
  EXPECT_LT(doubt("1961 2025"), doubt("2010 2025"));
  EXPECT_LT(doubt("1961 2025"), doubt("1961 2010"));
}

TEST(NearestStations, BeyondThreeHundredKilometresThereIsNone) {
  const Place far{-33.0, 23.0, 300.0}; // 4 degrees, 373 km
  EXPECT_TRUE(nearest_stations(read_station_list(stations, inventory), far, 2026, 10).empty());
}

} // namespace
} // namespace nightsow::climate
