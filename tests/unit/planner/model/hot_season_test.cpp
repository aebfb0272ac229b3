#include "planner/model/hot_season.hpp"

#include "tests/support/invented_bench.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using support::bench_of;
using support::InventedBench;
using support::mat_with;

struct OnMat {
  double night_c;
  double rise_k;
  double thermostat_c;
  double on_mat_c;
};

class NightOnAMat : public testing::TestWithParam<OnMat> {};

TEST_P(NightOnAMat, RisesUpToTheThermostatAndNeverFalls) {
  const OnMat& night = GetParam();
  EXPECT_EQ(night_on_mat_c(night.night_c, mat_with(night.rise_k, night.thermostat_c)),
            night.on_mat_c);
}

INSTANTIATE_TEST_SUITE_P(Nights,
                         NightOnAMat,
                         testing::Values(OnMat{10.0, 8.0, 28.0, 18.0},
                                         OnMat{20.0, 8.0, 28.0, 28.0},
                                         OnMat{24.0, 8.0, 28.0, 28.0},
                                         OnMat{30.0, 8.0, 28.0, 30.0}));

TEST(NightOnAMat, HasNoUpperLimitWithoutAThermostat) {
  HeatMat mat = mat_with(10.0, 28.0);
  mat.thermostat.reset();
  EXPECT_EQ(night_on_mat_c(25.0, mat), 35.0);
}

/// Nights from 7 to 17 °C without weather, days 10 K above them.
class HotWindowOnBothHalves : public testing::TestWithParam<int> {
protected:
  InventedBench here_ = bench_of({.climate = {.hottest_day_of_year = GetParam()}});

  [[nodiscard]] HotWindow window(const HotNeeds& needs,
                                 const std::optional<HeatMat>& mat = std::nullopt) const {
    return hot_window(here_.climate, here_.season, needs, mat);
  }

  [[nodiscard]] double smooth_night_c(Date day) const {
    return here_.climate.smooth.night.value_c(day);
  }

  [[nodiscard]] Date hot_season_begins() const {
    const date::month_day begins = here_.climate.turning.phases->hot_season_begins;
    const Date this_year = in_year(begins, year_of(here_.season.hottest));
    return this_year <= here_.season.hottest ? this_year
                                             : in_year(begins, year_of(here_.season.hottest) - 1);
  }
};

HotNeeds summer_grower(double warm_night_c) {
  return {.warm_night_c = warm_night_c, .growth_needed_days = 60.0, .emergence_days = 14};
}

HotNeeds winter_grower(double warm_night_c) {
  HotNeeds needs = summer_grower(warm_night_c);
  needs.grows = GrowingSeason::winter;
  needs.rest_sum = 30.0;
  return needs;
}

TEST_P(HotWindowOnBothHalves, OpensWithTheFirstSmoothNightWarmEnough) {
  const HotWindow window = this->window(summer_grower(15.0));
  EXPECT_GE(smooth_night_c(window.opens), 14.99);
  EXPECT_LT(smooth_night_c(window.opens - Days{1}), 15.0);
  EXPECT_TRUE(window.warm_without_mat);
}

TEST_P(HotWindowOnBothHalves, OpensEarlierOnAMatForKindsThatItHelps) {
  HotNeeds needs = summer_grower(16.0);
  const Date without = window(needs, mat_with(3.0, 28.0)).opens;
  needs.uses_mat = true;
  const HotWindow with = window(needs, mat_with(3.0, 28.0));
  EXPECT_LT(with.opens, without);
  EXPECT_NEAR(smooth_night_c(with.opens), 13.0, 0.1);
}

TEST_P(HotWindowOnBothHalves, SaysWhetherTheMatMakesNightsWarmEnough) {
  HotNeeds needs = summer_grower(20.0);
  needs.uses_mat = true;
  const HotWindow enough = window(needs, mat_with(4.0, 28.0));
  EXPECT_NEAR(*enough.mat_night_c, 21.0, 0.05);
  EXPECT_FALSE(enough.warm_without_mat);
  EXPECT_TRUE(enough.warm_with_mat);
  EXPECT_FALSE(window(needs, mat_with(2.0, 28.0)).warm_with_mat);
  EXPECT_FALSE(window(needs).mat_night_c);
}

TEST_P(HotWindowOnBothHalves, OpensNotBeforeTheMiddleOfTheWarmingLimb) {
  EXPECT_EQ(window(summer_grower(5.0)).opens, here_.season.planning_begins);
}

TEST_P(HotWindowOnBothHalves, OpensForWinterGrowersNotBeforeTheHotSeason) {
  EXPECT_EQ(window(winter_grower(5.0)).opens, hot_season_begins());
  EXPECT_LT(window(summer_grower(5.0)).opens, hot_season_begins());
}

TEST_P(HotWindowOnBothHalves, IsTheHotSeasonWhereNightsAreNeverWarmEnough) {
  const HotWindow window = this->window(winter_grower(25.0));
  EXPECT_EQ(window.opens, hot_season_begins());
  EXPECT_EQ(window.closes, here_.season.limb_begins - Days{1});
  EXPECT_FALSE(window.warm_without_mat);
}

TEST_P(HotWindowOnBothHalves, ClosesWithTheHotSeason) {
  EXPECT_EQ(window(winter_grower(15.0)).closes, here_.season.limb_begins - Days{1});
}

TEST_P(HotWindowOnBothHalves, ClosesEarlierWhereTheFirstRestWouldComeTooSoon) {
  HotNeeds needs = summer_grower(15.0);
  const HotWindow usual = window(needs);
  needs.growth_needed_days = 90.0;
  const HotWindow longer = window(needs);
  EXPECT_LT(longer.closes, usual.closes);
  EXPECT_FALSE(longer.season_too_short);
}

TEST_P(HotWindowOnBothHalves, StaysOpenThreeWeeksWhereTheSeasonIsTooShort) {
  HotNeeds needs = summer_grower(15.0);
  needs.growth_needed_days = 300.0;
  const HotWindow window = this->window(needs);
  EXPECT_TRUE(window.season_too_short);
  EXPECT_EQ(window.closes, window.opens + Days{21});
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorth,
                         HotWindowOnBothHalves,
                         testing::Values(support::hottest_in_the_south,
                                         support::hottest_in_the_north));

} // namespace
} // namespace nightsow::planner
