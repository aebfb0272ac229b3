#include "planner/model/establishment.hpp"

#include "planner/model/seed_place.hpp"
#include "tests/reference/planner/plain_course.hpp"
#include "tests/reference/planner/seed_by_seed.hpp"
#include "tests/support/invented_bench.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

// The quick model against the slow one: an independent walk, seed by seed and hour by hour.
namespace nightsow::planner {
namespace {

using species_rules::SeedParameters;
using species_rules::Start;
using support::bench_of;
using support::InventedBench;

constexpr int seeds = 3000;
// What the quick model makes simpler: classes of emergence, the clock of evaporation, hazards of
// one stage shared by their sums.
constexpr double simpler = 0.012;

/// Where pots stand, as the product is told and as the plain reckoning is.
struct Stand {
  Bench bench;
  PlainBench plain;
  std::optional<climate::SeedMat> mat;
};

Stand in_the_open() {
  return {support::open_bench(), {}, {}};
}

Stand in_full_sun() {
  Stand stand = in_the_open();
  stand.bench.pot_colour = "dark";
  stand.bench.shade = 0.0;
  stand.bench.frost_care = "none";
  stand.plain.k_per_w = 0.0185;
  stand.plain.shade = 0.0;
  stand.plain.fleece = false;
  return stand;
}

Stand in_a_tunnel() {
  Stand stand{support::bench_with("tunnel", 1.3, 4.2), {}, {}};
  stand.bench.shelter = "plastic tunnel";
  stand.bench.frost_care = "in";
  stand.plain.under_glass = true;
  stand.plain.sun = 0.7;
  stand.plain.night_loss_k = 3.0;
  stand.plain.night_offset_k = 1.3;
  stand.plain.day_offset_k = 4.2;
  stand.plain.fleece = false;
  stand.plain.carried_in = true;
  return stand;
}

Stand on_a_mat() {
  Stand stand = in_the_open();
  stand.mat = climate::SeedMat{CelsiusDelta{8.0}, Celsius{26.0}, true};
  stand.plain.mat_rise_k = 8.0;
  stand.plain.mat_thermostat_c = 26.0;
  return stand;
}

struct Scene {
  std::string name;
  SeedParameters seed;
  PotCare care;
  int water = 0;
  double night_mean_c = 12.0;
  double night_half_swing_k = 5.0;
  Stand stand = in_the_open();
  SeedShares shares{0.9, 0.95};
};

SeedParameters cool_starter(double limit_c) {
  SeedParameters seed;
  seed.release = species_rules::ReleaseLimit{limit_c, 2.5, 0.15};
  seed.deferral_share = 0.1;
  seed.thermal_time_c_d = 150.0;
  seed.thermal_time_spread = 0.35;
  seed.wet_loss_per_day = 0.0005;
  seed.dry_loss_share = 0.7;
  seed.frost_limit_c = -1.0;
  seed.older_frost_limit_c = -3.0;
  seed.heat_limit_c = 39.0;
  seed.growth_needed_days = 70.0;
  seed.rest_sum = 20.0;
  return seed;
}

std::vector<Scene> scenes() {
  std::vector<Scene> list;
  list.push_back({"in season", cool_starter(14.0), {}, 75});
  list.push_back({"in the heat", cool_starter(14.0), {}, 2});
  list.push_back({"late", cool_starter(14.0), {}, 200});
  list.push_back({"nights never cool enough", cool_starter(4.0), {}, 75});
  Scene used{"used mix, open seed, no grit", cool_starter(14.0), {}, 60};
  used.care.mix = species_rules::MixHygiene::used;
  used.care.grit = false;
  list.push_back(used);
  Scene heat{"heat on wet seed", cool_starter(22.0), {}, 5, 24.0, 6.0};
  heat.seed.heat_limit_c = 36.0;
  list.push_back(heat);
  list.push_back({"frost", cool_starter(14.0), {}, 60, 8.0, 8.0});
  Scene fleshy{"fleshy seed", cool_starter(14.0), {}, 20};
  fleshy.seed.start = Start::at_once;
  fleshy.seed.release.reset();
  fleshy.seed.wet_loss_per_day = 0.004;
  list.push_back(fleshy);
  Scene bag{"in a bag", cool_starter(14.0), {}, 75};
  bag.care.bag_until_up = true;
  list.push_back(bag);
  Scene swing{"needs the swing", cool_starter(14.0), {}, 75};
  swing.seed.swing = species_rules::Swing::needed;
  list.push_back(swing);
  Scene evergreen{"evergreen", cool_starter(14.0), {}, 75};
  evergreen.seed.first_rest = species_rules::FirstRestWay::none;
  list.push_back(evergreen);
  Scene annual{"annual", cool_starter(14.0), {}, 75};
  annual.seed.first_rest = species_rules::FirstRestWay::dies;
  list.push_back(annual);
  return list;
}

std::vector<Scene> scenes_elsewhere() {
  std::vector<Scene> list;
  Scene sun{"dark pots in full sun", cool_starter(16.0), {}, 40, 14.0, 6.0, in_full_sun()};
  sun.care.grit = false;
  sun.care.seed_depth_mm = 3.0;
  sun.seed.dry_loss_share = 0.4;
  list.push_back(sun);
  list.push_back(
      {"frost and nothing over it", cool_starter(14.0), {}, 60, 7.0, 7.0, in_full_sun()});
  list.push_back({"carried in from frost", cool_starter(14.0), {}, 60, 4.0, 8.0, in_a_tunnel()});
  Scene mat{"hot starter on a mat", cool_starter(20.0), {}, 3, 14.0, 6.0, on_a_mat()};
  mat.seed.start = Start::hot;
  mat.seed.growth = species_rules::Growth::summer;
  mat.seed.cardinal = {10.0, 26.0, 38.0};
  mat.seed.thermal_time_c_d = 120.0;
  mat.seed.heat_limit_c = 47.0;
  mat.seed.growth_needed_days = 45.0;
  list.push_back(mat);
  Scene evergreen{"evergreen in full sun", cool_starter(16.0), {}, 40, 14.0, 6.0, in_full_sun()};
  evergreen.seed.first_rest = species_rules::FirstRestWay::none;
  list.push_back(evergreen);
  Scene off_mat = mat;
  off_mat.name = "hot starter without one";
  off_mat.stand = in_the_open();
  list.push_back(off_mat);
  return list;
}

/// A scene's place and season.
struct Place {
  InventedBench here;
  BenchSeason season;
};

Place place_of(const Scene& scene) {
  support::InventedGarden garden;
  garden.climate.night_mean_c = scene.night_mean_c;
  garden.climate.night_half_swing_k = scene.night_half_swing_k;
  garden.climate.night_sd_k = 2.0;
  garden.benches = {scene.stand.bench};
  InventedBench here = bench_of(garden);
  BenchSeason season = here.bench_season();
  return {std::move(here), std::move(season)};
}

std::vector<SeedCourse> courses_of(const Place& place, const Scene& scene, int wanted) {
  const BenchSeason* const only[] = {&place.season};
  const Garden& garden = place.here.garden.garden;
  climate::SeedPlace where = seed_place(garden, garden.benches.front());
  where.mat = scene.stand.mat;
  return seed_courses(place.here.climate, only, where, wanted);
}

// The plain days of the same members: the air at the bench is where both begin.
SeedCourse plain_course_of(const Place& place, const Scene& scene, int member) {
  PlainAir air;
  air.first = place.season.outlook.first;
  const auto nights = place.season.outlook.night_of(member);
  const auto days = place.season.outlook.day_of(member);
  air.night_c.assign(nights.begin(), nights.end());
  air.day_c.assign(days.begin(), days.end());
  PlainBench bench = scene.stand.plain;
  bench.latitude = place.here.garden.garden.latitude;
  bench.elevation_m = place.here.garden.garden.elevation_m.value_or(0.0);
  return plain_course(air, bench);
}

SeasonDays season_of(const Place& place, const SeedCourse& course) {
  return season_days(place.here.season, course.first);
}

double farthest_apart(const std::vector<double>& a, const std::vector<double>& b) {
  double apart = a.size() == b.size() ? 0.0 : 1e9;
  for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i) {
    apart = std::max(apart, std::abs(a[i] - b[i]));
  }
  return apart;
}

std::vector<double> in_doubles(const std::vector<float>& values) {
  return {values.begin(), values.end()};
}

// What the walk and the quick model both stand on.
TEST(SeedCourses, AreTheDaysThatThePlainReckoningGives) {
  std::vector<Scene> all = scenes_elsewhere();
  all.push_back(scenes().front());
  for (const Scene& scene : all) {
    SCOPED_TRACE(scene.name);
    const Place place = place_of(scene);
    const SeedCourse quick = courses_of(place, scene, 1).front();
    const SeedCourse plain = plain_course_of(place, scene, place.season.outlook.members / 2);
    EXPECT_LT(farthest_apart(quick.night_c, plain.night_c), 1e-4);
    EXPECT_LT(farthest_apart(in_doubles(quick.hour_c), in_doubles(plain.hour_c)), 1e-3);
    EXPECT_LT(farthest_apart(quick.mean_c, plain.mean_c), 1e-3);
    EXPECT_LT(farthest_apart(quick.swing_k, plain.swing_k), 1e-3);
    EXPECT_LT(farthest_apart(quick.heat_half_lives, plain.heat_half_lives), 1e-3);
    EXPECT_LT(farthest_apart(quick.seedling_mean_c, plain.seedling_mean_c), 1e-3);
    EXPECT_LT(farthest_apart(quick.coldest_c, plain.coldest_c), 1e-3);
    EXPECT_LT(farthest_apart(quick.hottest_c, plain.hottest_c), 1e-3);
    EXPECT_LT(farthest_apart(quick.evaporation_mm, plain.evaporation_mm), 1e-3);
    EXPECT_LT(farthest_apart(quick.winter_growth, plain.winter_growth), 1e-3);
    EXPECT_LT(farthest_apart(quick.summer_growth, plain.summer_growth), 1e-3);
    EXPECT_LT(farthest_apart(quick.seven_day_mean_c, plain.seven_day_mean_c), 1e-3);
    EXPECT_LT(farthest_apart(quick.rest_rate, plain.rest_rate), 1e-4);
  }
}

void expect_near(double quick, double slow, const std::string& what) {
  const double sampling = std::sqrt(std::max(1e-4, slow * (1.0 - slow)) / seeds);
  EXPECT_NEAR(quick, slow, 4.0 * sampling + simpler) << what;
}

// The share up by each day: of seed released together a fifth comes at once where the walk has them
// one by one.
constexpr double classes_apart = 0.1;

void expect_same_flushes(const Establishment& quick, const Establishment& slow) {
  double of_quick = 0.0;
  double of_slow = 0.0;
  double apart = 0.0;
  for (std::size_t day = 0; day < quick.up.size(); ++day) {
    of_quick += quick.up[day];
    of_slow += slow.up[day];
    apart = std::max(apart, std::abs(of_quick - of_slow));
  }
  EXPECT_LT(apart, classes_apart + simpler) << "share up by a day";
}

void expect_same(const Establishment& quick, const Establishment& slow) {
  expect_near(quick.plants, slow.plants, "plants");
  expect_near(quick.seedlings, slow.seedlings, "seedlings");
  expect_near(quick.losses.dead, slow.losses.dead, "dead");
  expect_near(quick.losses.not_ripe, slow.losses.not_ripe, "not ripe");
  expect_near(quick.losses.deferred, slow.losses.deferred, "deferred");
  expect_near(quick.losses.nights_too_warm, slow.losses.nights_too_warm, "nights too warm");
  expect_near(quick.losses.lost_wet, slow.losses.lost_wet, "lost wet");
  expect_near(quick.losses.dried, slow.losses.dried, "dried");
  expect_near(quick.losses.heat, slow.losses.heat, "heat");
  expect_near(quick.losses.frost, slow.losses.frost, "frost");
  expect_near(quick.losses.too_late, slow.losses.too_late, "too late");
  expect_near(quick.losses.rest, slow.losses.rest, "rest");
  expect_same_flushes(quick, slow);
}

// From the nights of the bench on nothing of the slow answer comes from the product.
TEST(Establishment, AgreesWithAWalkSeedBySeedAndHourByHour) {
  std::vector<Scene> all = scenes();
  const std::vector<Scene> elsewhere = scenes_elsewhere();
  all.insert(all.end(), elsewhere.begin(), elsewhere.end());
  for (const Scene& scene : all) {
    SCOPED_TRACE(scene.name);
    const Place place = place_of(scene);
    const int members = place.season.outlook.members;
    const std::vector<SeedCourse> courses = courses_of(place, scene, 2);
    for (std::size_t i = 0; i < courses.size(); ++i) {
      const SeasonDays season = season_of(place, courses[i]);
      const int member = (2 * static_cast<int>(i) + 1) * members / 4; // taken evenly
      expect_same(SeedSeason{courses[i], scene.seed, scene.care, season}.watered_on(scene.water,
                                                                                    scene.shares),
                  simulated(plain_course_of(place, scene, member),
                            scene.seed,
                            scene.care,
                            season,
                            scene.water,
                            scene.shares,
                            seeds));
    }
  }
}

} // namespace
} // namespace nightsow::planner
