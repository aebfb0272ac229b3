#include "planner/model/night_release.hpp"

#include "tests/support/numbers.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <vector>

namespace nightsow::planner {
namespace {

using species_rules::SeedParameters;
using species_rules::Start;
using Shares = std::vector<double>;

constexpr int days = 120;

SeedParameters waiting_seed(Start start) {
  SeedParameters seed;
  seed.start = start;
  seed.release = species_rules::ReleaseLimit{14.0, 2.5, 0.15};
  seed.nights = 5;
  seed.of = 7;
  return seed;
}

std::vector<double> made_up_nights(unsigned example) {
  support::Numbers numbers{example};
  std::vector<double> nights;
  for (int day = 0; day < days; ++day) {
    nights.push_back(21.0 - 14.0 * day / days + 0.1 * (numbers.upto(80) - 40));
  }
  return nights;
}

// By definition: on each day the deciding one of its last nights, the best day so far.
Shares released_by_day(const std::vector<double>& nights, const SeedParameters& seed, int water) {
  Shares shares;
  double most = seed.release->indifferent_share;
  for (int day = water; day < days; ++day) {
    const int wet = std::min(day - water + 1, seed.of);
    std::vector<double> last(nights.begin() + day - wet + 1, nights.begin() + day + 1);
    std::sort(last.begin(), last.end());
    if (seed.start == Start::hot) {
      std::reverse(last.begin(), last.end());
    }
    if (const auto rank = species_rules::deciding_night(seed.nights, seed.of, wet)) {
      const double night_c = last[static_cast<std::size_t>(*rank - 1)];
      most = std::max(most,
                      seed.start == Start::hot
                          ? species_rules::released_by_warmth(night_c, *seed.release)
                          : species_rules::released_by_cool(night_c, *seed.release));
    }
    shares.push_back(most);
  }
  return shares;
}

TEST(NightRelease, IsThatOfTheBestWindowSoFarOnEveryDay) {
  constexpr double put_off = 5e-4 + 1e-9; // smaller steps are put to the next day
  for (unsigned example = 1; example <= 10; ++example) {
    for (const Start start : {Start::cool, Start::hot}) {
      const std::vector<double> nights = made_up_nights(example);
      const SeedParameters seed = waiting_seed(start);
      NightRelease release{nights, seed};
      for (int water = 0; water < days; ++water) {
        const Shares expected = released_by_day(nights, seed, water);
        Shares steps(expected.size(), 0.0);
        for (const NightRelease::Step& step : release.all(water).steps) {
          steps.at(static_cast<std::size_t>(step.day - water)) += step.share;
        }
        double so_far = 0.0;
        for (std::size_t day = 0; day < expected.size(); ++day) {
          so_far += steps[day];
          ASSERT_NEAR(so_far, expected[day], put_off) << "first water " << water << ", day " << day;
        }
      }
    }
  }
}

TEST(NightRelease, SeedWithoutALimitIsReleasedByWater) {
  SeedParameters seed = waiting_seed(Start::cool);
  seed.release.reset();
  NightRelease release{made_up_nights(1), seed};
  const NightRelease::Steps& steps = release.all(7);
  ASSERT_EQ(steps.steps.size(), 1U);
  EXPECT_EQ(steps.steps.front().day, 7);
  EXPECT_EQ(steps.share, 1.0);
}

TEST(NightRelease, AfterAWindowOnlyABetterOneReleasesMore) {
  std::vector<double> nights(30, 20.0);
  std::fill(nights.begin() + 10, nights.begin() + 15, 12.0);
  NightRelease release{nights, waiting_seed(Start::cool)};
  const auto first = release.next(6, 0.2);
  ASSERT_TRUE(first);
  EXPECT_EQ(*first, 14);
  EXPECT_FALSE(release.next(*first + 1, release.by_window(*first)));
}

} // namespace
} // namespace nightsow::planner
