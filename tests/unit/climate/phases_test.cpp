#include "climate/phases.hpp"

#include "climate/seasons.hpp"
#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

using support::invented_series;

Date day(int year, unsigned month, unsigned of_month) {
  return *make_date(year, month, of_month);
}

Phases phases_with_hottest(int day_of_year) {
  const DailySeries series = invented_series({.hottest_day_of_year = day_of_year});
  return *find_phases(fit_smooth_year(series)->night, 2001).phases;
}

struct Half {
  int hottest_day_of_year;
  Date hottest;
  Date limb_begins;
  Date coldest;
};

class PhasesOnBothHalves : public testing::TestWithParam<Half> {};

TEST_P(PhasesOnBothHalves, FollowFromTheReadingsAlone) {
  const Phases phases = phases_with_hottest(GetParam().hottest_day_of_year);
  const Season season = season_named(phases, 2001);
  EXPECT_LE(std::abs(days_between(season.hottest, GetParam().hottest)), 1);
  EXPECT_LE(std::abs(days_between(season.limb_begins, GetParam().limb_begins)), 1);
  EXPECT_LE(std::abs(days_between(season.coldest, GetParam().coldest)), 1);
  EXPECT_NEAR(phases.swing().kelvin(), 10.0, 0.01);
}

// A cosine has fallen by a tenth of its swing after acos(0.8) of the year: 37.4 days.
INSTANTIATE_TEST_SUITE_P(South,
                         PhasesOnBothHalves,
                         testing::Values(Half{
                             36, day(2001, 2, 5), day(2001, 3, 15), day(2001, 8, 6)}));
INSTANTIATE_TEST_SUITE_P(North,
                         PhasesOnBothHalves,
                         testing::Values(Half{
                             218, day(2001, 8, 6), day(2001, 9, 13), day(2002, 2, 5)}));

TEST(Phases, DoNotExistWithASwingUnderFourKelvin) {
  const auto swing_of = [](double half) {
    const DailySeries series = invented_series({.night_half_swing_k = half});
    return find_phases(fit_smooth_year(series)->night, 2001);
  };
  EXPECT_TRUE(swing_of(2.01).phases);
  EXPECT_FALSE(swing_of(1.99).phases);
  EXPECT_EQ(swing_of(1.99).reason, NoPhases::swing_too_small);
}

TEST(Phases, DoNotExistWithTwoPeaksInTheYear) {
  SmoothCurve night;
  night.constant_c = 20.0;
  night.cosine_c = {2.0, 3.0};
  const PhasesOrReason result = find_phases(night, 2001);
  EXPECT_FALSE(result.phases);
  EXPECT_EQ(result.reason, NoPhases::several_peaks);
}

TEST(Phases, KeepALeapDayAsTheFirstOfMarch) {
  const Phases phases = phases_with_hottest(60);
  const Date hottest = season_named(phases, 2024).hottest;
  EXPECT_NE(date::year_month_day{hottest}.day(), date::day{29});
}

TEST(Seasons, RunFromOneHottestNightToTheDayBeforeTheNext) {
  const Phases phases = phases_with_hottest(36);
  const Season season = season_named(phases, 2001);
  EXPECT_EQ(season_of(phases, season.hottest).name, 2001);
  EXPECT_EQ(season_of(phases, season.next_hottest - Days{1}).name, 2001);
  EXPECT_EQ(season_of(phases, season.next_hottest).name, 2002);
}

TEST(Seasons, ArePlannedFromTheMiddleOfTheWarmingLimb) {
  const Phases phases = phases_with_hottest(36);
  const Season season = season_named(phases, 2001);
  EXPECT_EQ(season_planned_on(phases, season.planning_begins - Days{1}).name, 2000);
  EXPECT_EQ(season_planned_on(phases, season.planning_begins).name, 2001);
  EXPECT_EQ(season_planned_on(phases, season.next_planning_begins - Days{1}).name, 2001);
  // A quarter of a year before the hottest night of a cosine.
  EXPECT_NEAR(days_between(season.planning_begins, season.hottest), 91, 2);
}

TEST(Seasons, AreNamedByTheYearOfTheMiddleOfTheirCoolingLimb) {
  const Phases phases = phases_with_hottest(355); // the limb lies in the year after
  const Season season = season_of(phases, day(2001, 12, 28));
  EXPECT_EQ(season.name, 2002);
  EXPECT_EQ(season_named(phases, 2002).hottest, season.hottest);
}

TEST(Seasons, ThatAreOverAreFollowedByTheNextOrByTheOnePlannedToday) {
  const Phases phases = phases_with_hottest(36);
  const Season season = season_named(phases, 2001);
  EXPECT_EQ(season_after(phases, season, season.coldest).name, 2002);
  EXPECT_EQ(season_after(phases, season, season.next_planning_begins).name, 2002);
  EXPECT_EQ(season_after(phases, season, season_named(phases, 2009).coldest).name, 2009);
}

TEST(Seasons, LetHoldsBeginWithTheLimbButNotWithinTheFirstFortnight) {
  Season season;
  season.hottest = day(2001, 2, 5);
  season.limb_begins = season.hottest + Days{40};
  EXPECT_EQ(first_allowed_day(season), 40);
  season.limb_begins = season.hottest + Days{5};
  EXPECT_EQ(first_allowed_day(season), 13);
}

} // namespace
} // namespace nightsow::climate
