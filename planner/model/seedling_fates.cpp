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
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

std::size_t at(int day) {
  return static_cast<std::size_t>(day);
}

/// What is left of damping off, by age in days up to which it still changes.
struct Relief {
  std::array<double, hardened_days> by_age{};
  int changes_to = 0; ///< from this age on it is that of all older ones
};

Relief relief_table() {
  Relief relief;
  for (int age = 0; age < hardened_days; ++age) {
    relief.by_age.at(at(age)) = species_rules::damping_off_relief(age);
  }
  const auto* last = std::find_if(relief.by_age.begin(), relief.by_age.end(), [&](double left) {
    return left == relief.by_age.back();
  });
  relief.changes_to = static_cast<int>(last - relief.by_age.begin());
  return relief;
}

const Relief& relief() {
  static const Relief table = relief_table();
  return table;
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

/// Ages between which one limit holds, both included.
struct Ages {
  int from = 0;
  int to = 0;
};

constexpr int any_age = std::numeric_limits<int>::max() / 2;
constexpr std::array<Ages, 2> frost_ages{
    {{1, species_rules::older_for_frost_days - 1}, {species_rules::older_for_frost_days, any_age}}};
constexpr std::array<Ages, 3> heat_ages{{{1, stages[1].from_age - 1},
                                         {stages[1].from_age, hardened_days - 1},
                                         {hardened_days, any_age}}};

// The first and the last day of the course on which a seedling is of such an age; the last before
// the first where it never is.
std::pair<int, int> days_of(int emerged, int rest, const Ages& ages) {
  return {emerged + ages.from, std::min(emerged + ages.to, rest - 1)};
}

double coldest_between(const FeltDays& felt, int first, int last) {
  return -felt.coldest_less_c.value(felt.coldest_less_c.of(first, last));
}

double hottest_between(const FeltDays& felt, int first, int last) {
  return felt.hottest_c.value(felt.hottest_c.of(first, last));
}

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
                             const FeltDays& felt,
                             const SeedParameters& seed,
                             const SeasonDays& season,
                             const RestDay& rest,
                             std::vector<double> damping_off,
                             double kept_through_rest)
    : course_(&course), seed_(seed), season_(season), rest_(rest.day),
      kept_through_rest_(kept_through(seed.first_rest, kept_through_rest)),
      damping_off_(std::move(damping_off)), damping_sums_(running_sums(damping_off_)), felt_(&felt),
      growth_sums_(seed.growth == Growth::summer ? &felt.summer_growth_sums
                                                 : &felt.winter_growth_sums),
      frost_limits_c_{seed.frost_limit_c, seed.older_frost_limit_c},
      plants_(at(course.days()), unknown) {}

const Fate& SeedlingFates::of(int emerged) {
  if (fates_.empty()) {
    fates_.resize(at(course_->days()));
    const std::vector<double> all_unknown(at(rest_), unknown);
    frost_.fill(all_unknown);
    heat_.fill(all_unknown);
  }
  std::optional<Fate>& fate = fates_[at(emerged)];
  if (!fate) {
    fate = fate_of(emerged);
  }
  return *fate;
}

double SeedlingFates::plants(int emerged) {
  return once(plants_[at(emerged)], [&] { return plants_of(emerged); });
}

int SeedlingFates::rest_of(int emerged) const {
  if (seed_.start != Start::cool || seed_.growth != Growth::winter ||
      seed_.first_rest == FirstRestWay::none) {
    return rest_;
  }
  const int limb = std::min(season_.limb_begins, rest_);
  if (emerged >= limb) {
    return rest_;
  }
  constexpr double rounding = 1e-12;
  const std::vector<double>& sums = felt_->rest_sums;
  const double before = emerged > 0 ? sums[at(emerged - 1)] : 0.0;
  const auto ends = sums.begin() + limb;
  const auto reached =
      std::lower_bound(sums.begin() + emerged, ends, before + seed_.rest_sum - rounding);
  return reached < ends ? static_cast<int>(reached - sums.begin()) : rest_;
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

// Day by day until it hardens no further; of the rest of the season only the worst counts.
Fate SeedlingFates::raised(int emerged, int rest, double& alive) {
  const Relief& left = relief();
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
          {damping_off_[at(day)] * left.by_age[at(age - 1)],
           course_->coldest_c[at(day)] - frost_limits_c_[stage.older],
           course_->hottest_c[at(day)] - hardened_k},
          [&] { return frost_on(day, stage.older); },
          [&] { return heat_on(day, stage.hardened, hardened_k); },
          seedling);
    }
  }
  if (hard < rest) {
    const double coldest_c = coldest_between(*felt_, hard, rest - 1);
    const double hottest_c =
        hottest_between(*felt_, hard, rest - 1) - species_rules::heat_hardening_k(hardened_days);
    const double limit_c = seed_.older_frost_limit_c;
    live_through(
        {left.by_age.back() * between(damping_sums_, hard, rest - 1),
         coldest_c - limit_c,
         hottest_c},
        [&] { return hazard_of(species_rules::frost_dead_share(coldest_c, limit_c)); },
        [&] { return hazard_of(species_rules::heat_dead_share(hottest_c, seed_.heat_limit_c)); },
        seedling);
  }
  take_what_is_due(seedling);
  alive = seedling.alive;
  return seedling.fate;
}

double SeedlingFates::large_enough(int emerged, int rest) const {
  return species_rules::alive_after_rest(
      between(*growth_sums_, emerged + 1, rest - 1), seed_.growth_needed_days, 1.0);
}

// The hazard of all days of a seedling's life.
double SeedlingFates::damping(int emerged, int rest) const {
  const Relief& left = relief();
  const int changes_to = std::min(rest, emerged + 1 + left.changes_to);
  return std::inner_product(damping_off_.begin() + emerged + 1,
                            damping_off_.begin() + changes_to,
                            left.by_age.begin(),
                            left.by_age.back() * between(damping_sums_, changes_to, rest - 1));
}

double SeedlingFates::living_through_frost(int emerged, int rest) const {
  double over_limit_k = harmless_over_frost_limit_k;
  for (std::size_t older = 0; older < frost_limits_c_.size(); ++older) {
    const auto [first, last] = days_of(emerged, rest, frost_ages[older]);
    if (first <= last) {
      over_limit_k =
          std::min(over_limit_k, coldest_between(*felt_, first, last) - frost_limits_c_[older]);
    }
  }
  return over_limit_k < harmless_over_frost_limit_k
             ? 1.0 - species_rules::frost_dead_share(over_limit_k, 0.0)
             : 1.0;
}

double SeedlingFates::living_through_heat(int emerged, int rest) const {
  double under_limit_k = harmless_under_heat_limit_k;
  for (const Ages& ages : heat_ages) {
    const auto [first, last] = days_of(emerged, rest, ages);
    if (first <= last) {
      const double hottest_c =
          hottest_between(*felt_, first, last) - species_rules::heat_hardening_k(ages.from);
      under_limit_k = std::min(under_limit_k, seed_.heat_limit_c - hottest_c);
    }
  }
  return under_limit_k < harmless_under_heat_limit_k
             ? 1.0 - species_rules::heat_dead_share(-under_limit_k, 0.0)
             : 1.0;
}

// Hazards multiply whatever their order.
double SeedlingFates::plants_of(int emerged) const {
  const int rest = rest_of(emerged);
  if (emerged >= rest) {
    return 0.0;
  }
  return std::exp(-damping(emerged, rest)) * living_through_frost(emerged, rest) *
         living_through_heat(emerged, rest) * large_enough(emerged, rest) * kept_through_rest_;
}

Fate SeedlingFates::fate_of(int emerged) {
  const int rest = rest_of(emerged);
  if (emerged >= rest) {
    return {};
  }
  double alive = 1.0;
  Fate fate = raised(emerged, rest, alive);
  const double large = large_enough(emerged, rest);
  fate.too_small = alive * (1.0 - large);
  fate.rest = alive * large * (1.0 - kept_through_rest_);
  fate.plants = alive * large * kept_through_rest_;
  return fate;
}

} // namespace nightsow::planner
