#include "planner/model/establishment.hpp"

#include "planner/model/seed_place.hpp"
#include "tests/reference/planner/seed_by_seed.hpp"
#include "tests/support/invented_bench.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
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

struct Scene {
  std::string name;
  SeedParameters seed;
  PotCare care;
  int water = 0;
  double night_mean_c = 12.0;
  double night_half_swing_k = 5.0;
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
  return list;
}

std::vector<SeedCourse> courses_of(const Scene& scene) {
  support::InventedClimate climate;
  climate.night_mean_c = scene.night_mean_c;
  climate.night_half_swing_k = scene.night_half_swing_k;
  climate.night_sd_k = 2.0;
  const InventedBench here = bench_of({.climate = climate});
  const BenchSeason season = here.bench_season();
  const BenchSeason* const only[] = {&season};
  return seed_courses(
      here.climate, only, seed_place(here.garden.garden, here.garden.garden.benches.front()), 2);
}

SeasonDays season_of(const Scene& scene, const SeedCourse& course) {
  support::InventedClimate climate;
  climate.night_mean_c = scene.night_mean_c;
  climate.night_half_swing_k = scene.night_half_swing_k;
  climate.night_sd_k = 2.0;
  return season_days(bench_of({.climate = climate}).season, course.first);
}

void expect_near(double quick, double slow, const std::string& what) {
  const double sampling = std::sqrt(std::max(1e-4, slow * (1.0 - slow)) / seeds);
  EXPECT_NEAR(quick, slow, 4.0 * sampling + simpler) << what;
}

TEST(Establishment, AgreesWithAWalkSeedBySeedAndHourByHour) {
  for (const Scene& scene : scenes()) {
    for (const SeedCourse& course : courses_of(scene)) {
      const SeasonDays season = season_of(scene, course);
      const Establishment quick =
          SeedSeason{course, scene.seed, scene.care, season}.watered_on(scene.water, scene.shares);
      const Establishment slow =
          simulated(course, scene.seed, scene.care, season, scene.water, scene.shares, seeds);
      expect_near(quick.plants, slow.plants, scene.name + ": plants");
      expect_near(quick.seedlings, slow.seedlings, scene.name + ": seedlings");
      expect_near(quick.losses.dead, slow.losses.dead, scene.name + ": dead");
      expect_near(quick.losses.not_ripe, slow.losses.not_ripe, scene.name + ": not ripe");
      expect_near(quick.losses.deferred, slow.losses.deferred, scene.name + ": deferred");
      expect_near(quick.losses.nights_too_warm,
                  slow.losses.nights_too_warm,
                  scene.name + ": nights too warm");
      expect_near(quick.losses.lost_wet, slow.losses.lost_wet, scene.name + ": lost wet");
      expect_near(quick.losses.dried, slow.losses.dried, scene.name + ": dried");
      expect_near(quick.losses.heat, slow.losses.heat, scene.name + ": heat");
      expect_near(quick.losses.frost, slow.losses.frost, scene.name + ": frost");
      expect_near(quick.losses.too_late, slow.losses.too_late, scene.name + ": too late");
      expect_near(quick.losses.rest, slow.losses.rest, scene.name + ": rest");
    }
  }
}

} // namespace
} // namespace nightsow::planner
