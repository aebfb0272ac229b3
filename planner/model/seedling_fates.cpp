#include "planner/model/seedling_fates.hpp"

#include "planner/model/hazards.hpp"
#include "species-rules/growth.hpp"
#include "species-rules/seedling_limits.hpp"
#include "species-rules/wet_losses.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace nightsow::planner {

namespace {

using species_rules::Growth;
using species_rules::SeedParameters;
using species_rules::Start;

constexpr int hardened_days = 91; // from this age on a seedling hardens no further

std::size_t at(int day) {
  return static_cast<std::size_t>(day);
}

// By age in days, up to which it still changes.
std::array<double, hardened_days> relief_table() {
  std::array<double, hardened_days> relief{};
  for (int age = 0; age < hardened_days; ++age) {
    relief.at(at(age)) = species_rules::damping_off_relief(age);
  }
  return relief;
}

/// A day of a seedling's life, or many days at once.
struct Stretch {
  bool older = false; ///< by its age the limit for older seedlings holds
  double coldest_c = 0.0;
  double hottest_c = 0.0; ///< less what it has hardened
  double damping = 0.0;   ///< hazard
};

/// Those that came up on one day, followed; 1 to begin with.
struct Seedling {
  Fate fate;
  double alive = 1.0;
  double coldest_over_limit_k = 1e9;
  double hottest_c = -1e9;
  double frost = 0.0; ///< hazards met so far
  double heat = 0.0;
};

// What each hazard takes of those that still live. Frost and heat go by the worst that was met so
// far, so they take only what is new of it.
void live_through(const Stretch& stretch, const SeedParameters& seed, Seedling& seedling) {
  const double limit_c = stretch.older ? seed.older_frost_limit_c : seed.frost_limit_c;
  double frost = 0.0;
  double heat = 0.0;
  if (stretch.coldest_c - limit_c < seedling.coldest_over_limit_k) {
    seedling.coldest_over_limit_k = stretch.coldest_c - limit_c;
    frost = hazard_of(species_rules::frost_dead_share(stretch.coldest_c, limit_c)) - seedling.frost;
  }
  if (stretch.hottest_c > seedling.hottest_c) {
    seedling.hottest_c = stretch.hottest_c;
    heat = hazard_of(species_rules::heat_dead_share(stretch.hottest_c, seed.heat_limit_c)) -
           seedling.heat;
  }
  seedling.frost += frost;
  seedling.heat += heat;
  const double all = stretch.damping + frost + heat;
  const double lost = seedling.alive * -std::expm1(-all);
  seedling.fate.lost_wet += part_of(lost, stretch.damping, all);
  seedling.fate.frost += part_of(lost, frost, all);
  seedling.fate.heat += part_of(lost, heat, all);
  seedling.alive -= lost;
}

// The worst from each day to the rest.
struct ToCome {
  std::vector<double> coldest_c;
  std::vector<double> hottest_c;
};

ToCome to_come(const SeedCourse& course, int rest) {
  ToCome worst{{course.coldest_c.begin(), course.coldest_c.begin() + rest},
               {course.hottest_c.begin(), course.hottest_c.begin() + rest}};
  for (int day = rest - 2; day >= 0; --day) {
    double& coldest_c = worst.coldest_c[at(day)];
    double& hottest_c = worst.hottest_c[at(day)];
    coldest_c = std::min(coldest_c, worst.coldest_c[at(day + 1)]);
    hottest_c = std::max(hottest_c, worst.hottest_c[at(day + 1)]);
  }
  return worst;
}

std::vector<double> sums(const std::vector<double>& days) {
  std::vector<double> result;
  result.reserve(days.size());
  double sum = 0.0;
  for (const double day : days) {
    sum += day;
    result.push_back(sum);
  }
  return result;
}

/// All that the seedlings of one course have in common.
struct Nursery {
  const SeedCourse& course;
  const SeedParameters& seed;
  const std::vector<double>& damping_off;
  int rest = 0;
  ToCome worst;
  std::vector<double> damping_sums;
  std::vector<double> growth_sums;
};

// Day by day until it hardens no further; of the rest of the season only the worst counts, which is
// known beforehand.
Seedling raised(const Nursery& nursery, int emerged, int rest) {
  static const std::array<double, hardened_days> relief = relief_table();
  Seedling seedling;
  const int hard = rest == nursery.rest ? std::min(rest, emerged + hardened_days) : rest;
  for (int day = emerged + 1; day < hard; ++day) {
    const int age = day - emerged;
    live_through({age >= species_rules::older_for_frost_days,
                  nursery.course.coldest_c[at(day)],
                  nursery.course.hottest_c[at(day)] - species_rules::heat_hardening_k(age),
                  nursery.damping_off[at(day)] * relief.at(at(std::min(age, hardened_days) - 1))},
                 nursery.seed,
                 seedling);
  }
  if (hard < rest) {
    live_through(
        {true,
         nursery.worst.coldest_c[at(hard)],
         nursery.worst.hottest_c[at(hard)] - species_rules::heat_hardening_k(hardened_days),
         relief.back() * between(nursery.damping_sums, hard, rest - 1)},
        nursery.seed,
        seedling);
  }
  return seedling;
}

int rest_of(const Nursery& nursery, const SeasonDays& season, int emerged) {
  const SeedParameters& seed = nursery.seed;
  if (seed.start != Start::cool || seed.growth != Growth::winter) {
    return nursery.rest;
  }
  double sum = 0.0;
  for (int day = emerged; day < std::min(season.limb_begins, nursery.rest); ++day) {
    sum += nursery.course.rest_rate[at(day)];
    if (sum >= seed.rest_sum) {
      return day;
    }
  }
  return nursery.rest;
}

Fate fate_of(const Nursery& nursery, int emerged, int rest, double kept_through_rest) {
  if (emerged >= rest) {
    return {};
  }
  Seedling seedling = raised(nursery, emerged, rest);
  const double large_enough = species_rules::alive_after_rest(
      between(nursery.growth_sums, emerged + 1, rest - 1), nursery.seed.growth_needed_days, 1.0);
  seedling.fate.too_small = seedling.alive * (1.0 - large_enough);
  seedling.fate.rest = seedling.alive * large_enough * (1.0 - kept_through_rest);
  seedling.fate.plants = seedling.alive * large_enough * kept_through_rest;
  return seedling.fate;
}

} // namespace

SeasonDays season_days(const climate::Season& season, Date first) {
  return {days_between(first, season.hottest),
          days_between(first, season.limb_begins),
          days_between(first, season.coldest),
          days_between(first, season.next_hottest)};
}

RestDay rest_day(const SeedCourse& course, const SeedParameters& seed, const SeasonDays& season) {
  const int ends = std::min(season.ends, course.days());
  if (seed.growth == Growth::summer) {
    for (int day = std::max(0, season.hottest); day < ends; ++day) {
      if (course.seven_day_mean_c[at(day)] <= species_rules::cool_rest_c) {
        return {day, true};
      }
    }
    return {ends, false};
  }
  double sum = 0.0;
  for (int day = std::max(0, season.coldest); day < ends; ++day) {
    sum += course.rest_rate[at(day)];
    if (sum >= seed.rest_sum) {
      return {day, true};
    }
  }
  return {ends, false};
}

std::vector<Fate> seedling_fates(const SeedCourse& course,
                                 const SeedParameters& seed,
                                 const SeasonDays& season,
                                 const RestDay& rest,
                                 const Nursing& nursing) {
  const bool summer = seed.growth == Growth::summer;
  const Nursery nursery{course,
                        seed,
                        nursing.damping_off,
                        rest.day,
                        to_come(course, rest.day),
                        sums(nursing.damping_off),
                        sums(summer ? course.summer_growth : course.winter_growth)};
  std::vector<Fate> fates;
  fates.reserve(at(course.days()));
  for (int day = 0; day < course.days(); ++day) {
    fates.push_back(
        fate_of(nursery, day, rest_of(nursery, season, day), nursing.kept_through_rest));
  }
  return fates;
}

} // namespace nightsow::planner
