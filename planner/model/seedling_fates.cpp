#include "planner/model/seedling_fates.hpp"

#include "planner/model/hazards.hpp"
#include "species-rules/growth.hpp"
#include "species-rules/seedling_limits.hpp"
#include "species-rules/wet_losses.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <utility>

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
  double damping_due = 0.0; ///< of days on which nothing else was new, not yet taken
};

// What each hazard takes of those that still live. Frost and heat go by the worst that was met so
// far, so they take only what is new of it.
void take_what_is_due(Seedling& seedling) {
  const double lost = seedling.alive * -std::expm1(-seedling.damping_due);
  seedling.fate.lost_wet += lost;
  seedling.alive -= lost;
  seedling.damping_due = 0.0;
}

void live_through(const Stretch& stretch, const SeedParameters& seed, Seedling& seedling) {
  const double limit_c = stretch.older ? seed.older_frost_limit_c : seed.frost_limit_c;
  double frost = 0.0;
  double heat = 0.0;
  const bool colder = stretch.coldest_c - limit_c < seedling.coldest_over_limit_k;
  const bool hotter = stretch.hottest_c > seedling.hottest_c;
  if (!colder && !hotter) {
    seedling.damping_due += stretch.damping;
    return;
  }
  take_what_is_due(seedling);
  if (colder) {
    seedling.coldest_over_limit_k = stretch.coldest_c - limit_c;
    frost = hazard_of(species_rules::frost_dead_share(stretch.coldest_c, limit_c)) - seedling.frost;
  }
  if (hotter) {
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

std::vector<double> sums(const std::vector<double>& days) {
  std::vector<double> result(days.size());
  std::partial_sum(days.begin(), days.end(), result.begin());
  return result;
}

// The worst from each day to the rest.
template <class Worse>
std::vector<double> to_come(const std::vector<double>& days, int rest, Worse worse) {
  std::vector<double> worst(days.begin(), days.begin() + rest);
  for (int day = rest - 2; day >= 0; --day) {
    worst[at(day)] = worse(worst[at(day)], worst[at(day + 1)]);
  }
  return worst;
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

SeedlingFates::SeedlingFates(const SeedCourse& course,
                             const SeedParameters& seed,
                             const SeasonDays& season,
                             const RestDay& rest,
                             std::vector<double> damping_off,
                             double kept_through_rest)
    : course_(&course), seed_(seed), season_(season), rest_(rest.day),
      kept_through_rest_(kept_through_rest), damping_off_(std::move(damping_off)),
      damping_sums_(sums(damping_off_)),
      growth_sums_(
          sums(seed.growth == Growth::summer ? course.summer_growth : course.winter_growth)),
      coldest_to_come_c_(
          to_come(course.coldest_c, rest.day, [](double a, double b) { return std::min(a, b); })),
      hottest_to_come_c_(
          to_come(course.hottest_c, rest.day, [](double a, double b) { return std::max(a, b); })),
      fates_(at(course.days())) {}

const Fate& SeedlingFates::of(int emerged) {
  std::optional<Fate>& fate = fates_[at(emerged)];
  if (!fate) {
    fate = fate_of(emerged);
  }
  return *fate;
}

int SeedlingFates::rest_of(int emerged) const {
  if (seed_.start != Start::cool || seed_.growth != Growth::winter) {
    return rest_;
  }
  double sum = 0.0;
  for (int day = emerged; day < std::min(season_.limb_begins, rest_); ++day) {
    sum += course_->rest_rate[at(day)];
    if (sum >= seed_.rest_sum) {
      return day;
    }
  }
  return rest_;
}

// Day by day until it hardens no further; of the rest of the season only the worst counts, which is
// known beforehand.
Fate SeedlingFates::raised(int emerged, int rest, double& alive) const {
  static const std::array<double, hardened_days> relief = relief_table();
  Seedling seedling;
  const int hard = rest == rest_ ? std::min(rest, emerged + hardened_days) : rest;
  for (int day = emerged + 1; day < hard; ++day) {
    const int age = day - emerged;
    live_through({age >= species_rules::older_for_frost_days,
                  course_->coldest_c[at(day)],
                  course_->hottest_c[at(day)] - species_rules::heat_hardening_k(age),
                  damping_off_[at(day)] * relief.at(at(std::min(age, hardened_days) - 1))},
                 seed_,
                 seedling);
  }
  if (hard < rest) {
    live_through({true,
                  coldest_to_come_c_[at(hard)],
                  hottest_to_come_c_[at(hard)] - species_rules::heat_hardening_k(hardened_days),
                  relief.back() * between(damping_sums_, hard, rest - 1)},
                 seed_,
                 seedling);
  }
  take_what_is_due(seedling);
  alive = seedling.alive;
  return seedling.fate;
}

Fate SeedlingFates::fate_of(int emerged) const {
  const int rest = rest_of(emerged);
  if (emerged >= rest) {
    return {};
  }
  double alive = 1.0;
  Fate fate = raised(emerged, rest, alive);
  const double large_enough = species_rules::alive_after_rest(
      between(growth_sums_, emerged + 1, rest - 1), seed_.growth_needed_days, 1.0);
  fate.too_small = alive * (1.0 - large_enough);
  fate.rest = alive * large_enough * (1.0 - kept_through_rest_);
  fate.plants = alive * large_enough * kept_through_rest_;
  return fate;
}

} // namespace nightsow::planner
