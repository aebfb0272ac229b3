#include "planner/answers/plan.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace nightsow::planner {
namespace {

using support::InventedGarden;

Bench chilled_bench(double night_c, double day_c) {
  Bench bench;
  bench.name = "cool cabinet";
  bench.chilled = true;
  bench.fixed_night = Celsius{night_c};
  bench.fixed_day = Celsius{day_c};
  return bench;
}

InventedGarden warm_garden(bool with_cabinet) {
  InventedGarden garden;
  garden.climate = support::mild_coast();
  garden.climate.night_mean_c = 19.0; // nights never come down to what Bulbine waits for
  garden.climate.hottest_day_of_year = support::hottest_in_the_south;
  garden.benches = {support::open_bench()};
  if (with_cabinet) {
    garden.benches.push_back(chilled_bench(8.0, 16.0));
  }
  garden.packets = {"Bulbine annua, 40 seeds, harvested 300 days ago"};
  return garden;
}

TEST(ChilledRoute, IsAdvisedWhereNightsNeverCool) {
  const PlanAnswer without = plan(support::garden_of(warm_garden(false)), {});
  const PlanAnswer with = plan(support::garden_of(warm_garden(true)), {});
  ASSERT_EQ(with.sowings.size(), 1U);
  const Sowing& line = with.sowings.front();
  EXPECT_EQ(line.route, "chilled");
  EXPECT_EQ(line.bench, "cool cabinet");
  EXPECT_EQ(line.reasons.front().code, ReasonCode::chilled_gives);
  const double before = without.sowings.empty() || !without.sowings.front().expected
                            ? 0.0
                            : without.sowings.front().expected->plants.mean;
  EXPECT_GT(line.expected->plants.mean, before);
}

TEST(ChilledRoute, IsComparedAndNotAdvisedWhereNightsAreCool) {
  InventedGarden garden;
  garden.climate.hottest_day_of_year = support::hottest_in_the_south;
  garden.days_after_hottest = 30;
  garden.benches = {support::open_bench(), chilled_bench(4.0, 4.0)};
  garden.packets = {"Lachenalia mutabilis, 40 seeds, harvested 300 days ago"};
  const PlanAnswer answer = plan(support::garden_of(garden), {});
  ASSERT_EQ(answer.sowings.size(), 1U);
  const Sowing& line = answer.sowings.front();
  EXPECT_NE(line.route, "chilled");
  EXPECT_EQ(line.bench, "open bench");
  EXPECT_TRUE(std::any_of(line.routes.begin(), line.routes.end(), [](const RouteAnswer& route) {
    return route.route == "chilled";
  }));
}

} // namespace
} // namespace nightsow::planner
