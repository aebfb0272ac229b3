#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

// An invented station; a preamble longer than the opening of a file, as the archive's are.
std::string midas(const std::string& rows, int lines_of_preamble = 3) {
  std::string text = "Conventions,G,BADC-CSV,1\n"
                     "observation_station,G,no-such-moor\n"
                     "location,G,54.25,-2.5\n"
                     "missing_value,G,NA\n";
  for (int i = 0; i < lines_of_preamble; ++i) {
    text += "long_name,column" + std::to_string(i) + ",some column,degC\n";
  }
  return text +
         "data\n"
         "ob_end_time,id,src_id,ob_hour_count,version_num,max_air_temp,min_air_temp,"
         "max_air_temp_q\n" +
         rows + "end data\n";
}

TEST(Midas, ARowOf24HoursIsADay) {
  const Readings readings = read(midas("2024-03-31 09:00:00,1,77,24,1,12.5,3.5,0\n"));
  EXPECT_EQ(rows_of(readings), "2024-03-31 3.5/12.5");
  EXPECT_EQ(readings.format, "MIDAS daily temperatures (BADC-CSV)");
  EXPECT_EQ(readings.station.id, "77");
  EXPECT_EQ(readings.station.name, "no-such-moor");
  EXPECT_EQ(readings.station.latitude, 54.25);
}

TEST(Midas, TwoRowsOf12HoursAreJoinedToTheDayThatEndsAtNine) {
  EXPECT_EQ(rows_of(read(midas("2024-03-30 21:00:00,1,77,12,1,14.0,6.0,0\n"
                               "2024-03-31 09:00:00,1,77,12,1,7.0,2.0,0\n"))),
            "2024-03-31 2/14");
}

TEST(Midas, HalfADayAloneIsNotUsedAndThatIsSaid) {
  const Readings readings = read(midas("2024-03-30 21:00:00,1,77,12,1,14.0,6.0,0\n"
                                       "2024-04-02 09:00:00,1,77,24,1,13.0,5.0,0\n"));
  EXPECT_EQ(rows_of(readings), "2024-04-02 5/13");
  EXPECT_TRUE(says(readings.problems.at(0).found, "2 values of 12 hours stand without"));
}

TEST(Midas, ARowOf24HoursGoesBeforeTwoHalves) {
  EXPECT_EQ(rows_of(read(midas("2024-03-30 21:00:00,1,77,12,1,14.0,6.0,0\n"
                               "2024-03-31 09:00:00,1,77,12,1,7.0,2.0,0\n"
                               "2024-03-31 09:00:00,1,77,24,1,14.5,NA,0\n"))),
            "2024-03-31 2/14.5");
}

TEST(Midas, OfTwoVersionsTheCheckedOneIsTaken) {
  EXPECT_EQ(rows_of(read(midas("2024-03-31 09:00:00,1,77,24,0,99.0,3.5,0\n"
                               "2024-03-31 09:00:00,1,77,24,1,12.5,3.5,0\n"
                               "2024-03-31 09:00:00,1,77,24,0,98.0,3.5,0\n"))),
            "2024-03-31 3.5/12.5");
}

TEST(Midas, TheDataMayBeginBehindHundredsOfLines) {
  const Readings readings = read(midas("2024-03-31 09:00:00,1,77,24,1,12.5,x,0\n", 300));
  EXPECT_EQ(rows_of(readings), "2024-03-31 -/12.5");
  EXPECT_EQ(readings.problems.at(0).line, 307U);
}

TEST(Midas, WithoutTheColumnsItIsRefused) {
  EXPECT_TRUE(says(refusal("Conventions,G,BADC-CSV,1\ndata\nob_end_time,prcp_amt\n").found,
                   "the columns of daily temperatures"));
}

} // namespace
} // namespace nightsow::climate
