#include "planner/model/establishment.hpp"
#include "tests/support/even_course.hpp"
#include "tests/support/numbers.hpp"

#include <gtest/gtest.h>

#include <cstddef>
#include <vector>

// What must hold of release whatever the nights: seed at 15 °C all the time, nights made up.
namespace nightsow::planner {
namespace {

using species_rules::SeedParameters;
using species_rules::Start;
using support::Numbers;

constexpr int days = 160;
constexpr SeasonDays season{0, 20, 100, days};
// Steps of release under 0.0005 are put to the next day.
constexpr double put_off = 0.001;

SeedParameters waiting_seed(Start start, double limit_c) {
  SeedParameters seed;
  seed.start = start;
  seed.release = species_rules::ReleaseLimit{limit_c, 2.5, 0.15};
  seed.thermal_time_c_d = 100.0;
  seed.thermal_time_spread = 0.35;
  seed.rot_factor = 0.0;
  seed.rest_sum = 1e9;
  return seed;
}

// From 20 °C down to 8, up and down by some kelvin.
std::vector<double> made_up_nights(Numbers& numbers) {
  std::vector<double> nights;
  for (int day = 0; day < days; ++day) {
    nights.push_back(20.0 - 12.0 * day / days + 0.1 * (numbers.upto(80) - 40));
  }
  return nights;
}

/// By the end of each day.
struct SoFar {
  std::vector<double> released; ///< of the seeds sown
  std::vector<double> up;
};

SoFar so_far(const std::vector<double>& nights, const SeedParameters& seed, int water) {
  SeedCourse course = support::even_course(days);
  course.night_c = nights;
  SeedSeason of_seed{course, seed, {}, season};
  SoFar result;
  for (int day = water; day < days; ++day) {
    const SeedsOnDay seeds = of_seed.on_day(water, {}, day);
    result.released.push_back(1.0 - seeds.nights_too_warm);
    result.up.push_back(seeds.up_so_far);
  }
  return result;
}

void expect_no_earlier(const SoFar& one, const SoFar& than) {
  for (std::size_t i = 0; i < one.released.size(); ++i) {
    ASSERT_LE(one.released[i], than.released[i] + put_off) << "day " << i << " from first water";
    ASSERT_LE(one.up[i], than.up[i] + put_off) << "day " << i << " from first water";
  }
}

TEST(Release, WarmerNightsAfterFirstWaterNeverReleaseCoolStartersEarlierNorHotOnesLater) {
  for (unsigned example = 1; example <= 40; ++example) {
    Numbers numbers{example};
    const int water = numbers.upto(60);
    const std::vector<double> nights = made_up_nights(numbers);
    std::vector<double> warmer = nights;
    for (std::size_t day = static_cast<std::size_t>(water); day < warmer.size(); ++day) {
      warmer[day] += 0.1 * numbers.upto(numbers.upto(3) == 0 ? 60 : 10);
    }
    SCOPED_TRACE(example);
    const SeedParameters cool = waiting_seed(Start::cool, 13.0);
    expect_no_earlier(so_far(warmer, cool, water), so_far(nights, cool, water));
    const SeedParameters hot = waiting_seed(Start::hot, 17.0);
    expect_no_earlier(so_far(nights, hot, water), so_far(warmer, hot, water));
  }
}

TEST(Release, AHigherLimitNeverDelaysCoolStartersNorHastensHotOnes) {
  for (unsigned example = 1; example <= 40; ++example) {
    Numbers numbers{example};
    const int water = numbers.upto(60);
    const std::vector<double> nights = made_up_nights(numbers);
    const double limit_c = 10.0 + 0.1 * numbers.upto(80);
    const double higher_c = limit_c + 0.1 * numbers.upto(30);
    SCOPED_TRACE(example);
    expect_no_earlier(so_far(nights, waiting_seed(Start::cool, limit_c), water),
                      so_far(nights, waiting_seed(Start::cool, higher_c), water));
    expect_no_earlier(so_far(nights, waiting_seed(Start::hot, higher_c), water),
                      so_far(nights, waiting_seed(Start::hot, limit_c), water));
  }
}

} // namespace
} // namespace nightsow::planner
