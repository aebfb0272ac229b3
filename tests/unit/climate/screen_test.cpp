#include "climate/screen.hpp"

#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

#include <algorithm>
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

Finding of_kind(FindingKind kind, Verdict verdict) {
  Finding finding;
  finding.kind = kind;
  finding.verdict = verdict;
  return finding;
}

/// A file of twelve invented years, into which a test writes its fault.
class ScreenedYears : public testing::Test {
protected:
  ScreenedYears() {
    support::InventedClimate climate;
    climate.night_sd_k = 2.0;
    climate.years = 12;
    const DailySeries series = support::invented_series(climate);
    for (std::size_t i = 0; i < series.size(); ++i) {
      days_.push_back({series.night_c()[i], series.day_c()[i]});
    }
  }

  /// The one finding; a kind that is not in the list of faults when there are none or several.
  [[nodiscard]] Finding only_finding() const {
    const std::vector<Finding> findings = screened(days_).findings;
    return findings.size() == 1 ? findings[0] : of_kind(FindingKind::flagged, Verdict::ignored);
  }

  std::vector<Values> days_;
};

TEST_F(ScreenedYears, PassUntouched) {
  EXPECT_TRUE(screened(days_).findings.empty());
}

TEST_F(ScreenedYears, ANightOfAnotherMonthIsAGap) {
  days_[2000].night_c = -20.0F;
  EXPECT_EQ(only_finding().kind, FindingKind::gap);
  EXPECT_EQ(only_finding().line, 2002U);
  EXPECT_TRUE(std::isnan(screened(days_).series.night_c()[2000]));
  EXPECT_FALSE(std::isnan(screened(days_).series.day_c()[2000]));
}

TEST_F(ScreenedYears, AMistypedNightDoesNotDragItsGoodDayAlong) {
  days_[2000].night_c = days_[2000].day_c + 20.0F;
  EXPECT_NE(only_finding().kind, FindingKind::night_above_day);
  EXPECT_FALSE(std::isnan(screened(days_).series.day_c()[2000]));
}

TEST_F(ScreenedYears, NaughtForAMissingValueLosesBoth) {
  days_[2000] = {0, 0};
  EXPECT_EQ(only_finding().kind, FindingKind::naught);
  EXPECT_TRUE(std::isnan(screened(days_).series.night_c()[2000]));
  EXPECT_TRUE(std::isnan(screened(days_).series.day_c()[2000]));
}

TEST_F(ScreenedYears, AStuckThermometerIsSaidFromFifteenDaysAndLeftOutFromTwenty) {
  for (std::size_t i = 0; i < 19; ++i) {
    days_[3000 + i].night_c = days_[3000].night_c;
    days_[3000 + i].day_c = std::max(days_[3000 + i].day_c, days_[3000].night_c);
  }
  const Finding used = only_finding();
  EXPECT_EQ(used.kind, FindingKind::streak);
  EXPECT_EQ(used.verdict, Verdict::used);
  EXPECT_EQ(used.days, 19);
  EXPECT_EQ(used.line, 3020U); // its last day
  days_[3019].night_c = days_[3000].night_c;
  days_[3019].day_c = std::max(days_[3019].day_c, days_[3000].night_c);
  const ScreenedReadings stuck = screened(days_);
  ASSERT_EQ(stuck.findings.size(), 1U);
  EXPECT_EQ(stuck.findings[0].verdict, Verdict::ignored);
  EXPECT_TRUE(std::isnan(stuck.series.night_c()[3000]));
  EXPECT_TRUE(std::isnan(stuck.series.night_c()[3019]));
  EXPECT_FALSE(std::isnan(stuck.series.night_c()[3020]));
}

TEST_F(ScreenedYears, EveryVerdictIgnoredLeavesItsValueMissingAndNothingElse) {
  days_[500].day_c += 30.0F;
  days_[900].night_c -= 25.0F;
  days_[1500] = {-17.8F, -17.8F};
  const ScreenedReadings result = screened(days_);
  EXPECT_EQ(result.findings.size(), 3U);
  for (std::size_t i = 0; i < days_.size(); ++i) {
    EXPECT_EQ(std::isnan(result.series.night_c()[i]), i == 900 || i == 1500) << i;
    EXPECT_EQ(std::isnan(result.series.day_c()[i]), i == 500 || i == 1500) << i;
  }
}

TEST(Doubtful, AreIgnoredReadingsAndStreaksButNotFilesThatDiffer) {
  using enum FindingKind;
  EXPECT_TRUE(is_doubtful(of_kind(outlier, Verdict::ignored)));
  EXPECT_TRUE(is_doubtful(of_kind(streak, Verdict::used)));
  EXPECT_FALSE(is_doubtful(of_kind(repeated_equal, Verdict::used)));
  EXPECT_FALSE(is_doubtful(of_kind(files_differ, Verdict::ignored)));
}

} // namespace
} // namespace nightsow::climate
