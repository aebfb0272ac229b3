#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

#include <map>
#include <string>

namespace nightsow::climate {
namespace {

// A line of the fixed format; days that are not named are missing. Values hold five characters and
// the three flags.
std::string line(std::string_view head, const std::map<int, std::string>& days = {}) {
  std::string text(head);
  for (int day = 1; day <= 31; ++day) {
    const auto named = days.find(day);
    text += named == days.end() ? "-9999   " : named->second;
  }
  return text + "\n";
}

TEST(GhcnDly, ReadsTenthsOfBothElements) {
  const Readings readings = read(line("XX000000001202403TMAX", {{31, "  182  C"}}) +
                                 line("XX000000001202403TMIN", {{31, "  -51  C"}}));
  EXPECT_EQ(readings.format, "GHCN-Daily .dly");
  EXPECT_EQ(rows_of(readings), "2024-03-31 -/18.2; 2024-03-31 -5.1/-");
  EXPECT_EQ(readings.unit, "tenths of °C");
  EXPECT_EQ(readings.station.id, "XX000000001");
}

TEST(GhcnDly, PassesOverOtherElementsButCountsTheirLines) {
  const Readings readings = read(line("XX000000001202403PRCP", {{1, "   12  C"}}) +
                                 line("XX000000001202403TMIN", {{1, "   51  C"}}));
  EXPECT_EQ(readings.rows_read, 2U);
  EXPECT_EQ(rows_of(readings), "2024-03-01 5.1/-");
}

TEST(GhcnDly, AFlaggedValueIsAFindingAndNotUsed) {
  const Readings readings = read(line("XX000000001202403TMIN", {{1, "   51  C"}, {2, " -178 IC"}}));
  EXPECT_EQ(rows_of(readings), "2024-03-01 5.1/-");
  ASSERT_EQ(readings.findings.size(), 1U);
  EXPECT_EQ(readings.findings[0].kind, FindingKind::flagged);
  EXPECT_EQ(readings.findings[0].verdict, Verdict::ignored);
  EXPECT_NEAR(readings.findings[0].value_c, -17.8, 1e-5);
  EXPECT_EQ(readings.findings[0].line, 1U);
}

TEST(GhcnDly, AMeasurementFlagIsNoQualityFlag) {
  EXPECT_EQ(rows_of(read(line("XX000000001202403TMIN", {{1, "   51H S"}}))), "2024-03-01 5.1/-");
}

TEST(GhcnDly, LinesMayBeCutShortOfTheirBlanks) {
  EXPECT_EQ(rows_of(read("XX000000001202403TMIN   51  C   40\n")),
            "2024-03-01 5.1/-; 2024-03-02 4/-");
}

TEST(GhcnDly, DaysThatAMonthLacksAreMissing) {
  const Readings readings = read(line("XX000000001202302TMIN", {{28, "   51  C"}}));
  EXPECT_EQ(rows_of(readings), "2023-02-28 5.1/-");
  EXPECT_TRUE(readings.problems.empty());
}

TEST(GhcnDly, AValueOnADayThatAMonthLacksIsAFault) {
  const Readings readings =
      read(line("XX000000001202302TMIN", {{28, "   51  C"}, {29, "   60  C"}}));
  EXPECT_EQ(rows_of(readings), "2023-02-28 5.1/-");
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_EQ(readings.problems[0].line, 1U);
  EXPECT_EQ(readings.problems[0].column, 246U);
}

TEST(GhcnDly, ADamagedValueIsListedAndTheOthersAreUsed) {
  const Readings readings = read(line("XX000000001202403TMIN", {{1, "   5x  C"}, {2, "   60  C"}}));
  EXPECT_EQ(rows_of(readings), "2024-03-02 6/-");
  EXPECT_EQ(readings.rows_faulty, 1U);
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_EQ(readings.problems[0].column, 22U);
}

TEST(GhcnDly, ADamagedHeadIsListedAndTheOtherLinesAreUsed) {
  const Readings readings = read(line("XX000000001202403TMIN", {{1, "   51  C"}}) +
                                 line("XX000000001202413TMIN", {{1, "   51  C"}}) +
                                 line("XX000000001202404TMIN", {{1, "   60  C"}}));
  EXPECT_EQ(rows_of(readings), "2024-03-01 5.1/-; 2024-04-01 6/-");
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_EQ(readings.problems[0].line, 2U);
}

TEST(GhcnDly, SeveralStationsAreRefusedAndListed) {
  EXPECT_TRUE(says(refusal(line("XX000000001202403TMIN") + line("XX000000002202403TMIN")).found,
                   "XX000000001, XX000000002"));
}

TEST(GhcnDly, AFileWithoutAnyTemperatureIsRefused) {
  EXPECT_TRUE(says(refusal(line("XX000000001202403PRCP", {{1, "   12  C"}})).found,
                   "not one of 1 rows gives a temperature"));
}

TEST(GhcnMonthCsv, ReadsAMonthARow) {
  const Readings readings =
      read(R"("id","year","month","element","VALUE1","MFLAG1","QFLAG1","SFLAG1",)"
           "\"VALUE2\",\"MFLAG2\",\"QFLAG2\",\"SFLAG2\"\n"
           "\"XX000000001\",2024,3,\"TMIN\",51,\" \",\" \",\"E\",NA,\" \",\" \",\" \"\n"
           "\"XX000000001\",2024,3,\"TMAX\",182,\" \",\"I\",\"E\",190,\" \",\" \",\"E\"\n");
  EXPECT_EQ(rows_of(readings), "2024-03-01 5.1/-; 2024-03-02 -/19");
  ASSERT_EQ(readings.findings.size(), 1U);
  EXPECT_EQ(readings.findings[0].line, 3U);
  EXPECT_EQ(readings.station.id, "XX000000001");
}

} // namespace
} // namespace nightsow::climate
