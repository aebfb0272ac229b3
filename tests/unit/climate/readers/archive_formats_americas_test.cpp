#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

// Layouts as the archives have them; stations and numbers are invented.

TEST(Gsod, IsInFahrenheitAndItsHourlyExtremesAreSaid) {
  const Readings readings = read(
      R"("STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME","TEMP","MAX","MAX_ATTRIBUTES","MIN","MIN_ATTRIBUTES","PRCP","FRSHTT"
"99999000001","2024-03-31","-33.5","19.25","310.0","NO SUCH FIELD, ZZ","  52.0","  65.3"," ","  41.0","*"," 0.00","000000"
"99999000001","2024-04-01","-33.5","19.25","310.0","NO SUCH FIELD, ZZ","  52.0","9999.9"," ","  42.8"," "," 0.00","000000"
)");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18.5; 2024-04-01 6/-");
  EXPECT_EQ(readings.unit, "°F");
  EXPECT_EQ(readings.station.name, "NO SUCH FIELD, ZZ");
  EXPECT_EQ(readings.station.latitude, -33.5);
  EXPECT_TRUE(says(readings.problems.at(0).found, "1 value is taken from the hourly readings"));
}

TEST(NasaPower, RowsBeginBehindTheHeaderWhateverItsLength) {
  const Readings readings = read(
      "-BEGIN HEADER-\r\n"
      "Dates (month/day/year): 03/31/2024 through 04/01/2024 in LST\r\n"
      "Location: latitude  -33.5   longitude 19.25 \r\n"
      "elevation from MERRA-2: Average for 0.5 x 0.625 degree lat/lon region = 310.5 meters\r\n"
      "T2M_MIN     MERRA-2 Temperature at 2 Meters Minimum (C) \r\n"
      "-END HEADER-\r\n"
      "YEAR,MO,DY,T2M_MIN,T2M_MAX\r\n"
      "2024,3,31,5.0,18.5\r\n"
      "2024,4,1,-999,19.5\r\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18.5; 2024-04-01 -/19.5");
  EXPECT_EQ(readings.station.latitude, -33.5);
  EXPECT_EQ(readings.station.longitude, 19.25);
  EXPECT_EQ(readings.station.elevation_m, 310.5);
  EXPECT_TRUE(says(readings.because.at(2), "in LST")) << readings.because.at(2);
}

TEST(NasaPower, DaysOfTheYearAreRead) {
  EXPECT_EQ(rows_of(read("-BEGIN HEADER-\n-END HEADER-\nYEAR,DOY,T2M_MAX,T2M_MIN\n"
                         "2024,91,18.5,5.0\n2024,366,19.5,6.0\n2023,366,1,1\n")),
            "2024-03-31 5/18.5; 2024-12-31 6/19.5");
}

constexpr std::string_view canada_names =
    R"names("Date/Time","Year","Month","Day","Data Quality","Max Temp (°C)","Max Temp Flag","Min Temp (°C)","Min Temp Flag","Mean Temp (°C)")names";

TEST(EnvironmentCanada, TheOlderLayoutHasALegendAboveItsTable) {
  const Readings readings =
      read("\"Station Name\",\"NO SUCH BAY\"\n\"Latitude\",\"46.50\"\n"
           "\"Climate Identifier\",\"9999001\"\n \n\"Legend\"\n\"E\",\"Estimated\"\n"
           "\"M\",\"Missing\"\n \n" +
           std::string(canada_names) +
           "\n\"2024-03-31\",\"2024\",\"03\",\"31\",\"\",\"8.5\",\"\",\"-5.0\",\"E\",\"1.8\"\n"
           "\"2024-04-01\",\"2024\",\"04\",\"01\",\"‡\",\"9.5\",\"\",\"\",\"M\",\"\"\n"
           "\"2024-04-02\",\"2024\",\"04\",\"02\",\"\",\"\",\"\",\"\",\"\",\"\"\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 -5/8.5; 2024-04-01 -/9.5");
  EXPECT_EQ(readings.station.id, "9999001");
  EXPECT_EQ(readings.station.name, "NO SUCH BAY");
  EXPECT_EQ(readings.station.latitude, 46.5);
  ASSERT_EQ(readings.problems.size(), 2U);
  EXPECT_TRUE(says(readings.problems[0].found, "1 value is estimated (E)"));
  EXPECT_TRUE(says(readings.problems[1].found, "1 value is not reviewed"));
}

TEST(EnvironmentCanada, TheBulkLayoutNamesItsStationInEachRow) {
  const Readings readings = read(
      "\xEF\xBB\xBF\"Longitude (x)\",\"Latitude (y)\",\"Station Name\",\"Climate ID\"," +
      std::string(canada_names) +
      "\n\"-60.5\",\"46.5\",\"NO SUCH BAY\",\"9999001\",\"2024-03-31\",\"2024\",\"03\",\"31\",\"\","
      "\"8.5\",\"\",\"-5.0\",\"\",\"1.8\"\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 -5/8.5");
  EXPECT_EQ(readings.station.id, "9999001");
  EXPECT_EQ(readings.station.longitude, -60.5);
}

TEST(GhcnSubset, RowsOfTenthsWithoutHeaderAreToldByTheirShape) {
  const Readings readings = read("20240331\t  185\t   50\t    0\n"
                                 "20240401\t  195\t-9999\t-9999\n"
                                 "20240402\t  -11\t -100\t    0\n"
                                 "20240403\t  205\t   70\t    0\n");
  EXPECT_EQ(rows_of(readings),
            "2024-03-31 5/18.5; 2024-04-01 -/19.5; 2024-04-02 -10/-1.1; 2024-04-03 7/20.5");
  EXPECT_TRUE(says(readings.problems.at(0).found, "no line names the columns"));
}

TEST(GhcnSubset, RowsInWholeDegreesAreNotTakenForTenths) {
  for (const char* text : {"20240331 18.5 5.0 0\n20240401 19.5 6.0 0\n20240402 20.5 7.0 0\n",
                           "20240331 18 5 0\n20240401 19 6 0\n20240402 20 7 0\n"}) {
    EXPECT_TRUE(says(refusal(text).found, "no known weather format")) << text;
  }
}

} // namespace
} // namespace nightsow::climate
