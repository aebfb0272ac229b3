#include "planner/model/seed_course.hpp"

#include "planner/model/seed_place.hpp"
#include "tests/support/invented_bench.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace nightsow::planner {
namespace {

using support::bench_of;
using support::InventedBench;

InventedBench place() {
  support::InventedClimate climate;
  climate.night_sd_k = 2.0;
  return bench_of({.climate = climate});
}

std::vector<SeedCourse> courses_of(const InventedBench& here, int wanted) {
  const BenchSeason season = here.bench_season();
  const BenchSeason* const only[] = {&season};
  return seed_courses(here.climate,
                      only,
                      seed_place(here.garden.garden, here.garden.garden.benches.front()),
                      wanted);
}

TEST(SeedCourses, CoverTheSeasonDayForDayWithoutAHole) {
  const InventedBench here = place();
  for (const SeedCourse& course : courses_of(here, 8)) {
    EXPECT_EQ(course.first, here.season.hottest);
    EXPECT_EQ(course.days(), days_between(here.season.hottest, here.season.next_hottest));
    for (const std::vector<double>* row : {&course.night_c,
                                           &course.mean_c,
                                           &course.seedling_mean_c,
                                           &course.swing_k,
                                           &course.coldest_c,
                                           &course.hottest_c,
                                           &course.heat_half_lives,
                                           &course.evaporation_mm,
                                           &course.winter_growth,
                                           &course.summer_growth,
                                           &course.seven_day_mean_c,
                                           &course.rest_rate}) {
      ASSERT_EQ(row->size(), course.night_c.size());
      for (const double value : *row) {
        ASSERT_TRUE(std::isfinite(value));
      }
    }
  }
}

TEST(SeedCourses, AreAsManyAsWantedOrAsThereAreMembers) {
  const InventedBench here = place();
  EXPECT_EQ(courses_of(here, 8).size(), 8U);
  EXPECT_EQ(courses_of(here, 100000).size(),
            static_cast<std::size_t>(here.bench_season().outlook.members));
}

TEST(SeedCourses, DryFasterInSummerThanInWinter) {
  const SeedCourse course = courses_of(place(), 1).front();
  EXPECT_GT(course.evaporation_mm.at(5), 2.0 * course.evaporation_mm.at(180));
}

TEST(SeedCourses, AMatWarmsSeedAndItsNightsButNoSeedlings) {
  const InventedBench here = place();
  const BenchSeason season = here.bench_season();
  const BenchSeason* const only[] = {&season};
  climate::SeedPlace bare = seed_place(here.garden.garden, here.garden.garden.benches.front());
  climate::SeedPlace warmed = bare;
  warmed.mat = climate::SeedMat{CelsiusDelta{10.0}, std::nullopt, true};
  const SeedCourse without = seed_courses(here.climate, only, bare, 1).front();
  const SeedCourse with = seed_courses(here.climate, only, warmed, 1).front();
  EXPECT_NEAR(with.night_c.at(100), without.night_c.at(100) + 10.0, 1e-6);
  EXPECT_GT(with.mean_c.at(100), without.mean_c.at(100) + 8.0);
  EXPECT_EQ(with.coldest_c, without.coldest_c);
  EXPECT_EQ(with.winter_growth, without.winter_growth);
}

TEST(SeedCourses, GoOnThroughConsecutiveSeasons) {
  const InventedBench here = place();
  const BenchSeason season = here.bench_season();
  const BenchSeason next = bench_season(
      here.climate,
      climate::season_after(*here.station.turning.phases, here.season, here.garden.today));
  const BenchSeason* const both[] = {&season, &next};
  const std::vector<SeedCourse> courses = seed_courses(
      here.climate, both, seed_place(here.garden.garden, here.garden.garden.benches.front()), 4);
  EXPECT_EQ(courses.front().days(), days_between(here.season.hottest, next.season.next_hottest));
}

} // namespace
} // namespace nightsow::planner
