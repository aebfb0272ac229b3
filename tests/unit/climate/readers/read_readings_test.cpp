#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

#include <string>

namespace nightsow::climate {
namespace {

TEST(ReadReadings, ContentDecidesAndTheNameDoesNot) {
  const std::string table = "date,tmin_c\n2024-03-31,5\n";
  EXPECT_EQ(read_readings(table, "station.dly").format, "daily table");
  EXPECT_EQ(read_readings("XX000000001202403TMIN   51  C", "table.csv").format, "GHCN-Daily .dly");
}

TEST(ReadReadings, NamesTheFileAsThePersonDid) {
  const Readings readings = read_readings("date,tmin_c\n2024-03-31,5\nx,6\n", "readings/a.csv");
  EXPECT_EQ(readings.file, "readings/a.csv");
  EXPECT_EQ(readings.problems.at(0).where, "readings/a.csv");
}

TEST(ReadReadings, GivesItsReasonsFirstThingFirst) {
  const Readings readings = read("date,tmin_c\n2024-03-31,5\n");
  ASSERT_FALSE(readings.because.empty());
  EXPECT_TRUE(says(readings.because[0], "line 1 names the columns"));
}

TEST(ReadReadings, NotOneUsableRowIsRefusedWithTheFirstFault) {
  const Problem problem = refusal("date,tmin_c\nyesterday,5\ntoday,6\n");
  EXPECT_TRUE(says(problem.found, "not one of 2 rows gives a temperature; line 2: 'yesterday'"))
      << problem.found;
}

TEST(ReadReadings, AHeaderAloneIsRefused) {
  EXPECT_TRUE(says(refusal("date,tmin_c\n").found, "no rows")) << refusal("date,tmin_c\n").found;
}

TEST(ReadReadings, AStationMayBeAskedForByItsId) {
  const std::string table = "station,date,tmin_c\nA1,2024-03-31,5\nB2,2024-03-31,6\n";
  EXPECT_TRUE(says(refusal(table).found, "A1, B2"));
  EXPECT_EQ(rows_of(read_readings(table, "file.csv", {std::string("B2"), "", ""})),
            "2024-03-31 6/-");
}

TEST(ReadReadings, AFileOfNoStationOrOfAnotherIsNotTheOneAskedFor) {
  const auto refused = [](const std::string& text) {
    try {
      static_cast<void>(read_readings(text, "file.csv", {std::string("B2"), "", ""}));
    } catch (const InputError& error) {
      return error.problem().found;
    }
    return std::string("read");
  };
  EXPECT_TRUE(says(refused("date,tmin_c\n2024-03-31,5\n"), "names no station"));
  EXPECT_TRUE(says(refused("*WEATHER\n@ INSI   LAT\n  A1XX -33.5\n@DATE  TMIN\n24091   5.0\n"),
                   "is of 'A1XX'"));
}

TEST(ReadReadings, EmptyFilesAreRefused) {
  EXPECT_EQ(refusal("").found, "the file is empty");
}

TEST(ReadReadings, SaysWhenNotAllFaultsAreListed) {
  std::string text = "date,tmin_c\n2024-03-31,5\n";
  for (int i = 0; i < 1200; ++i) {
    text += "x,5\n";
  }
  const Readings readings = read(text);
  EXPECT_EQ(readings.rows_faulty, 1200U);
  ASSERT_EQ(readings.problems.size(), 1001U);
  EXPECT_TRUE(
      says(readings.problems.back().found, "only the first 1000 faults of 1200 faulty rows"));
}

} // namespace
} // namespace nightsow::climate
