#include "planner/model/establishment.hpp"

#include "planner/model/expected_plants.hpp"
#include "planner/model/hazards.hpp"
#include "tests/support/even_course.hpp"
#include "tests/support/numbers.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace nightsow::planner {
namespace {

using species_rules::SeedParameters;
using species_rules::Start;

constexpr int days = 300;
constexpr SeasonDays season{0, 30, 180, days};

SeedCourse even_course(double night_c = 10.0) {
  return support::even_course(days, night_c);
}

// Loses nothing, all alike: up after exactly ten of the even days.
SeedParameters plain_seed() {
  SeedParameters seed;
  seed.release = species_rules::ReleaseLimit{12.0, 0.0, 0.0};
  seed.thermal_time_c_d = 119.9;
  seed.thermal_time_spread = 0.0;
  seed.rot_factor = 0.0;
  seed.dry_loss_share = 0.0;
  seed.frost_limit_c = -5.0;
  seed.older_frost_limit_c = -5.0;
  seed.heat_limit_c = 60.0;
  seed.growth_needed_days = 1.0;
  seed.rest_sum = 15.0;
  return seed;
}

PotCare care_without_loss() {
  PotCare care;
  care.kept_through_rest = 1.0;
  return care;
}

Establishment watered(const SeedCourse& course,
                      const SeedParameters& seed,
                      int day,
                      SeedShares shares = {}) {
  return SeedSeason{course, seed, care_without_loss(), season}.watered_on(day, shares);
}

double sum_of(const Establishment& result) {
  const Losses& losses = result.losses;
  return losses.dead + losses.not_ripe + losses.nights_too_warm + losses.deferred +
         losses.lost_wet + losses.dried + losses.heat + losses.frost + losses.too_late +
         losses.rest + result.plants;
}

TEST(SeedSeason, WithoutLossesEverySeedIsAPlant) {
  const Establishment result = watered(even_course(), plain_seed(), 50);
  EXPECT_NEAR(result.plants, 1.0, 1e-6);
  EXPECT_NEAR(result.seedlings, 1.0, 1e-6);
}

TEST(SeedSeason, RestsOnTheDayOnWhichItsSumIsReached) {
  const SeedCourse course = even_course();
  const SeedSeason seed{course, plain_seed(), care_without_loss(), season};
  EXPECT_TRUE(seed.rests());
  EXPECT_EQ(seed.rest_begins(), 180 + 59);
}

TEST(SeedSeason, WhereNoRestComesTheSeasonsEndIsTaken) {
  SeedCourse course = even_course();
  course.rest_rate.assign(days, 0.0);
  const SeedSeason seed{course, plain_seed(), care_without_loss(), season};
  EXPECT_FALSE(seed.rests());
  EXPECT_EQ(seed.rest_begins(), days);
}

TEST(SeedSeason, AnEvergreenHasNoRestAndIsJudgedAtTheSeasonsEnd) {
  SeedParameters seed = plain_seed();
  seed.first_rest = species_rules::FirstRestWay::none;
  const SeedCourse course = even_course();
  PotCare care;
  care.kept_through_rest = 0.5;
  SeedSeason evergreen{course, seed, care, season};
  EXPECT_FALSE(evergreen.rests());
  EXPECT_EQ(evergreen.rest_begins(), days);
  const Establishment result = evergreen.watered_on(50, {});
  EXPECT_EQ(result.losses.rest, 0.0);
  EXPECT_NEAR(result.plants, 1.0, 1e-6);
}

TEST(SeedSeason, AnEvergreenMeetsTheHeatThatOthersRestThrough) {
  SeedParameters seed = plain_seed();
  seed.heat_limit_c = 39.0;
  SeedCourse course = even_course();
  course.hottest_c.at(280) = 60.0; // after the rest has begun
  EXPECT_EQ(watered(course, seed, 50).losses.heat, 0.0);
  seed.first_rest = species_rules::FirstRestWay::none;
  EXPECT_GT(watered(course, seed, 50).losses.heat, 0.99);
}

TEST(SeedSeason, AnEvergreenThatIsUpInTheHeatOfTheSeasonBeforeGrowsOn) {
  SeedParameters seed = plain_seed();
  seed.release.reset();
  SeedCourse course = even_course();
  course.rest_rate.assign(days, 1.0);
  EXPECT_GT(watered(course, seed, 0).losses.too_late, 0.0);
  seed.first_rest = species_rules::FirstRestWay::none;
  EXPECT_NEAR(watered(course, seed, 0).plants, 1.0, 1e-6);
}

TEST(SeedSeason, AnAnnualLosesNothingInARestAndStillHasToGrowUp) {
  SeedParameters seed = plain_seed();
  seed.growth_needed_days = 100.0;
  const SeedCourse course = even_course();
  PotCare care;
  care.kept_through_rest = 0.5;
  const Establishment bulb = SeedSeason{course, seed, care, season}.watered_on(50, {});
  seed.first_rest = species_rules::FirstRestWay::dies;
  const Establishment annual = SeedSeason{course, seed, care, season}.watered_on(50, {});
  EXPECT_NEAR(annual.plants, bulb.plants + bulb.losses.rest, 1e-9);
  EXPECT_EQ(annual.losses.rest, 0.0);
  EXPECT_GT(annual.losses.too_late, 0.0);
  EXPECT_NEAR(annual.losses.too_late, bulb.losses.too_late, 1e-9);
}

TEST(SeedSeason, ARestKeptBarelyMoistTakesAsMuchAsADryOne) {
  SeedParameters seed = plain_seed();
  const SeedCourse course = even_course();
  PotCare care;
  care.kept_through_rest = 0.5;
  const double dry = SeedSeason{course, seed, care, season}.watered_on(50, {}).plants;
  seed.first_rest = species_rules::FirstRestWay::barely_moist;
  EXPECT_EQ((SeedSeason{course, seed, care, season}.watered_on(50, {}).plants), dry);
  EXPECT_NEAR(dry, 0.5, 1e-6);
}

// Five of seven, from the third night on its share of them: two and a bit of three is three.
TEST(SeedSeason, WithoutSpreadAllComeUpTenDaysAfterTheNightsThatRelease) {
  const Establishment result = watered(even_course(), plain_seed(), 50);
  EXPECT_NEAR(result.up.at(50 + 2 + 10), 1.0, 1e-6);
}

TEST(SeedSeason, WarmNightsReleaseNothingAndKeepTheSeed) {
  const Establishment result = watered(even_course(12.1), plain_seed(), 50);
  EXPECT_EQ(result.seedlings, 0.0);
  EXPECT_NEAR(result.losses.nights_too_warm, 1.0, 1e-6);
}

TEST(SeedSeason, FourCoolNightsOfSevenAreNotEnoughFiveAre) {
  for (const int cool : {4, 5}) {
    SeedCourse course = even_course(20.0);
    for (int night = 0; night < cool; ++night) {
      course.night_c.at(static_cast<std::size_t>(100 + night)) = 9.0;
    }
    EXPECT_NEAR(watered(course, plain_seed(), 50).seedlings, cool == 5 ? 1.0 : 0.0, 1e-6) << cool;
  }
}

TEST(SeedSeason, HotStartersWaitForWarmNights) {
  SeedParameters seed = plain_seed();
  seed.start = Start::hot;
  seed.release->limit_c = 18.0;
  EXPECT_NEAR(watered(even_course(20.0), seed, 50).seedlings, 1.0, 1e-6);
  EXPECT_EQ(watered(even_course(17.0), seed, 50).seedlings, 0.0);
}

TEST(SeedSeason, SeedWithoutALimitStartsWithTheWater) {
  SeedParameters seed = plain_seed();
  seed.release.reset();
  EXPECT_NEAR(watered(even_course(25.0), seed, 50).up.at(60), 1.0, 1e-6);
}

TEST(SeedSeason, WateredOnceRestHasBegunAllWaits) {
  const Establishment result = watered(even_course(), plain_seed(), 260);
  EXPECT_EQ(result.losses.nights_too_warm, 1.0);
}

TEST(SeedSeason, WhatIsNotUpBeforeTheRestIsTooLate) {
  EXPECT_NEAR(watered(even_course(), plain_seed(), 232).losses.too_late, 1.0, 1e-6);
}

TEST(SeedSeason, DeadUnripeAndDeferredSeedIsTakenOffInThatOrder) {
  SeedParameters seed = plain_seed();
  seed.deferral_share = 0.5;
  const Losses losses = watered(even_course(), seed, 50, {0.8, 0.5}).losses;
  EXPECT_NEAR(losses.dead, 0.2, 1e-12);
  EXPECT_NEAR(losses.not_ripe, 0.4, 1e-12);
  EXPECT_NEAR(losses.deferred, 0.2, 1e-12);
}

TEST(SeedSeason, UpBeforeTheLimbItRestsWithTheGrowthItHas) {
  SeedParameters seed = plain_seed();
  seed.rest_sum = 4.0; // sixteen days at the even rate
  seed.growth_needed_days = 40.0;
  const Establishment early = watered(even_course(), seed, 0);
  EXPECT_GT(early.losses.too_late, 0.9);
  EXPECT_LT(watered(even_course(), seed, 40).losses.too_late, 0.05);
}

TEST(SeedSeason, OneFrostTakesTheShareOfSeedlingsThatDoNotStandIt) {
  SeedCourse course = even_course();
  course.coldest_c.at(100) = -5.0;
  EXPECT_NEAR(watered(course, plain_seed(), 50).losses.frost, 0.5, 1e-6);
}

TEST(SeedSeason, EachHazardHasItsOwnLoss) {
  SeedParameters seed = plain_seed();
  seed.wet_loss_per_day = 0.01;
  EXPECT_GT(watered(even_course(), seed, 50).losses.lost_wet, 0.01);
  SeedCourse hot = even_course();
  hot.heat_half_lives.at(55) = 1.0;
  EXPECT_NEAR(watered(hot, plain_seed(), 50).losses.heat, 0.5, 1e-6);
  seed = plain_seed();
  seed.dry_loss_share = 1.0;
  SeedCourse dry = even_course();
  dry.evaporation_mm.assign(days, 30.0);
  EXPECT_GT(watered(dry, seed, 50).losses.dried, 0.9);
}

TEST(SeedSeason, PlantsAndLossesSumToTheSeedsSownWhateverComes) {
  SeedParameters seed = plain_seed();
  seed.release->spread_k = 2.5;
  seed.thermal_time_spread = 0.5;
  seed.rot_factor = 3.0;
  seed.wet_loss_per_day = 0.002;
  seed.dry_loss_share = 0.7;
  seed.growth_needed_days = 100.0;
  seed.deferral_share = 0.2;
  SeedCourse course = even_course(11.0);
  course.evaporation_mm.assign(days, 2.5);
  course.coldest_c.at(120) = -4.0;
  course.heat_half_lives.at(60) = 0.2;
  for (int day = 0; day < days; day += 13) {
    EXPECT_NEAR(sum_of(watered(course, seed, day, {0.8, 0.7})), 1.0, 1e-9) << day;
  }
}

double sum_of(const SeedsOnDay& seeds) {
  return seeds.dead + seeds.not_ripe + seeds.nights_too_warm + seeds.to_come + seeds.deferred +
         seeds.too_late + seeds.heat + seeds.lost_wet + seeds.dried + seeds.up_so_far;
}

TEST(SeedSeason, OnAnyDayTheSeedsSumToThoseSown) {
  const SeedCourse course = even_course();
  SeedParameters seed = plain_seed();
  seed.release = species_rules::ReleaseLimit{9.0, 2.5, 0.15};
  seed.wet_loss_per_day = 0.002;
  seed.rot_factor = 1.0;
  seed.thermal_time_spread = 0.35;
  seed.deferral_share = 0.1;
  SeedSeason of_seed{course, seed, care_without_loss(), season};
  double before = 0.0;
  for (const int today : {50, 55, 60, 70, 100, 299}) {
    const SeedsOnDay now = of_seed.on_day(50, {0.9, 0.8}, today);
    EXPECT_NEAR(sum_of(now), 1.0, 1e-9) << today;
    EXPECT_GE(now.up_so_far, before);
    before = now.up_so_far;
  }
  EXPECT_NEAR(before, of_seed.watered_on(50, {0.9, 0.8}).seedlings, 1e-9);
}

TEST(SeedSeason, OnTheDayOfFirstWaterNothingHasCome) {
  const SeedCourse course = even_course();
  SeedSeason of_seed{course, plain_seed(), care_without_loss(), season};
  EXPECT_NEAR(of_seed.on_day(50, {}, 51).nights_too_warm, 1.0, 1e-3);
  EXPECT_NEAR(of_seed.on_day(50, {}, 58).to_come, 1.0, 1e-3);
  EXPECT_NEAR(of_seed.on_day(50, {}, 70).up_so_far, 1.0, 1e-3);
}

TEST(ExpectedPlantsOfAPacket, EachCaseSaysWhereItsSeedsAreToday) {
  const SeedCourse course = even_course();
  const std::vector<const SeedCourse*> courses{&course};
  SeedParameters slow = plain_seed();
  slow.thermal_time_c_d = 1000.0;
  const std::vector<SeedParameters> seeds{plain_seed(), slow};
  ExpectedPlants expected{courses, seeds, care_without_loss(), season};
  const SharesOnDay all = [](const SeedParameters&, int) { return SeedShares{}; };
  const std::vector<SeedsOnDay> now = expected.on_day(50, all, 70);
  ASSERT_EQ(now.size(), 2U);
  EXPECT_NEAR(now.front().up_so_far, 1.0, 1e-3);
  EXPECT_NEAR(now.back().to_come, 1.0, 1e-3);
}

// Up and down by some kelvin about a winter in the middle of the season; now and then it freezes,
// burns or dries.
SeedCourse made_up_course(unsigned example) {
  support::Numbers numbers{example};
  SeedCourse course = even_course();
  for (int day = 0; day < days; ++day) {
    const auto entry = static_cast<std::size_t>(day);
    const double usual_c = 12.0 + 10.0 * std::cos(2.0 * 3.14159 * day / days);
    const double c = usual_c + 0.1 * (numbers.upto(80) - 40);
    course.night_c[entry] = c - 4.0;
    course.mean_c[entry] = c;
    course.seedling_mean_c[entry] = c + 1.0;
    for (std::size_t hour = 0; hour < climate::SeedLevel::hours_a_day; ++hour) {
      course.hour_c[entry * climate::SeedLevel::hours_a_day + hour] =
          static_cast<float>(c + (hour < 12 ? 5.0 : -5.0));
    }
    course.coldest_c[entry] = c - 6.0;
    course.hottest_c[entry] = c + 12.0;
    course.evaporation_mm[entry] = std::max(0.0, 0.3 * c);
    course.heat_half_lives[entry] = numbers.upto(40) == 0 ? 0.3 : 0.0;
    course.rest_rate[entry] = std::max(0.0, usual_c - 12.0) / 12.0;
  }
  return course;
}

std::vector<SeedParameters> unlike_seeds() {
  SeedParameters cool = plain_seed();
  cool.release = species_rules::ReleaseLimit{11.0, 2.5, 0.15};
  cool.deferral_share = 0.1;
  cool.thermal_time_c_d = 150.0;
  cool.thermal_time_spread = 0.35;
  cool.wet_loss_per_day = 0.002;
  cool.rot_factor = 2.0;
  cool.dry_loss_share = 0.7;
  cool.frost_limit_c = -1.0;
  cool.older_frost_limit_c = -3.0;
  cool.heat_limit_c = 30.0;
  cool.growth_needed_days = 60.0;
  cool.rest_sum = 6.0; // so little that those up before the limb rest early
  SeedParameters hot = cool;
  hot.start = Start::hot;
  hot.growth = species_rules::Growth::summer;
  SeedParameters at_once = cool;
  at_once.release.reset();
  SeedParameters all_alike = cool;
  all_alike.release = species_rules::ReleaseLimit{9.0, 0.0, 0.0};
  SeedParameters evergreen = cool;
  evergreen.first_rest = species_rules::FirstRestWay::none;
  SeedParameters annual = cool;
  annual.first_rest = species_rules::FirstRestWay::dies;
  SeedParameters hardly_lasting = cool;
  hardly_lasting.wet_loss_per_day = 1.0; // nothing to divide by is left of it
  return {cool, hot, at_once, all_alike, evergreen, annual, hardly_lasting};
}

TEST(SeedSeason, PlantsAloneAreThoseOfTheWholeReckoning) {
  for (unsigned example = 1; example <= 4; ++example) {
    const SeedCourse course = made_up_course(example);
    PotCare care;
    care.bag_until_up = example % 2 == 0;
    std::size_t kind = 0;
    const std::vector<SeedParameters> kinds = unlike_seeds();
    for (const SeedParameters& seed : kinds) {
      SeedSeason quick{course, seed, care, season};
      SeedSeason whole{course, seed, care, season};
      double most = 0.0;
      for (int day = 0; day < days; ++day) {
        const double plants = whole.watered_on(day, {}).plants;
        ASSERT_NEAR(quick.plants_of_sound_seed(day), plants, 1e-9)
            << "course " << example << ", kind " << kind << ", day " << day;
        most = std::max(most, plants);
      }
      EXPECT_GT(most, kind + 1 == kinds.size() ? 0.0 : 0.001)
          << "course " << example << ", kind " << kind;
      ++kind;
    }
  }
}

TEST(Survival, IsThatOfTheSumOfHazardsHoweverLarge) {
  for (const double a_day : {0.01, 30.0}) {
    const std::vector<double> sums = running_sums(std::vector<double>(days, a_day));
    const Survival survival{sums};
    for (int day = 0; day < days; ++day) {
      EXPECT_NEAR(survival.share(day, day), std::exp(-a_day), 1e-12) << a_day << " a day";
    }
    EXPECT_EQ(survival.share(5, 4), 1.0);
  }
}

} // namespace
} // namespace nightsow::planner
