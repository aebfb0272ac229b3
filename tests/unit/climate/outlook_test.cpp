#include "climate/outlook.hpp"

#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace nightsow::climate {
namespace {

using support::invented_series;
using support::InventedClimate;

struct Place {
  BenchAir bench;
  SmoothYear smooth;
  Phases phases;
};

Place place(const InventedClimate& climate) {
  DailySeries series = invented_series(climate);
  const SmoothYear smooth = *fit_smooth_year(series);
  return {to_bench(series, "bench", {}), smooth, *find_phases(smooth.night, 2001).phases};
}

Outlook outlook_of(const BenchAir& bench,
                   const SmoothYear& smooth,
                   const Phases& phases,
                   const Season& season) {
  return season_outlook(past_courses(bench, smooth, phases), bench, season);
}

const NightLimit at_11{.at_or_under = Celsius{11.0}};

TEST(Outlook, ContinuesTheObservedSeasonWithEveryUsablePastOne) {
  const Place here = place({.years = 20});
  const Season season = season_of(here.phases, here.bench.air.last());
  const Outlook outlook = outlook_of(here.bench, here.smooth, here.phases, season);
  EXPECT_EQ(outlook.first, season.hottest);
  EXPECT_EQ(outlook.observed_days, days_between(season.hottest, here.bench.air.last()) + 1);
  EXPECT_GE(outlook.past_seasons, 18);
  EXPECT_EQ(outlook.members, 5 * outlook.past_seasons);
  EXPECT_EQ(outlook.night_of(0)[0], here.bench.air.nights_from(season.hottest, 1)[0]);
}

TEST(Outlook, PutsPastSeasonsOnTodaysClimate) {
  const Place here = place({.years = 20, .trend_k_per_year = 0.1});
  const Season season = season_named(here.phases, 2010);
  const Outlook outlook = outlook_of(here.bench, here.smooth, here.phases, season);
  // Nothing but the trend moves these nights, and some of it is not carried on.
  const double today_c = here.smooth.night.value_c(season.hottest);
  for (int member = 0; member < outlook.members; ++member) {
    EXPECT_NEAR(static_cast<double>(outlook.night_of(member)[0]), today_c, 0.6);
  }
}

TEST(Outlook, WidensWhenFewSeasonsStandBehindIt) {
  const Place few = place({.years = 4});
  const Season season = season_of(few.phases, few.bench.air.last() + Days{300});
  const Outlook outlook = outlook_of(few.bench, few.smooth, few.phases, season);
  EXPECT_LT(outlook.past_seasons, few_seasons);
  EXPECT_EQ(outlook.members, 15 * outlook.past_seasons);
  const OutlookWords words = outlook_words(outlook, at_11, first_allowed_day(season));
  EXPECT_GE(days_between(*words.holds.p10, *words.holds.p90), 20);
}

TEST(Outlook, HasNoMembersWithoutAWholeSeason) {
  DailySeries series = invented_series({.years = 1});
  const SmoothYear smooth = *fit_smooth_year(series);
  const Phases phases = *find_phases(smooth.night, 1990).phases;
  DailySeries part{series.first() + Days{100}, 200};
  const Outlook outlook =
      outlook_of(to_bench(part, "bench", {}), smooth, phases, season_named(phases, 1991));
  EXPECT_EQ(outlook.members, 0);
  EXPECT_EQ(outlook_words(outlook, at_11, 30).holds.never, 1.0);
}

TEST(Outlook, KnowsTheDayOnceItHasBeenObserved) {
  const Place here = place({.years = 20});
  const Season season = season_named(here.phases, 2008);
  const OutlookWords words = outlook_words(
      outlook_of(here.bench, here.smooth, here.phases, season), at_11, first_allowed_day(season));
  ASSERT_TRUE(words.observed.holds.day);
  const Date holds = season.hottest + Days{*words.observed.holds.day};
  EXPECT_EQ(words.holds, (DateSpread{holds, holds, holds, 0.0}));
}

// The air of twenty years up to a day of the season 2008.
BenchAir cut_after(const Place& here, const Season& season, int days) {
  const int count = days_between(here.bench.air.first(), season.hottest) + days;
  DailySeries air{here.bench.air.first(), static_cast<std::size_t>(count)};
  for (std::size_t i = 0; i < air.size(); ++i) {
    air.set_night(i, here.bench.air.night_c()[i]);
    air.set_day(i, here.bench.air.day_c()[i]);
  }
  return to_bench(air, "bench", {});
}

double mean_night_c(const Outlook& outlook, int day) {
  double sum = 0.0;
  for (int member = 0; member < outlook.members; ++member) {
    sum += static_cast<double>(outlook.night_of(member)[static_cast<std::size_t>(day)]);
  }
  return sum / outlook.members;
}

// The same smooth year, two kelvin colder.
SmoothYear colder(SmoothYear smooth) {
  smooth.night.constant_c -= 2.0;
  smooth.day->constant_c -= 2.0;
  return smooth;
}

TEST(Outlook, PutsDeparturesFromTheReadingsOnAnotherPresentYear) {
  const Place here = place({.years = 4, .flicker_k = 1.0});
  const Season season = season_of(here.phases, here.bench.air.last() + Days{300});
  const PastCourses as_read = past_courses(here.bench, here.smooth, here.phases);
  const PastCourses moved = past_courses(here.bench, here.smooth, colder(here.smooth), here.phases);
  const BenchAir nothing_known{};
  const Outlook before = season_outlook(as_read, nothing_known, season);
  const Outlook after = season_outlook(moved, nothing_known, season);
  ASSERT_GT(before.members, 0);
  ASSERT_EQ(after.members, before.members);
  for (const int member : {0, before.members - 1}) {
    for (const std::size_t night : {10U, 100U, 200U}) {
      EXPECT_NEAR(static_cast<double>(before.night_of(member)[night]) -
                      static_cast<double>(after.night_of(member)[night]),
                  2.0,
                  1e-4);
      EXPECT_NEAR(static_cast<double>(before.day_of(member)[night]) -
                      static_cast<double>(after.day_of(member)[night]),
                  2.0,
                  1e-4);
    }
  }
}

TEST(Outlook, GoesFromWhatWasObservedToThePresentYearByAndBy) {
  const Place here = place({.years = 20});
  const Season season = season_named(here.phases, 2008);
  const BenchAir known = cut_after(here, season, 60);
  const SmoothYear present = colder(here.smooth);
  const Outlook outlook =
      season_outlook(past_courses(here.bench, here.smooth, present, here.phases), known, season);
  ASSERT_EQ(outlook.observed_days, 60);
  const auto above_present_k = [&](int day) {
    return mean_night_c(outlook, day) - present.night.value_c(season.hottest + Days{day});
  };
  EXPECT_NEAR(above_present_k(59), 2.0, 0.1);
  EXPECT_GT(above_present_k(60), 1.5);
  EXPECT_LT(above_present_k(80), above_present_k(60));
  EXPECT_NEAR(above_present_k(220), 0.0, 0.1);
}

TEST(Outlook, RemembersAColdEndOfTheReadingsForAWhile) {
  const Place here = place({.years = 20, .night_sd_k = 2.0});
  const Season season = season_named(here.phases, 2008);
  const BenchAir usual = cut_after(here, season, 60);
  BenchAir cold = usual;
  for (std::size_t back = 1; back <= 30; ++back) {
    const std::size_t at = cold.air.size() - back;
    cold.air.set_night(at, cold.air.night_c()[at] - 4.0F);
    cold.air.set_day(at, cold.air.day_c()[at] - 4.0F);
  }
  const Outlook before = outlook_of(usual, here.smooth, here.phases, season);
  const Outlook after = outlook_of(cold, here.smooth, here.phases, season);
  ASSERT_EQ(after.observed_days, 60);
  const auto colder_by = [&](int day) {
    return mean_night_c(before, day) - mean_night_c(after, day);
  };
  EXPECT_GT(colder_by(60), 2.0);
  EXPECT_GT(colder_by(60), colder_by(70));
  EXPECT_GT(colder_by(70), 0.5);
  EXPECT_NEAR(colder_by(60 + 150), 0.0, 1e-3);
}

TEST(Outlook, FollowsAForecastMoreTomorrowThanNextWeek) {
  const Place here = place({.years = 20, .night_sd_k = 2.0});
  const Season season = season_named(here.phases, 2008);
  const BenchAir without = cut_after(here, season, 60);
  const Outlook before = outlook_of(without, here.smooth, here.phases, season);
  BenchAir with = without;
  with.forecast = DailySeries{without.air.last() - Days{1}, 9};
  for (std::size_t i = 0; i < with.forecast.size(); ++i) {
    with.forecast.set_night(i, 0.0F, Mark::forecast);
  }
  const Outlook after = outlook_of(with, here.smooth, here.phases, season);
  EXPECT_EQ(after.forecast_days, 7); // an observed day always wins
  EXPECT_EQ(mean_night_c(after, 59), mean_night_c(before, 59));
  const auto closer_by = [&](int day) {
    return 1.0 - mean_night_c(after, day) / mean_night_c(before, day);
  };
  EXPECT_GT(closer_by(60), closer_by(66));
  EXPECT_GT(closer_by(66), closer_by(67));
  EXPECT_GT(closer_by(67), 0.0);
  EXPECT_NEAR(closer_by(120), 0.0, 1e-3);
  EXPECT_EQ(mean_night_c(after, 66) < mean_night_c(before, 66), true);
}

TEST(Outlook, SpreadsByTheBenchsDoubtEitherWay) {
  const Place here = place({.years = 20});
  const Season season = season_named(here.phases, 2008);
  BenchAir doubtful = cut_after(here, season, 60);
  doubtful.night_doubt = CelsiusDelta{2.0};
  const Outlook outlook = outlook_of(doubtful, here.smooth, here.phases, season);
  EXPECT_EQ(outlook.members, 15 * outlook.past_seasons);
  EXPECT_NEAR(static_cast<double>(outlook.night_of(2)[100] - outlook.night_of(0)[100]), 4.0, 1e-4);
  EXPECT_EQ(outlook.night_of(2)[59], outlook.night_of(0)[59]);
  EXPECT_EQ(outlook.day_of(2)[100], outlook.day_of(0)[100]);
}

TEST(Outlook, LeavesAsideSeasonsOlderThanForty) {
  const Place here = place({.years = 50});
  const Season season = season_of(here.phases, here.bench.air.last());
  EXPECT_EQ(outlook_of(here.bench, here.smooth, here.phases, season).past_seasons, most_seasons);
}

TEST(DateSpreads, TakeTheFirstDateByWhichTheShareIsThere) {
  const Date first{date::year{2001} / date::February / 5};
  const DateSpread spread = date_spread(first, {5, 1, 4, 2, 3, 10, 9, 8, 7, 6});
  EXPECT_EQ(spread.p10, first + Days{1});
  EXPECT_EQ(spread.p50, first + Days{5});
  EXPECT_EQ(spread.p90, first + Days{9});
}

TEST(DateSpreads, AreEmptyInTheirNeverPart) {
  const Date first{date::year{2001} / date::February / 5};
  const DateSpread spread = date_spread(first, {5, std::nullopt, 4, std::nullopt});
  EXPECT_EQ(spread.p50, first + Days{5});
  EXPECT_FALSE(spread.p90);
  EXPECT_EQ(spread.never, 0.5);
}

TEST(BenchAirOfABench, AddsItsOffsetsAndKeepsMissingMissing) {
  DailySeries series = invented_series({.years = 1});
  series.set_night(3, missing_c);
  const BenchAir bench = to_bench(
      series, "frame", {CelsiusDelta{2.0}, CelsiusDelta{4.0}, BenchSource::written_offset});
  EXPECT_NEAR(static_cast<double>(bench.air.night_c()[0] - series.night_c()[0]), 2.0, 1e-5);
  EXPECT_NEAR(static_cast<double>(bench.air.day_c()[0] - series.day_c()[0]), 4.0, 1e-5);
  EXPECT_TRUE(std::isnan(bench.air.night_c()[3]));
}

} // namespace
} // namespace nightsow::climate
