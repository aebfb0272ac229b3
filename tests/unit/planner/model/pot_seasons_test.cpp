#include "planner/model/pot_seasons.hpp"

#include "planner/model/pot_places.hpp"

#include <gtest/gtest.h>

#include <numeric>

namespace nightsow::planner {
namespace {

using species_rules::SeedParameters;

constexpr int days = 300;
constexpr SeasonDays season{0, 30, 180, days};

// Every day alike, the seed at 15 °C all day; nothing dries.
SeedCourse even_course(double night_c, int begins = 0) {
  SeedCourse course;
  course.first = Date{date::year{2020} / date::February / 1} + Days{begins};
  course.night_c.assign(days, night_c);
  course.hour_c.assign(days * 24, 15.0F);
  course.mean_c.assign(days, 15.0);
  course.seedling_mean_c.assign(days, 15.0);
  course.swing_k.assign(days, 30.0);
  course.coldest_c.assign(days, 10.0);
  course.hottest_c.assign(days, 20.0);
  course.heat_half_lives.assign(days, 0.0);
  course.evaporation_mm.assign(days, 1.0);
  course.winter_growth.assign(days, 1.0);
  course.summer_growth.assign(days, 1.0);
  course.seven_day_mean_c.assign(days, 15.0);
  course.rest_rate.assign(days, 0.25);
  return course;
}

SeedParameters plain_seed() {
  SeedParameters seed;
  seed.release = species_rules::ReleaseLimit{12.0, 0.0, 0.0};
  seed.thermal_time_c_d = 119.9;
  seed.rot_factor = 0.0;
  seed.deferral_share = 0.4;
  seed.rest_sum = 15.0;
  return seed;
}

PotSeason stay(const SeedCourse& course, int water, int last) {
  return {{&course}, season, water, last};
}

SeedsOnDay seeds_after(const std::vector<PotSeason>& seasons, SeedShares shares = {}) {
  const std::vector<SeedParameters> draws{plain_seed()};
  const std::vector<SeedShares> all{shares};
  return cases_of_pot(seasons, draws, all, {}).front();
}

double sum_of(const SeedsOnDay& seeds) {
  return seeds.dead + seeds.not_ripe + seeds.nights_too_warm + seeds.to_come + seeds.deferred +
         seeds.too_late + seeds.heat + seeds.lost_wet + seeds.dried + seeds.up_so_far;
}

TEST(PotSeasons, SeedThatWaitedThroughAWarmSeasonComesInACoolOne) {
  const SeedCourse warm = even_course(18.0);
  const SeedCourse cool = even_course(10.0, days);
  EXPECT_LT(seeds_after({stay(warm, 30, days - 1)}).up_so_far, 1e-6);
  const SeedsOnDay seeds = seeds_after({stay(warm, 30, days - 1), stay(cool, 30, 200)});
  // All but the 0.4 of those that had not been deferred yet, 0.6.
  EXPECT_NEAR(seeds.up_so_far, 0.76, 0.01);
  EXPECT_NEAR(sum_of(seeds), 1.0, 1e-6);
}

TEST(PotSeasons, DeferredSeedIsNotDeferredTwice) {
  const SeedCourse first = even_course(10.0);
  const SeedCourse second = even_course(10.0, days);
  EXPECT_NEAR(seeds_after({stay(first, 30, days - 1)}).deferred, 0.4, 1e-6);
  EXPECT_NEAR(seeds_after({stay(first, 30, days - 1), stay(second, 30, 200)}).deferred, 0.0, 1e-6);
}

TEST(PotSeasons, WhatIsDeadAndWhatIsUpStaysSo) {
  const SeedCourse first = even_course(10.0);
  const SeedCourse second = even_course(10.0, days);
  const SeedShares shares{0.7, 1.0};
  const SeedsOnDay before = seeds_after({stay(first, 30, days - 1)}, shares);
  const SeedsOnDay after = seeds_after({stay(first, 30, days - 1), stay(second, 30, 200)}, shares);
  EXPECT_NEAR(after.dead, 0.3, 1e-9);
  EXPECT_GT(after.up_so_far, before.up_so_far);
  EXPECT_NEAR(
      std::accumulate(after.up.begin(), after.up.begin() + days + 201, 0.0), after.up_so_far, 1e-6);
  EXPECT_NEAR(sum_of(after), 1.0, 1e-6);
}

TEST(PotSeasons, RestIsThatOfTheMiddleDraw) {
  const SeedCourse course = even_course(10.0);
  std::vector<SeedParameters> draws(3, plain_seed());
  draws[0].rest_sum = 5.0;
  draws[2].rest_sum = 25.0;
  EXPECT_EQ(rest_of_pot(stay(course, 30, 100), draws), rest_day(course, plain_seed(), season).day);
}

TEST(PotPlaces, AMovedPotHasTheDaysOfEachPlace) {
  const SeedCourse here = even_course(18.0);
  SeedCourse there = even_course(10.0);
  there.hour_c.assign(days * 24, 12.0F);
  const std::vector<StoodFrom> places{{0, &here}, {40, &there}};
  const SeedCourse course = course_of_moved(places);
  EXPECT_EQ(course.night_c[39], 18.0);
  EXPECT_EQ(course.night_c[40], 10.0);
  EXPECT_EQ(course.hours_of(39)[23], 15.0F);
  EXPECT_EQ(course.hours_of(40)[0], 12.0F);
}

TEST(PotPlaces, WhatEvaporatesFromAPotLeftDryAddsUp) {
  const SeedCourse course = left_dry(even_course(18.0), 10, 19);
  EXPECT_EQ(course.evaporation_mm[9], 1.0);
  EXPECT_EQ(course.evaporation_mm[10], 1.0);
  EXPECT_EQ(course.evaporation_mm[14], 5.0);
  EXPECT_EQ(course.evaporation_mm[19], 10.0);
  EXPECT_EQ(course.evaporation_mm[20], 1.0);
}

TEST(PotPlaces, SeedThatHadBegunDriesInAPotLeftDry) {
  const SeedCourse cool = even_course(10.0);
  const SeedCourse dry = left_dry(cool, 38, 60);
  SeedParameters seed = plain_seed();
  seed.dry_loss_share = 0.7;
  const std::vector<SeedParameters> draws{seed};
  const std::vector<SeedShares> shares{{1.0, 1.0}};
  const auto dried = [&](const SeedCourse& course) {
    const std::vector<PotSeason> seasons{stay(course, 30, 100)};
    return cases_of_pot(seasons, draws, shares, {}).front().dried;
  };
  EXPECT_GT(dried(dry), dried(cool) + 0.1);
}

} // namespace
} // namespace nightsow::planner
