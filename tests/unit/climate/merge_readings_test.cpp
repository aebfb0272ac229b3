#include "climate/merge_readings.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace nightsow::climate {
namespace {

struct Row {
  unsigned day_of_march;
  float night_c;
  float day_c;
};

Date day(unsigned day_of_march) {
  return make_date(2024, 3, day_of_march).value();
}

// Lines are counted from 2, as below a header.
Readings file(std::string name, const std::vector<Row>& rows) {
  Readings readings;
  readings.file = std::move(name);
  std::uint32_t line = 2;
  for (const Row& row : rows) {
    readings.rows.push_back({day(row.day_of_march), row.night_c, row.day_c, line++});
  }
  return readings;
}

MergedReadings merged(const std::vector<Readings>& files) {
  return merge_readings(files);
}

float night(const MergedReadings& result, unsigned day_of_march) {
  return result.series.night_c()[result.series.index_of(day(day_of_march)).value()];
}

float maximum(const MergedReadings& result, unsigned day_of_march) {
  return result.series.day_c()[result.series.index_of(day(day_of_march)).value()];
}

TEST(MergeReadings, NoFilesAndEmptyFilesGiveAnEmptySeries) {
  EXPECT_TRUE(merged({}).series.empty());
  EXPECT_TRUE(merged({file("a", {})}).series.empty());
}

TEST(MergeReadings, RowsOutOfOrderFindTheirDates) {
  const MergedReadings result = merged({file("a", {{9, 5, 15}, {7, 3, 13}})});
  EXPECT_EQ(result.series.first(), day(7));
  EXPECT_EQ(result.series.last(), day(9));
  EXPECT_EQ(night(result, 7), 3.0F);
  EXPECT_TRUE(std::isnan(night(result, 8)));
  EXPECT_EQ(maximum(result, 9), 15.0F);
}

TEST(MergeReadings, OneElementFilesJoinByDate) {
  const MergedReadings result =
      merged({file("min", {{7, 3, missing_c}}), file("max", {{7, missing_c, 13}})});
  EXPECT_EQ(night(result, 7), 3.0F);
  EXPECT_EQ(maximum(result, 7), 13.0F);
  EXPECT_TRUE(result.findings.empty());
}

TEST(MergeReadings, TheFileListedFirstWins) {
  const MergedReadings result =
      merged({file("a", {{7, 3, 13}}), file("b", {{7, 3.5F, 20}, {8, 4, 14}})});
  EXPECT_EQ(night(result, 7), 3.0F);
  EXPECT_EQ(maximum(result, 7), 13.0F);
  EXPECT_EQ(night(result, 8), 4.0F);
}

TEST(MergeReadings, ADifferenceOfOneKelvinIsNoFinding) {
  EXPECT_TRUE(merged({file("a", {{7, 5.1F, 13}}), file("b", {{7, 6.1F, 13}})}).findings.empty());
}

TEST(MergeReadings, ADifferenceOverOneKelvinIsAFinding) {
  const MergedReadings result = merged({file("a", {{7, 5.1F, 13}}), file("b", {{7, 6.2F, 13}})});
  ASSERT_EQ(result.findings.size(), 1U);
  EXPECT_EQ(result.findings[0].kind, FindingKind::files_differ);
  EXPECT_EQ(result.findings[0].file, "b");
  EXPECT_EQ(result.findings[0].line, 2U);
  EXPECT_NEAR(result.findings[0].value_c, 6.2, 1e-6);
  EXPECT_NEAR(result.findings[0].other_c, 5.1, 1e-6);
}

TEST(MergeReadings, EqualRepeatsCountOnceAndAreAFinding) {
  const MergedReadings result = merged({file("a", {{7, 3, 13}, {7, 3, 13}})});
  EXPECT_EQ(night(result, 7), 3.0F);
  ASSERT_EQ(result.findings.size(), 1U);
  EXPECT_EQ(result.findings[0].kind, FindingKind::repeated_equal);
  EXPECT_EQ(result.findings[0].verdict, Verdict::used);
  EXPECT_EQ(result.findings[0].line, 3U);
}

TEST(MergeReadings, UnequalRepeatsMakeThatElementMissing) {
  const MergedReadings result = merged({file("a", {{7, 3, 13}, {7, 4, 13}})});
  EXPECT_TRUE(std::isnan(night(result, 7)));
  EXPECT_EQ(maximum(result, 7), 13.0F);
  ASSERT_EQ(result.findings.size(), 1U);
  EXPECT_EQ(result.findings[0].kind, FindingKind::repeated_different);
  EXPECT_EQ(result.findings[0].verdict, Verdict::ignored);
  EXPECT_EQ(result.findings[0].value_c, 4.0);
  EXPECT_EQ(result.findings[0].other_c, 3.0);
}

TEST(MergeReadings, AThirdRowDoesNotSettleADispute) {
  EXPECT_TRUE(std::isnan(night(merged({file("a", {{7, 3, 13}, {7, 4, 13}, {7, 3, 13}})}), 7)));
}

TEST(MergeReadings, AnotherFileFillsADisputedDate) {
  const MergedReadings result =
      merged({file("a", {{7, 3, 13}, {7, 4, 13}}), file("b", {{7, 3.5F, 13}})});
  EXPECT_EQ(night(result, 7), 3.5F);
}

TEST(MergeReadings, ARepeatThatBringsTheOtherElementIsNoRepeat) {
  const MergedReadings result = merged({file("a", {{7, 3, missing_c}, {7, missing_c, 13}})});
  EXPECT_TRUE(result.findings.empty());
  EXPECT_EQ(maximum(result, 7), 13.0F);
}

TEST(MergeReadings, EveryValueKnowsItsPlace) {
  const MergedReadings result =
      merged({file("a", {{7, 3, missing_c}}), file("b", {{6, 1, 9}, {7, 2, 12}})});
  EXPECT_EQ(result.files, (std::vector<std::string>{"a", "b"}));
  EXPECT_EQ(result.night_place[1].file, 0U);
  EXPECT_EQ(result.night_place[1].line, 2U);
  EXPECT_EQ(result.day_place[1].file, 1U);
  EXPECT_EQ(result.day_place[1].line, 3U);
}

TEST(MergeReadings, FindingsOfTheFilesComeFirst) {
  Readings flagged = file("b", {{7, 3, 13}});
  flagged.findings.push_back({FindingKind::flagged, Verdict::ignored, day(8), "b", 3, 30.0, 0.0});
  const MergedReadings result = merged({file("a", {{7, 9, 13}}), flagged});
  ASSERT_EQ(result.findings.size(), 2U);
  EXPECT_EQ(result.findings[0].kind, FindingKind::flagged);
  EXPECT_EQ(result.findings[1].kind, FindingKind::files_differ);
}

} // namespace
} // namespace nightsow::climate
