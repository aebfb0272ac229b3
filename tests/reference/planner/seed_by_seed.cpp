#include "tests/reference/planner/seed_by_seed.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <random>
#include <vector>

// Written without a look at the scalars of species-rules: the equations stand here once more, in
// the order in which a seed meets them.
namespace nightsow::planner {

namespace {

using Parameters = species_rules::SeedParameters;
using species_rules::FirstRestWay;
using species_rules::Growth;
using species_rules::Start;
using species_rules::Swing;

enum class End {
  plant,
  dead,
  not_ripe,
  deferred,
  not_released,
  wet,
  dried,
  heat,
  frost,
  late,
  rest
};

class Luck {
public:
  double share() { return share_(engine_); }

  double normal() { return normal_(engine_); }

  bool with(double chance) { return share() < chance; }

private:
  std::mt19937 engine_{12345};
  std::uniform_real_distribution<double> share_{0.0, 1.0};
  std::normal_distribution<double> normal_{0.0, 1.0};
};

double fungus(double c) {
  if (c <= 3.0 || c >= 38.0) {
    return 0.0;
  }
  return (c - 38.0) * (c - 3.0) * (c - 3.0) /
         (25.0 * (25.0 * (c - 28.0) + 10.0 * (31.0 - 2.0 * c)));
}

double progress_of_hour(double c, const Parameters& seed) {
  const auto& [base, best, ceiling] = seed.cardinal;
  if (c <= base || c >= ceiling) {
    return 0.0;
  }
  return (c <= best ? c - base : (best - base) * (ceiling - c) / (ceiling - best)) / 24.0;
}

double swing(double k, Swing need) {
  const double least = need == Swing::needed ? 0.1 : need == Swing::helpful ? 0.6 : 0.85;
  return least + (1.0 - least) / (1.0 + std::exp(-(k - 6.0) / 1.5));
}

/// One seed of the sowing.
class Seed {
public:
  Seed(const SeedCourse& course,
       const Parameters& seed,
       const PotCare& care,
       const SeasonDays& season,
       Luck& luck)
      : course_(course), seed_(seed), care_(care), season_(season), luck_(luck),
        pot_limit_mm_((4.0 + 0.6 * care.seed_depth_mm) * std::exp(0.4 * luck.normal())),
        needs_(seed.thermal_time_c_d * std::exp(seed.thermal_time_spread * luck.normal())) {}

  End sown(int water, const SeedShares& shares) {
    if (!luck_.with(shares.alive)) {
      return End::dead;
    }
    if (!luck_.with(shares.ripe)) {
      return End::not_ripe;
    }
    if (luck_.with(seed_.deferral_share)) {
      return End::deferred;
    }
    return waits(water);
  }

  bool came_up = false;
  int emerged_on = 0; ///< where it came up

private:
  std::size_t on(int day) const { return static_cast<std::size_t>(day); }

  // Days from the coldest one on add up until the rest; summer growers rest with the first cool
  // week after the hottest. Evergreens have no rest.
  int season_rest() const {
    if (seed_.first_rest == FirstRestWay::none) {
      return season_.ends;
    }
    if (seed_.growth == Growth::summer) {
      for (int day = season_.hottest; day < season_.ends; ++day) {
        if (course_.seven_day_mean_c[on(day)] <= 13.0) {
          return day;
        }
      }
      return season_.ends;
    }
    double sum = 0.0;
    for (int day = season_.coldest; day < season_.ends; ++day) {
      sum += course_.rest_rate[on(day)];
      if (sum >= seed_.rest_sum) {
        return day;
      }
    }
    return season_.ends;
  }

  int own_rest(int emerged) const {
    const int rest = season_rest();
    const bool evergreen = seed_.first_rest == FirstRestWay::none;
    if (evergreen || seed_.start != Start::cool || seed_.growth == Growth::summer) {
      return rest;
    }
    double sum = 0.0;
    for (int day = emerged; day < std::min(season_.limb_begins, rest); ++day) {
      sum += course_.rest_rate[on(day)];
      if (sum >= seed_.rest_sum) {
        return day;
      }
    }
    return rest;
  }

  void dry_and_water(int day, bool up) {
    const double grit = care_.grit ? 0.4 : 1.0;
    const double bag = care_.bag_until_up && !up ? 0.1 : 1.0;
    gone_mm_ += course_.evaporation_mm[on(day)] * std::max(0.1, grit * bag);
  }

  void water_by_need() {
    if (gone_mm_ > care_.watering_point_mm) {
      gone_mm_ = 0.0;
    }
  }

  bool killed_by_heat(int day) {
    double half_lives = 0.0;
    for (const float c : course_.hours_of(day)) {
      if (c >= 40.0F) {
        half_lives += 1.0 / (60.0 * std::pow(10.0, -0.18 * (static_cast<double>(c) - 45.0)));
      }
    }
    return luck_.with(1.0 - std::pow(0.5, half_lives));
  }

  bool is_released(int water, int day, double own_limit_c) const {
    const int so_far = day - water + 1;
    if (so_far < 3) {
      return false;
    }
    const int window = std::min(so_far, seed_.of);
    const int rank =
        so_far >= seed_.of
            ? seed_.nights
            : static_cast<int>(std::ceil(static_cast<double>(seed_.nights) * so_far / seed_.of));
    std::vector<double> nights(course_.night_c.begin() + day - window + 1,
                               course_.night_c.begin() + day + 1);
    std::sort(nights.begin(), nights.end());
    if (seed_.start == Start::hot) {
      std::reverse(nights.begin(), nights.end());
      return nights[on(rank - 1)] >= own_limit_c;
    }
    return nights[on(rank - 1)] <= own_limit_c;
  }

  End waits(int water) {
    const int rest = season_rest();
    if (water >= rest) {
      return End::not_released;
    }
    const bool needs_nights = seed_.release && !luck_.with(seed_.release->indifferent_share);
    const double limit_c =
        seed_.release ? seed_.release->limit_c + seed_.release->spread_k * luck_.normal() : 0.0;
    for (int day = water; day < rest; ++day) {
      dry_and_water(day, false);
      const double mean_c = course_.mean_c[on(day)];
      if (luck_.with(seed_.wet_loss_per_day * std::pow(2.0, (mean_c - 20.0) / 10.0))) {
        return End::wet;
      }
      if (killed_by_heat(day)) {
        return End::heat;
      }
      water_by_need();
      if (!needs_nights || is_released(water, day, limit_c)) {
        return sprouts(day, rest);
      }
    }
    return End::not_released;
  }

  // The pot dries once, if at all, in each of the two stages.
  End sprouts(int released, int rest) {
    double done = 0.0;
    bool dried_before_root = false;
    bool dried_after_root = false;
    for (int day = released + 1; day < rest; ++day) {
      dry_and_water(day, false);
      const double at_best = care_.mix == species_rules::MixHygiene::used ? 0.02 : 0.005;
      if (luck_.with(seed_.rot_factor * at_best * fungus(course_.mean_c[on(day)]))) {
        return End::wet;
      }
      if (killed_by_heat(day)) {
        return End::heat;
      }
      double progress = 0.0;
      for (const float c : course_.hours_of(day)) {
        progress += progress_of_hour(static_cast<double>(c), seed_);
      }
      done += progress * swing(course_.swing_k[on(day)], seed_.swing);
      const bool dry = gone_mm_ > pot_limit_mm_;
      if (dry && done < 0.5 * needs_ && !dried_before_root) {
        done *= 0.5;
        dried_before_root = true;
      } else if (dry && done >= 0.5 * needs_ && !dried_after_root) {
        dried_after_root = true;
        if (luck_.with(seed_.dry_loss_share)) {
          return End::dried;
        }
      }
      water_by_need();
      if (done >= needs_) {
        return grows(day, dried_after_root);
      }
    }
    return End::late;
  }

  End grows(int emerged, bool dried_already) {
    emerged_on = emerged;
    const int rest = own_rest(emerged);
    const double frost_k = 1.2 * luck_.normal();
    const double heat_k = 2.5 * luck_.normal();
    double grown = 0.0;
    for (int day = emerged + 1; day < rest; ++day) {
      const int age = day - emerged;
      dry_and_water(day, true);
      if (age <= 14 && gone_mm_ > pot_limit_mm_ && !dried_already) {
        dried_already = true;
        if (luck_.with(seed_.dry_loss_share)) {
          return End::dried;
        }
      }
      water_by_need();
      const double relief = std::max(0.1, std::exp(-(age - 1) / 10.0));
      const double at_best = care_.mix == species_rules::MixHygiene::used ? 0.02 : 0.005;
      came_up = true;
      if (luck_.with(relief * seed_.rot_factor * at_best *
                     fungus(course_.seedling_mean_c[on(day)]))) {
        return End::wet;
      }
      const double frost_limit_c = age < 60 ? seed_.frost_limit_c : seed_.older_frost_limit_c;
      if (course_.coldest_c[on(day)] < frost_limit_c + frost_k) {
        return End::frost;
      }
      const double harder_k = age < 30 ? 0.0 : age <= 90 ? 3.0 : 6.0;
      if (course_.hottest_c[on(day)] > seed_.heat_limit_c + harder_k + heat_k) {
        return End::heat;
      }
      grown += seed_.growth == Growth::summer ? course_.summer_growth[on(day)]
                                              : course_.winter_growth[on(day)];
    }
    if (emerged >= rest) {
      return End::late;
    }
    came_up = true;
    const double own_need = seed_.growth_needed_days * std::exp(0.4 * luck_.normal());
    if (grown < own_need) {
      return End::late;
    }
    const bool rests =
        seed_.first_rest == FirstRestWay::dry || seed_.first_rest == FirstRestWay::barely_moist;
    return !rests || luck_.with(care_.kept_through_rest) ? End::plant : End::rest;
  }

  const SeedCourse& course_;
  const Parameters& seed_;
  const PotCare& care_;
  const SeasonDays& season_;
  Luck& luck_;
  double pot_limit_mm_;
  double needs_;
  double gone_mm_ = 0.0;
};

double& loss_of(End end, Establishment& result) {
  switch (end) {
  case End::dead:
    return result.losses.dead;
  case End::not_ripe:
    return result.losses.not_ripe;
  case End::deferred:
    return result.losses.deferred;
  case End::not_released:
    return result.losses.nights_too_warm;
  case End::wet:
    return result.losses.lost_wet;
  case End::dried:
    return result.losses.dried;
  case End::heat:
    return result.losses.heat;
  case End::frost:
    return result.losses.frost;
  case End::late:
    return result.losses.too_late;
  case End::rest:
    return result.losses.rest;
  case End::plant:
    break;
  }
  return result.plants;
}

} // namespace

Establishment simulated(const SeedCourse& course,
                        const Parameters& seed,
                        const PotCare& care,
                        const SeasonDays& season,
                        int water,
                        const SeedShares& shares,
                        int seeds) {
  Luck luck;
  Establishment result;
  result.up.assign(static_cast<std::size_t>(course.days()), 0.0);
  for (int i = 0; i < seeds; ++i) {
    Seed one{course, seed, care, season, luck};
    loss_of(one.sown(water, shares), result) += 1.0 / seeds;
    if (one.came_up) {
      result.seedlings += 1.0 / seeds;
      result.up[static_cast<std::size_t>(one.emerged_on)] += 1.0 / seeds;
    }
  }
  return result;
}

} // namespace nightsow::planner
