#include "climate/past_seasons.hpp"

#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

using support::invented_series;
using support::InventedClimate;

struct Place {
  BenchAir bench;
  Phases phases;
};

Place place(const InventedClimate& climate) {
  DailySeries series = invented_series(climate);
  const Phases phases = *find_phases(fit_smooth_year(series)->night, 2001).phases;
  return {to_bench(series, "bench", {}), phases};
}

NightLimit limit(double at_or_under_c) {
  return {.at_or_under = Celsius{at_or_under_c}};
}

class BothHalves : public testing::TestWithParam<int> {};

TEST_P(BothHalves, NightsBindWhereTheyComeToTheLimitLate) {
  // Nights fall from 17 to 7; they pass 11 well after the limb begins, 16 with it.
  const Place here = place({.hottest_day_of_year = GetParam()});
  const Binding at_11 = binding(past_seasons(here.bench, here.phases, limit(11.0)));
  const Binding at_17 = binding(past_seasons(here.bench, here.phases, limit(17.0)));
  EXPECT_TRUE(at_11.binds);
  EXPECT_EQ(at_11.late, at_11.seasons);
  EXPECT_FALSE(at_17.binds);
  EXPECT_GE(at_17.seasons, 18);
}

TEST_P(BothHalves, NightsThatNeverComeToTheLimitBindAndAreCounted) {
  const Place here = place({.hottest_day_of_year = GetParam()});
  const Binding never = binding(past_seasons(here.bench, here.phases, limit(5.0)));
  EXPECT_TRUE(never.binds);
  EXPECT_EQ(never.never, never.seasons);
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorth, BothHalves, testing::Values(36, 218));

TEST(PastSeasons, AreUsableWithATwentiethOfTheirNightsMissingAndNoMore) {
  Place here = place({});
  const Season season = season_named(here.phases, 1995);
  const std::size_t late = *here.bench.air.index_of(season.hottest + Days{200});
  const auto usable_with = [&](std::size_t missing) {
    Place copy = here;
    for (std::size_t i = 0; i < missing; ++i) {
      copy.bench.air.set_night(late + i, missing_c);
    }
    for (const PastSeason& past : past_seasons(copy.bench, copy.phases, limit(11.0))) {
      if (past.season.name == 1995) {
        return past.usable;
      }
    }
    return false;
  };
  EXPECT_TRUE(usable_with(11)); // 11.5 is a twentieth of 230
  EXPECT_FALSE(usable_with(12));
}

TEST(PastSeasons, AreNotUsableWhenMissingNightsCouldHaveHiddenTheDay) {
  Place here = place({});
  const Season season = season_named(here.phases, 1994);
  const auto past = past_seasons(here.bench, here.phases, limit(11.0));
  const int holds = *past[4].words.holds.day;
  for (int back = 1; back <= 4; ++back) {
    here.bench.air.set_night(*here.bench.air.index_of(season.hottest + Days{holds - back}),
                             missing_c);
  }
  const auto again = past_seasons(here.bench, here.phases, limit(11.0));
  EXPECT_EQ(again[4].season.name, 1994);
  EXPECT_TRUE(again[4].words.holds.unknown);
  EXPECT_FALSE(again[4].usable);
}

TEST(PastSeasons, CountYearsThatAreNeverCoolWhereThereAreNoPhases) {
  const BenchAir bench =
      to_bench(invented_series({.night_mean_c = 24.0, .night_half_swing_k = 1.0}), "bench", {});
  const YearsNeverCool at_15 = years_never_cool(bench, date::February / 5, limit(15.0));
  EXPECT_EQ(at_15.never, at_15.years);
  EXPECT_GE(at_15.years, 18);
  EXPECT_EQ(years_never_cool(bench, date::February / 5, limit(24.0)).never, 0);
}

} // namespace
} // namespace nightsow::climate
