#include "planner/model/readings_guard.hpp"

#include "tests/support/invented_bench.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace nightsow::planner {
namespace {

ReadingsGuard guard_with_readings_old(int days) {
  return readings_guard(support::garden_of({.readings_end_before_today = days}), "");
}

ReadingsGuard guard_with_finding(int days_before_today, climate::Verdict verdict) {
  LoadedGarden garden = support::garden_of({});
  climate::Finding finding;
  finding.verdict = verdict;
  finding.date = garden.today - Days{days_before_today};
  garden.findings.push_back(finding);
  return readings_guard(garden, "");
}

TEST(ReadingsGuard, ReadingsAreStaleFromTheEleventhDayOn) {
  EXPECT_FALSE(guard_with_readings_old(0).stale);
  EXPECT_FALSE(guard_with_readings_old(10).stale);
  EXPECT_TRUE(guard_with_readings_old(11).stale);
  EXPECT_EQ(guard_with_readings_old(11).days_old, 11);
}

TEST(ReadingsGuard, AFindingCountsAmongTheLastTwentyOneNights) {
  // Today's night is the first of them.
  EXPECT_EQ(guard_with_finding(20, climate::Verdict::ignored).suspect, 1);
  EXPECT_EQ(guard_with_finding(21, climate::Verdict::ignored).suspect, 0);
}

TEST(ReadingsGuard, AFindingThatWasUsedAllTheSameDoesNotCount) {
  EXPECT_EQ(guard_with_finding(3, climate::Verdict::used).suspect, 0);
}

int suspect_of_streak(int days, int ends_days_before_today) {
  LoadedGarden garden = support::garden_of({});
  climate::Finding streak;
  streak.kind = climate::FindingKind::streak;
  streak.verdict = climate::Verdict::used;
  streak.date = garden.today - Days{ends_days_before_today};
  streak.days = days;
  garden.findings.push_back(streak);
  return readings_guard(garden, "").suspect;
}

TEST(ReadingsGuard, AStreakIsSuspectThoughItIsUsedAndCountsItsDaysAmongTheLastNights) {
  EXPECT_EQ(suspect_of_streak(16, 0), 16);
  EXPECT_EQ(suspect_of_streak(16, 10), 11);
  EXPECT_EQ(suspect_of_streak(16, 20), 1);
  EXPECT_EQ(suspect_of_streak(16, 21), 0);
  EXPECT_EQ(suspect_of_streak(30, 0), 21);
}

TEST(ReadingsGuard, DaysLeftOutBehindTheLastNightCountAsDaysOfThreeWeeks) {
  LoadedGarden garden = support::garden_of({});
  climate::Finding ignored;
  for (int day = 1; day <= 300; ++day) {
    ignored.date = garden.station.last() + Days{day};
    garden.findings.push_back(ignored);
    garden.findings.push_back(ignored); // the night and the day
  }
  EXPECT_EQ(readings_guard(garden, "").suspect, suspect_nights);
}

TEST(ReadingsGuard, ReadingsWithoutANightAreStale) {
  LoadedGarden garden = support::garden_of({});
  garden.station = climate::DailySeries{garden.today - Days{2}, 3};
  EXPECT_TRUE(readings_guard(garden, "").stale);
  EXPECT_FALSE(readings_guard(garden, "").last);
}

TEST(ReadingsGuard, ReadingsEndWithTheirLastNightEvenWhereDaysGoOn) {
  LoadedGarden garden = support::garden_of({});
  garden.station.set_night(garden.station.size() - 1, climate::missing_c);
  EXPECT_EQ(readings_guard(garden, "").days_old, 1);
}

/// A garden with a bench that has a logger of its own and one that has none. Station and logger end
/// so many days before today; the logger began 40 days before its end.
LoadedGarden garden_with_logger(int station_ends, int logger_ends) {
  support::InventedGarden invented;
  invented.readings_end_before_today = station_ends;
  invented.benches = {support::bench_with("frame", 1.0, 1.0), support::open_bench()};
  LoadedGarden garden = support::garden_of(invented);
  climate::DailySeries logger{garden.today - Days{logger_ends + 39}, 40};
  for (std::size_t i = 0; i < logger.size(); ++i) {
    logger.set_night(i, 12.0F + 0.1F * static_cast<float>(i));
    logger.set_day(i, 20.0F);
  }
  garden.bench_loggers["frame"] = logger;
  return garden;
}

climate::Finding ignored_on(Date day) {
  climate::Finding finding;
  finding.date = day;
  return finding;
}

TEST(ReadingsGuard, ABenchWhoseOwnLoggerIsCurrentIsNotStale) {
  const LoadedGarden garden = garden_with_logger(60, 2);
  EXPECT_FALSE(readings_guard(garden, "frame").stale);
  EXPECT_EQ(readings_guard(garden, "frame").days_old, 2);
  EXPECT_TRUE(readings_guard(garden, "open bench").stale);
  EXPECT_EQ(readings_guard(garden, "open bench").days_old, 60);
  EXPECT_FALSE(readings_guard(garden_with_logger(2, 60), "frame").stale);
  EXPECT_TRUE(readings_guard(garden_with_logger(60, 11), "frame").stale);
}

TEST(ReadingsGuard, ALoggersReadingInDoubtIsSuspectOnItsBenchOnly) {
  LoadedGarden garden = garden_with_logger(0, 0);
  garden.logger_doubts["frame"].findings = {ignored_on(garden.today - Days{5}),
                                            ignored_on(garden.today - Days{21})};
  EXPECT_EQ(readings_guard(garden, "frame").suspect, 1);
  EXPECT_EQ(readings_guard(garden, "frame").of_logger, 1);
  EXPECT_EQ(readings_guard(garden, "open bench").suspect, 0);
}

TEST(ReadingsGuard, AStationsReadingInDoubtDoesNotCountWhereTheLoggerGivesNightAndDay) {
  LoadedGarden garden = garden_with_logger(0, 0);
  garden.findings = {ignored_on(garden.today - Days{5})};
  EXPECT_EQ(readings_guard(garden, "frame").suspect, 0);
  EXPECT_EQ(readings_guard(garden, "open bench").suspect, 1);
  climate::DailySeries& logger = garden.bench_loggers["frame"];
  logger.set_day(logger.size() - 6, climate::missing_c);
  EXPECT_EQ(readings_guard(garden, "frame").suspect, 1);
  EXPECT_EQ(readings_guard(garden, "frame").of_logger, 0);
}

BenchClimate with_last_days(const std::vector<float>& last_c) {
  LoadedGarden garden = support::garden_of({});
  for (std::size_t i = 0; i < last_c.size(); ++i) {
    garden.station.set_day(garden.station.size() - last_c.size() + i, last_c[i]);
  }
  return support::bench_of(garden).climate;
}

TEST(RecentDays, AreTheLastSeven) {
  const BenchClimate climate = with_last_days({90, 30, 30, 30, 30, 30, 30, 37});
  EXPECT_NEAR(*recent_day_mean_c(climate), 31.0, 1e-5);
}

TEST(RecentDays, AreToldWhenFourOfThemAreThereAndNotWithThree) {
  const float none = climate::missing_c;
  EXPECT_NEAR(*recent_day_mean_c(with_last_days({none, none, none, 30, 30, 30, 34})), 31.0, 1e-5);
  EXPECT_FALSE(recent_day_mean_c(with_last_days({none, none, none, none, 30, 30, 34})));
}

} // namespace
} // namespace nightsow::planner
