#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

TEST(DssatWeather, ValuesStandUnderTheirNames) {
  const Readings readings = read("*WEATHER DATA : No such farm\n"
                                 "\n"
                                 "@ INSI      LAT     LONG  ELEV   TAV\n"
                                 "  NOSF  -33.500   19.250   310  16.0\n"
                                 "@DATE  SRAD  TMAX  TMIN  RAIN\n"
                                 "24091   9.2  18.5   5.0   0.0\n"
                                 "24092        19.5  -6.5      \n"
                                 "24093   9.0         7.0   0.0\n"
                                 "24094   9.0 -99.0 -99.0   0.0\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18.5; 2024-04-01 -6.5/19.5; 2024-04-02 7/-");
  EXPECT_EQ(readings.format, "DSSAT weather file");
  EXPECT_EQ(readings.station.id, "NOSF");
  EXPECT_EQ(readings.station.latitude, -33.5);
  EXPECT_EQ(readings.station.longitude, 19.25);
  EXPECT_EQ(readings.station.elevation_m, 310.0);
}

TEST(DssatWeather, CommentsMayStandBetweenTheHeaders) {
  EXPECT_EQ(rows_of(read("$WEATHER DATA: No such farm\n"
                         "! yyyyddd\n"
                         "@  DATE    SRAD    TMAX    TMIN\n"
                         "! a remark\n"
                         "2024366   11.06    16.0     1.0\n")),
            "2024-12-31 1/16");
}

TEST(DssatWeather, YearsOfTwoDigitsAreOfTwoCenturiesAndThatIsSaid) {
  const Readings readings = read("@DATE  TMAX  TMIN\n"
                                 "36001  10.0   1.0\n"
                                 "35365  11.0   2.0\n");
  EXPECT_EQ(rows_of(readings), "1936-01-01 1/10; 2035-12-31 2/11");
  EXPECT_TRUE(says(readings.problems.at(0).found, "1936 to 2035"));
}

TEST(DssatWeather, ADayThatTheYearDoesNotHaveIsAFault) {
  const Readings readings = read("@DATE  TMAX  TMIN\n"
                                 "23366  10.0   1.0\n"
                                 "23365  11.0   2.0\n");
  EXPECT_EQ(rows_of(readings), "2023-12-31 2/11");
  EXPECT_EQ(readings.problems.at(0).line, 2U);
}

} // namespace
} // namespace nightsow::climate
