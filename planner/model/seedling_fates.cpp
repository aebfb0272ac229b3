#include "planner/model/seedling_fates.hpp"

#include "planner/model/hazards.hpp"
#include "planner/model/once.hpp"
#include "species-rules/growth.hpp"
#include "species-rules/seedling_limits.hpp"
#include "species-rules/wet_losses.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::FirstRestWay;
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

// Farther than so many K from a limit less than one seedling in 10^12 dies, and nothing is
// reckoned.
constexpr double harmless_over_frost_limit_k = 8.5;
constexpr double harmless_under_heat_limit_k = 17.6;

// Ages between which the limits do not change.
struct Stage {
  int from_age = 0;
  std::size_t older = 0;    ///< 1: the limit for older seedlings holds
  std::size_t hardened = 0; ///< 0 not, 1 half, 2 all
};

constexpr std::array<Stage, 4> stages{
    {{1, 0, 0}, {30, 0, 1}, {species_rules::older_for_frost_days, 1, 1}, {hardened_days, 1, 2}}};

/// Those that came up on one day, followed; 1 to begin with.
struct Seedling {
  Fate fate;
  double alive = 1.0;
  double coldest_over_limit_k = harmless_over_frost_limit_k;
  double hottest_c = 0.0; ///< less what it has hardened
  double frost = 0.0;     ///< hazards met so far
  double heat = 0.0;
  double damping_due = 0.0; ///< of days on which nothing else was new, not yet taken
};

// What each hazard takes of those that still live. Frost and heat go by the worst that was met so
// far, so they take only what is new of it.
void take_what_is_due(Seedling& seedling) {
  const double lost = seedling.alive * loss_of(seedling.damping_due);
  seedling.fate.lost_wet += lost;
  seedling.alive -= lost;
  seedling.damping_due = 0.0;
}

/// A day of a seedling's life, or many days at once.
struct Stretch {
  double damping = 0.0; ///< hazard
  double coldest_over_limit_k = 0.0;
  double hottest_c = 0.0; ///< less what it has hardened
};

// The hazards of frost and heat are asked for only where there is worse than was met so far.
template <class Frost, class Heat>
void live_through(const Stretch& stretch,
                  Frost frost_hazard,
                  Heat heat_hazard,
                  Seedling& seedling) {
  const bool colder = stretch.coldest_over_limit_k < seedling.coldest_over_limit_k;
  const bool hotter = stretch.hottest_c > seedling.hottest_c;
  if (!colder && !hotter) {
    seedling.damping_due += stretch.damping;
    return;
  }
  take_what_is_due(seedling);
  double frost = 0.0;
  double heat = 0.0;
  if (colder) {
    seedling.coldest_over_limit_k = stretch.coldest_over_limit_k;
    const double met = frost_hazard();
    frost = met - std::exchange(seedling.frost, met);
  }
  if (hotter) {
    seedling.hottest_c = stretch.hottest_c;
    const double met = heat_hazard();
    heat = met - std::exchange(seedling.heat, met);
  }
  const double all = stretch.damping + frost + heat;
  const double lost = seedling.alive * loss_of(all);
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

// Evergreens meet what the hot season takes day by day, and annuals have flowered by then.
double kept_through(FirstRestWay way, double kept_through_rest) {
  const bool rests = way == FirstRestWay::dry || way == FirstRestWay::barely_moist;
  return rests ? kept_through_rest : 1.0;
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
  if (seed.first_rest == FirstRestWay::none) {
    return {ends, false};
  }
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
      kept_through_rest_(kept_through(seed.first_rest, kept_through_rest)),
      damping_off_(std::move(damping_off)), damping_sums_(sums(damping_off_)),
      growth_sums_(
          sums(seed.growth == Growth::summer ? course.summer_growth : course.winter_growth)),
      coldest_to_come_c_(
          to_come(course.coldest_c, rest.day, [](double a, double b) { return std::min(a, b); })),
      hottest_to_come_c_(
          to_come(course.hottest_c, rest.day, [](double a, double b) { return std::max(a, b); })),
      rest_sums_(sums(course.rest_rate)), frost_limits_c_{seed.frost_limit_c,
                                                          seed.older_frost_limit_c},
      fates_(at(course.days())) {
  const std::vector<double> unknown(at(rest.day), std::numeric_limits<double>::quiet_NaN());
  frost_.fill(unknown);
  heat_.fill(unknown);
}

const Fate& SeedlingFates::of(int emerged) {
  std::optional<Fate>& fate = fates_[at(emerged)];
  if (!fate) {
    fate = fate_of(emerged);
  }
  return *fate;
}

int SeedlingFates::rest_of(int emerged) const {
  if (seed_.start != Start::cool || seed_.growth != Growth::winter ||
      seed_.first_rest == FirstRestWay::none) {
    return rest_;
  }
  const int limb = std::min(season_.limb_begins, rest_);
  constexpr double rounding = 1e-6;
  if (between(rest_sums_, emerged, limb - 1) < seed_.rest_sum - rounding) {
    return rest_;
  }
  double sum = 0.0;
  for (int day = emerged; day < limb; ++day) {
    sum += course_->rest_rate[at(day)];
    if (sum >= seed_.rest_sum) {
      return day;
    }
  }
  return rest_;
}

double SeedlingFates::frost_on(int day, std::size_t older) {
  return once(frost_[older][at(day)], [&] {
    return hazard_of(
        species_rules::frost_dead_share(course_->coldest_c[at(day)], frost_limits_c_[older]));
  });
}

double SeedlingFates::heat_on(int day, std::size_t hardened, double hardened_k) {
  return once(heat_[hardened][at(day)], [&] {
    return hazard_of(species_rules::heat_dead_share(course_->hottest_c[at(day)] - hardened_k,
                                                    seed_.heat_limit_c));
  });
}

// Day by day until it hardens no further; of the rest of the season only the worst counts, which is
// known beforehand.
Fate SeedlingFates::raised(int emerged, int rest, double& alive) {
  static const std::array<double, hardened_days> relief = relief_table();
  Seedling seedling;
  seedling.hottest_c = seed_.heat_limit_c - harmless_under_heat_limit_k;
  const int hard = rest == rest_ ? std::min(rest, emerged + hardened_days) : rest;
  for (std::size_t i = 0; i < stages.size(); ++i) {
    const Stage& stage = stages[i];
    const int ends =
        i + 1 < stages.size() ? std::min(hard, emerged + stages[i + 1].from_age) : hard;
    const double hardened_k = species_rules::heat_hardening_k(stage.from_age);
    for (int day = emerged + stage.from_age; day < ends; ++day) {
      const int age = std::min(day - emerged, hardened_days);
      live_through(
          {damping_off_[at(day)] * relief[at(age - 1)],
           course_->coldest_c[at(day)] - frost_limits_c_[stage.older],
           course_->hottest_c[at(day)] - hardened_k},
          [&] { return frost_on(day, stage.older); },
          [&] { return heat_on(day, stage.hardened, hardened_k); },
          seedling);
    }
  }
  if (hard < rest) {
    const double hottest_c =
        hottest_to_come_c_[at(hard)] - species_rules::heat_hardening_k(hardened_days);
    const double limit_c = seed_.older_frost_limit_c;
    live_through(
        {relief.back() * between(damping_sums_, hard, rest - 1),
         coldest_to_come_c_[at(hard)] - limit_c,
         hottest_c},
        [&] {
          return hazard_of(species_rules::frost_dead_share(coldest_to_come_c_[at(hard)], limit_c));
        },
        [&] { return hazard_of(species_rules::heat_dead_share(hottest_c, seed_.heat_limit_c)); },
        seedling);
  }
  take_what_is_due(seedling);
  alive = seedling.alive;
  return seedling.fate;
}

Fate SeedlingFates::fate_of(int emerged) {
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
