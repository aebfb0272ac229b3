#include "climate/screen.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace nightsow::climate {
namespace {

struct Values {
  float night_c;
  float day_c;
};

ScreenedReadings screened(const std::vector<Values>& days) {
  Readings file;
  file.file = "a.csv";
  std::uint32_t line = 2;
  Date date = make_date(2024, 3, 1).value();
  for (const Values& day : days) {
    file.rows.push_back({date, day.night_c, day.day_c, line++});
    date += Days{1};
  }
  return screen(merge_readings(std::vector{file}));
}

TEST(Screen, SoundReadingsPassUntouched) {
  const ScreenedReadings result = screened({{5, 18}, {-3, 4}, {missing_c, 9}});
  EXPECT_TRUE(result.findings.empty());
  EXPECT_EQ(result.series.night_c()[0], 5.0F);
  EXPECT_EQ(result.series.day_c()[2], 9.0F);
}

TEST(Screen, TheWorldsExtremesThemselvesArePossible) {
  EXPECT_TRUE(screened({{-89.2F, -60}, {30, 56.7F}}).findings.empty());
}

TEST(Screen, ATenthBeyondTheWorldsExtremesIsImpossible) {
  const ScreenedReadings result = screened({{-89.3F, -60}, {30, 56.8F}});
  ASSERT_EQ(result.findings.size(), 2U);
  EXPECT_EQ(result.findings[0].kind, FindingKind::impossible);
  EXPECT_TRUE(std::isnan(result.series.night_c()[0]));
  EXPECT_EQ(result.series.day_c()[0], -60.0F);
  EXPECT_TRUE(std::isnan(result.series.day_c()[1]));
  EXPECT_EQ(result.series.night_c()[1], 30.0F);
}

TEST(Screen, AnImpossibleNightSaysWhereItStands) {
  const ScreenedReadings result = screened({{5, 18}, {292.2F, 20}});
  ASSERT_EQ(result.findings.size(), 1U);
  EXPECT_EQ(result.findings[0].file, "a.csv");
  EXPECT_EQ(result.findings[0].line, 3U);
  EXPECT_EQ(result.findings[0].date, make_date(2024, 3, 2));
  EXPECT_NEAR(result.findings[0].value_c, 292.2, 1e-4);
  EXPECT_TRUE(std::isnan(result.findings[0].other_c));
}

TEST(Screen, ANightAboveItsDayMakesBothMissing) {
  const ScreenedReadings result = screened({{18, 5}});
  ASSERT_EQ(result.findings.size(), 1U);
  EXPECT_EQ(result.findings[0].kind, FindingKind::night_above_day);
  EXPECT_EQ(result.findings[0].value_c, 18.0);
  EXPECT_EQ(result.findings[0].other_c, 5.0);
  EXPECT_TRUE(std::isnan(result.series.night_c()[0]));
  EXPECT_TRUE(std::isnan(result.series.day_c()[0]));
}

TEST(Screen, ANightEqualToItsDayIsPossible) {
  EXPECT_TRUE(screened({{5, 5}}).findings.empty());
}

TEST(Screen, AnImpossibleDayDoesNotDragItsNightAlong) {
  const ScreenedReadings result = screened({{18, -99.5F}});
  ASSERT_EQ(result.findings.size(), 1U);
  EXPECT_EQ(result.series.night_c()[0], 18.0F);
}

TEST(Screen, FindingsAreSortedByDateWithinAKind) {
  const ScreenedReadings result = screened({{9, 5}, {300, 301}, {8, 5}, {5, 300}});
  std::vector<FindingKind> kinds;
  for (const Finding& finding : result.findings) {
    kinds.push_back(finding.kind);
  }
  EXPECT_EQ(kinds,
            (std::vector{FindingKind::impossible,
                         FindingKind::impossible,
                         FindingKind::impossible,
                         FindingKind::night_above_day,
                         FindingKind::night_above_day}));
  EXPECT_LT(result.findings[3].date, result.findings[4].date);
}

TEST(Screen, AnEmptySeriesHasNoFindings) {
  EXPECT_TRUE(screened({}).findings.empty());
}

} // namespace
} // namespace nightsow::climate
