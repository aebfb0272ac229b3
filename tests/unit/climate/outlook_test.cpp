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

const NightLimit at_11{.at_or_under = Celsius{11.0}};

TEST(Outlook, ContinuesTheObservedSeasonWithEveryUsablePastOne) {
  const Place here = place({.years = 20});
  const Season season = season_of(here.phases, here.bench.air.last());
  const Outlook outlook = season_outlook(here.bench, here.smooth, here.phases, season);
  EXPECT_EQ(outlook.first, season.hottest);
  EXPECT_EQ(outlook.observed_days, days_between(season.hottest, here.bench.air.last()) + 1);
  EXPECT_EQ(outlook.members, outlook.past_seasons);
  EXPECT_GE(outlook.members, 18);
  EXPECT_EQ(outlook.night_of(0)[0], here.bench.air.nights_from(season.hottest, 1)[0]);
}

TEST(Outlook, PutsPastSeasonsOnTodaysClimate) {
  const Place here = place({.years = 20, .trend_k_per_year = 0.1});
  const Season season = season_named(here.phases, 2010);
  const Outlook outlook = season_outlook(here.bench, here.smooth, here.phases, season);
  const double today_c = here.smooth.night.value_c(season.hottest);
  for (int member = 0; member < outlook.members; ++member) {
    EXPECT_NEAR(static_cast<double>(outlook.night_of(member)[0]), today_c, 0.06);
  }
}

TEST(Outlook, WidensWhenFewSeasonsStandBehindIt) {
  const Place few = place({.years = 4});
  const Season season = season_of(few.phases, few.bench.air.last() + Days{300});
  const Outlook outlook = season_outlook(few.bench, few.smooth, few.phases, season);
  EXPECT_LT(outlook.past_seasons, few_seasons);
  EXPECT_EQ(outlook.members, 9 * outlook.past_seasons);
  const OutlookWords words = outlook_words(outlook, at_11, first_allowed_day(season));
  EXPECT_GE(days_between(*words.holds.p10, *words.holds.p90), 20);
}

TEST(Outlook, HasNoMembersWithoutAWholeSeason) {
  DailySeries series = invented_series({.years = 1});
  const SmoothYear smooth = *fit_smooth_year(series);
  const Phases phases = *find_phases(smooth.night, 1990).phases;
  DailySeries part{series.first() + Days{100}, 200};
  const Outlook outlook =
      season_outlook(to_bench(part, "bench", {}), smooth, phases, season_named(phases, 1991));
  EXPECT_EQ(outlook.members, 0);
  EXPECT_EQ(outlook_words(outlook, at_11, 30).holds.never, 1.0);
}

TEST(Outlook, KnowsTheDayOnceItHasBeenObserved) {
  const Place here = place({.years = 20});
  const Season season = season_named(here.phases, 2008);
  const OutlookWords words =
      outlook_words(season_outlook(here.bench, here.smooth, here.phases, season),
                    at_11,
                    first_allowed_day(season));
  ASSERT_TRUE(words.observed.holds.day);
  const Date holds = season.hottest + Days{*words.observed.holds.day};
  EXPECT_EQ(words.holds, (DateSpread{holds, holds, holds, 0.0}));
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
