#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

TEST(GhcnLongCsv, ReadsRowsWithoutAHeader) {
  const Readings readings = read("XX000000001,20240331,TMAX,182,,,W,2400\n"
                                 "XX000000001,20240331,PRCP,0,,,W,2400\n"
                                 "XX000000001,20240331,TMIN,-51,,,W,2400\n");
  EXPECT_EQ(readings.format, "GHCN-Daily CSV, an element a row");
  EXPECT_EQ(rows_of(readings), "2024-03-31 -/18.2; 2024-03-31 -5.1/-");
  EXPECT_EQ(readings.station.id, "XX000000001");
  EXPECT_EQ(readings.rows_read, 3U);
}

TEST(GhcnLongCsv, AHeaderOfAnyNamesIsPassedOver) {
  const Readings readings = read("ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n"
                                 "XX000000001,20240331,TMIN,51,,,W,2400\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5.1/-");
  EXPECT_EQ(readings.rows[0].line, 2U);
}

TEST(GhcnLongCsv, TheStationMayBeCutAway) {
  const Readings readings =
      read("date,attr,value,a,b,c,d\n20240331,PRCP,0,,,W,\n2024-04-01,TMIN,51,,,W,\n");
  EXPECT_EQ(rows_of(readings), "2024-04-01 5.1/-");
  EXPECT_EQ(readings.station.id, "");
}

TEST(GhcnLongCsv, ColumnsBehindTheValueMayBeCutOff) {
  EXPECT_EQ(rows_of(read("XX000000001,20240331,TMIN,51\n")), "2024-03-31 5.1/-");
}

TEST(GhcnLongCsv, AFlaggedValueIsAFindingAndNotUsed) {
  const Readings readings =
      read("XX000000001,20240330,TMIN,51,,,W,\nXX000000001,20240331,TMIN,999,,X,W,\n");
  EXPECT_EQ(rows_of(readings), "2024-03-30 5.1/-");
  ASSERT_EQ(readings.findings.size(), 1U);
  EXPECT_EQ(readings.findings[0].line, 2U);
}

TEST(GhcnLongCsv, MissingValuesAreLeftOut) {
  EXPECT_EQ(
      rows_of(read("XX000000001,20240330,TMIN,-9999,,,,\nXX000000001,20240331,TMIN,-99,,,,\n")),
      "2024-03-31 -9.9/-");
}

TEST(GhcnLongCsv, FaultsAreListedWithTheirPlaces) {
  const Readings readings = read("XX000000001,20240331,TMIN,51,,,,\n"
                                 "XX000000001,20240332,TMIN,51,,,,\n"
                                 "XX000000001,20240331,TMAX,5.1,,,,\n"
                                 "XX000000001\n");
  EXPECT_EQ(readings.rows_faulty, 3U);
  ASSERT_EQ(readings.problems.size(), 3U);
  EXPECT_EQ(readings.problems[0].line, 2U);
  EXPECT_EQ(readings.problems[0].column, 13U);
  EXPECT_EQ(readings.problems[1].column, 27U);
  EXPECT_EQ(readings.problems[2].line, 4U);
}

TEST(GhcnLongCsv, SeveralStationsAreRefusedAndListed) {
  EXPECT_TRUE(
      says(refusal("XX000000001,20240331,TMIN,51,,,,\nXX000000002,20240331,TMIN,51,,,,\n").found,
           "XX000000001, XX000000002"));
}

} // namespace
} // namespace nightsow::climate
