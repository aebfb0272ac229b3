#include "planner/model/first_rest.hpp"

#include "species-rules/growth.hpp"
#include "tests/support/invented_bench.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using support::bench_of;
using support::InventedBench;
using support::InventedClimate;

constexpr double usual_sum = 20.0;

/// Without weather: nights from 7 to 17 °C where nothing else is said, days 10 K above them.
InventedBench place(InventedClimate climate, int hottest_day_of_year) {
  climate.hottest_day_of_year = hottest_day_of_year;
  return bench_of({.climate = climate});
}

double week_mean_c(const InventedBench& here, Date last) {
  double sum = 0.0;
  for (int back = 0; back < 7; ++back) {
    sum += smooth_mean_c(here.climate, last - Days{back});
  }
  return sum / 7.0;
}

class FirstRestOnBothHalves : public testing::TestWithParam<int> {
protected:
  [[nodiscard]] static InventedBench here(const InventedClimate& climate = {}) {
    return place(climate, GetParam());
  }
};

TEST_P(FirstRestOnBothHalves, ComesByHeatBetweenTheColdestNightAndTheNextHottest) {
  const InventedBench bench = here();
  const FirstRest rest = rest_by_heat(bench.climate, bench.season, usual_sum);
  EXPECT_TRUE(rest.reached);
  EXPECT_GT(rest.begins, bench.season.coldest + Days{60});
  EXPECT_LT(rest.begins, bench.season.next_hottest - Days{60});
}

TEST_P(FirstRestOnBothHalves, ComesEarlierWhereItIsWarmerAndForASmallerSum) {
  const InventedBench mild = here();
  const InventedBench warm = here({.night_mean_c = 15.0});
  const Date usual = rest_by_heat(mild.climate, mild.season, usual_sum).begins;
  EXPECT_LT(rest_by_heat(warm.climate, warm.season, usual_sum).begins, usual);
  EXPECT_LT(rest_by_heat(mild.climate, mild.season, 15.0).begins, usual);
}

TEST_P(FirstRestOnBothHalves, IsNotReachedByHeatInACoolPlaceAndTheSeasonEndsIt) {
  const InventedBench cool =
      here({.night_mean_c = 4.0, .night_half_swing_k = 3.0, .day_above_night_k = 5.0});
  const FirstRest rest = rest_by_heat(cool.climate, cool.season, usual_sum);
  EXPECT_FALSE(rest.reached);
  EXPECT_EQ(rest.begins, cool.season.next_hottest - Days{1});
}

TEST_P(FirstRestOnBothHalves, ComesByCoolWithAWeekOfThirteenDegrees) {
  const InventedBench bench = here();
  const FirstRest rest = rest_by_cool(bench.climate, bench.season);
  EXPECT_TRUE(rest.reached);
  EXPECT_LE(week_mean_c(bench, rest.begins), species_rules::cool_rest_c);
  EXPECT_GT(week_mean_c(bench, rest.begins - Days{1}), species_rules::cool_rest_c);
}

TEST_P(FirstRestOnBothHalves, IsNotReachedByCoolInAWarmPlaceAndThePlanningYearEndsIt) {
  const InventedBench warm = here({.night_mean_c = 18.0, .night_half_swing_k = 3.0});
  const FirstRest rest = rest_by_cool(warm.climate, warm.season);
  EXPECT_FALSE(rest.reached);
  EXPECT_EQ(rest.begins, warm.season.next_planning_begins);
}

double good_days(const InventedBench& here, Date from, Date before) {
  double days = 0.0;
  for (Date day = from; day < before; day += Days{1}) {
    days += species_rules::winter_growth_rate(smooth_mean_c(here.climate, day));
  }
  return days;
}

TEST_P(FirstRestOnBothHalves, LeavesTheGrowthNeededAfterTheLatestFirstWaterAndNotADayLater) {
  const InventedBench bench = here();
  const FirstRest rest = rest_by_heat(bench.climate, bench.season, usual_sum);
  const std::optional<Date> latest = latest_first_water(
      bench.climate, GrowingSeason::winter, rest, 70.0, 30, bench.season.limb_begins);
  ASSERT_TRUE(latest);
  EXPECT_GE(good_days(bench, *latest + Days{30}, rest.begins), 70.0);
  EXPECT_LT(good_days(bench, *latest + Days{31}, rest.begins), 70.0);
}

TEST_P(FirstRestOnBothHalves, LeavesNoTimeWhereEvenTheEarliestFirstWaterIsTooLate) {
  const InventedBench bench = here();
  const FirstRest rest = rest_by_heat(bench.climate, bench.season, usual_sum);
  const auto latest_from = [&](Date earliest) {
    return latest_first_water(bench.climate, GrowingSeason::winter, rest, 70.0, 30, earliest);
  };
  const Date latest = *latest_from(bench.season.limb_begins);
  EXPECT_EQ(latest_from(latest), latest);
  EXPECT_FALSE(latest_from(latest + Days{1}));
}

TEST_P(FirstRestOnBothHalves, EndsTheGrowthOfAllButEvergreensWhichGrowOnIntoTheNextHotSeason) {
  using species_rules::FirstRestWay;
  const InventedBench bench = here();
  for (const GrowingSeason grows : {GrowingSeason::winter, GrowingSeason::summer}) {
    const FirstRest rest = resting_season(bench.climate, bench.season, grows, usual_sum);
    for (const FirstRestWay way :
         {FirstRestWay::dry, FirstRestWay::barely_moist, FirstRestWay::dies}) {
      EXPECT_EQ(growth_ends(bench.climate, bench.season, grows, usual_sum, way).begins,
                rest.begins);
    }
    const FirstRest evergreen =
        growth_ends(bench.climate, bench.season, grows, usual_sum, FirstRestWay::none);
    EXPECT_EQ(evergreen.begins, bench.season.next_hottest - Days{1});
    EXPECT_FALSE(evergreen.reached);
  }
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorth,
                         FirstRestOnBothHalves,
                         testing::Values(support::hottest_in_the_south,
                                         support::hottest_in_the_north));

} // namespace
} // namespace nightsow::planner
