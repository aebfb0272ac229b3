#include "planner/model/establishment.hpp"

#include "planner/model/hazards.hpp"
#include "species-rules/development.hpp"
#include "species-rules/drying.hpp"
#include "species-rules/normal.hpp"
#include "species-rules/release.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>

namespace nightsow::planner {

namespace {

using species_rules::Start;

constexpr int emergence_classes = 5;
constexpr int root_safe_days = 14;       // after emergence a seedling's root is deep enough
constexpr double root_out_share = 0.5;   // of the thermal time
constexpr double least_share = 5e-4;     // less is added to the next day's
constexpr double drying_worth_it = 1e-3; // less of a pause changes no date

std::size_t at(int day) {
  return static_cast<std::size_t>(day);
}

std::array<double, emergence_classes> class_scores() {
  std::array<double, emergence_classes> scores{};
  for (int i = 0; i < emergence_classes; ++i) {
    scores.at(at(i)) = species_rules::normal_quantile((i + 0.5) / emergence_classes);
  }
  return scores;
}

// The hazard of released seed, or of seedlings that are just up, on each day.
std::vector<double> damping_of(const std::vector<double>& mean_c,
                               const species_rules::SeedParameters& seed,
                               const PotCare& care) {
  const double at_best = seed.rot_factor * species_rules::damping_off_at_best(care.mix);
  std::vector<double> hazards;
  hazards.reserve(mean_c.size());
  for (const double day_c : mean_c) {
    hazards.push_back(hazard_of(species_rules::damping_off(day_c, at_best)));
  }
  return hazards;
}

std::vector<double> since_water_mm(const std::vector<double>& a_day_mm,
                                   double factor,
                                   double watering_point_mm) {
  std::vector<double> since;
  since.reserve(a_day_mm.size());
  double gone_mm = 0.0;
  for (const double mm : a_day_mm) {
    gone_mm += mm * factor;
    since.push_back(gone_mm);
    if (gone_mm > watering_point_mm) {
      gone_mm = 0.0;
    }
  }
  return since;
}

double decided_by(std::vector<double> nights, int rank, bool warm) {
  const auto nth = nights.begin() + (rank - 1);
  if (warm) {
    std::nth_element(nights.begin(), nth, nights.end(), std::greater<>{});
  } else {
    std::nth_element(nights.begin(), nth, nights.end());
  }
  return *nth;
}

} // namespace

SeedSeason::SeedSeason(const SeedCourse& course,
                       const species_rules::SeedParameters& seed,
                       const PotCare& care,
                       const SeasonDays& season)
    : course_(&course), seed_(seed), care_(care), rest_(rest_day(course, seed, season)),
      fates_(course,
             seed,
             season,
             rest_,
             damping_of(course.seedling_mean_c, seed, care),
             care.kept_through_rest) {
  sum_hazards();
  sum_progress();
  find_windows();
  passages_.resize(at(rest_.day));
}

void SeedSeason::sum_hazards() {
  const std::vector<double> damping_of_day = damping_of(course_->mean_c, seed_, care_);
  double waiting = 0.0;
  double damping = 0.0;
  double heat = 0.0;
  for (int day = 0; day < course_->days(); ++day) {
    const double mean_c = course_->mean_c[at(day)];
    waiting += hazard_of(species_rules::waiting_loss(mean_c, seed_.wet_loss_per_day));
    damping += damping_of_day[at(day)];
    heat += std::numbers::ln2 * course_->heat_half_lives[at(day)];
    waiting_.push_back(waiting);
    damping_.push_back(damping);
    heat_.push_back(heat);
  }
  const double open = species_rules::evaporation_factor({.grit = care_.grit});
  const double under =
      species_rules::evaporation_factor({.grit = care_.grit, .closed_bag = care_.bag_until_up});
  evaporated_under_mm_ = since_water_mm(course_->evaporation_mm, under, care_.watering_point_mm);
  evaporated_up_mm_ = since_water_mm(course_->evaporation_mm, open, care_.watering_point_mm);
}

void SeedSeason::sum_progress() {
  double progress = 0.0;
  for (int day = 0; day < course_->days(); ++day) {
    double rate = 0.0;
    for (const float hour_c : course_->hours_of(day)) {
      rate += species_rules::thermal_rate(static_cast<double>(hour_c), seed_.cardinal);
    }
    progress += rate / static_cast<double>(climate::SeedLevel::hours_a_day) *
                species_rules::swing_factor(course_->swing_k[at(day)], seed_.swing);
    progress_.push_back(progress);
  }
}

void SeedSeason::find_windows() {
  if (!seed_.release) {
    return;
  }
  const bool warm = seed_.start == Start::hot;
  const auto nights = course_->night_c.begin();
  window_c_.assign(at(course_->days()), 0.0);
  for (int day = seed_.of - 1; day < course_->days(); ++day) {
    window_c_[at(day)] =
        decided_by({nights + (day - seed_.of + 1), nights + day + 1}, seed_.nights, warm);
  }
}

std::optional<double> SeedSeason::deciding_c(int water, int day) const {
  const int so_far = day - water + 1;
  if (so_far >= seed_.of) {
    return window_c_[at(day)];
  }
  const std::optional<int> rank = species_rules::deciding_night(seed_.nights, seed_.of, so_far);
  if (!rank) {
    return std::nullopt;
  }
  const auto nights = course_->night_c.begin();
  return decided_by({nights + water, nights + day + 1}, *rank, seed_.start == Start::hot);
}

double SeedSeason::released(double deciding_c) const {
  return seed_.start == Start::hot ? species_rules::released_by_warmth(deciding_c, *seed_.release)
                                   : species_rules::released_by_cool(deciding_c, *seed_.release);
}

std::vector<SeedSeason::Release> SeedSeason::releases(int water) const {
  if (!seed_.release) {
    return {{water, 1.0}};
  }
  std::vector<Release> list{{water, seed_.release->indifferent_share}};
  double so_far = seed_.release->indifferent_share;
  for (int day = water; day < rest_.day; ++day) {
    const std::optional<double> decides_c = deciding_c(water, day);
    const double share = decides_c ? released(*decides_c) : so_far;
    if (share - so_far > least_share) {
      list.push_back({day, share - so_far});
      so_far = share;
    }
  }
  return list;
}

// The first day on which that much progress has been made since the day of release.
std::optional<int> SeedSeason::emerges(int released, double thermal_time_c_d) const {
  const double wanted = progress_[at(released)] + thermal_time_c_d;
  const auto found = std::lower_bound(progress_.begin() + released + 1, progress_.end(), wanted);
  const auto day = static_cast<int>(found - progress_.begin());
  return day < rest_.day ? std::optional{day} : std::nullopt;
}

double SeedSeason::driest_mm(int from, int emerged) const {
  double driest = 0.0;
  for (int day = from; day <= std::min(emerged + root_safe_days, rest_.day - 1); ++day) {
    driest = std::max(driest,
                      day <= emerged ? evaporated_under_mm_[at(day)] : evaporated_up_mm_[at(day)]);
  }
  return driest;
}

// Where `undone` of the progress was lost to drying before the root was out, all comes that later.
SeedSeason::Passage SeedSeason::passage(int released,
                                        double part,
                                        double needed,
                                        double undone) const {
  Passage passage;
  passage.part = part;
  passage.emerged = emerges(released, needed + undone);
  passage.damping = between(damping_, released + 1, passage.emerged.value_or(rest_.day - 1));
  if (passage.emerged) {
    const int root_out =
        emerges(released, root_out_share * needed + undone).value_or(*passage.emerged);
    passage.drying = hazard_of(
        seed_.dry_loss_share *
        species_rules::dry_share(driest_mm(root_out, *passage.emerged), care_.seed_depth_mm));
  }
  return passage;
}

// Where the pot dries before the root is out, half of the progress made by then is undone.
std::vector<SeedSeason::Passage> SeedSeason::passages_of(int released) const {
  static const std::array<double, emergence_classes> scores = class_scores();
  std::vector<Passage> list;
  for (const double score : scores) {
    const double needed = seed_.thermal_time_c_d * std::exp(seed_.thermal_time_spread * score);
    const auto from = evaporated_under_mm_.begin() + released;
    const auto root_out = evaporated_under_mm_.begin() +
                          emerges(released, root_out_share * needed).value_or(rest_.day - 1);
    const auto driest = std::max_element(from, root_out);
    double dry = driest == root_out ? 0.0 : species_rules::dry_share(*driest, care_.seed_depth_mm);
    if (dry > drying_worth_it) {
      const auto dry_day = static_cast<int>(driest - evaporated_under_mm_.begin());
      list.push_back(passage(released,
                             dry / emergence_classes,
                             needed,
                             0.5 * between(progress_, released + 1, dry_day)));
    } else {
      dry = 0.0;
    }
    list.push_back(passage(released, (1.0 - dry) / emergence_classes, needed, 0.0));
  }
  return list;
}

// From first water to emergence seed dies waiting, of damping off once released, of heat and of
// drying; what is left meets its fate as a seedling.
void SeedSeason::follow(int water, const Release& release, double share, Establishment& result) {
  const double waiting = between(waiting_, water, release.day);
  const double heat_waiting = between(heat_, water, release.day);
  const double lost_waiting = share * -std::expm1(-(waiting + heat_waiting));
  result.losses.lost_wet += part_of(lost_waiting, waiting, waiting + heat_waiting);
  result.losses.heat += part_of(lost_waiting, heat_waiting, waiting + heat_waiting);
  std::vector<Passage>& passages = passages_[at(release.day)];
  if (passages.empty()) {
    passages = passages_of(release.day);
  }
  for (const Passage& passage : passages) {
    const double heat = between(heat_, release.day + 1, passage.emerged.value_or(rest_.day - 1));
    const double all = passage.damping + heat + passage.drying;
    const double begins = (share - lost_waiting) * passage.part;
    const double alive = begins * std::exp(-all);
    result.losses.lost_wet += part_of(begins - alive, passage.damping, all);
    result.losses.heat += part_of(begins - alive, heat, all);
    result.losses.dried += part_of(begins - alive, passage.drying, all);
    if (!passage.emerged) {
      result.losses.too_late += alive;
      continue;
    }
    const Fate& fate = fates_.of(*passage.emerged);
    result.losses.lost_wet += alive * fate.lost_wet;
    result.losses.heat += alive * fate.heat;
    result.losses.frost += alive * fate.frost;
    result.losses.too_late += alive * fate.too_small;
    result.losses.rest += alive * fate.rest;
    result.plants += alive * fate.plants;
    result.seedlings += alive;
    result.up[at(*passage.emerged)] += alive;
  }
}

Establishment SeedSeason::watered_on(int day, const SeedShares& shares) {
  Establishment result;
  result.up.assign(at(course_->days()), 0.0);
  result.losses.dead = 1.0 - shares.alive;
  result.losses.not_ripe = shares.alive * (1.0 - shares.ripe);
  result.losses.deferred = shares.alive * shares.ripe * seed_.deferral_share;
  const double active = shares.alive * shares.ripe * (1.0 - seed_.deferral_share);
  if (day >= rest_.day) {
    result.losses.nights_too_warm = active;
    return result;
  }
  double released = 0.0;
  for (const Release& release : releases(day)) {
    released += release.share;
    follow(day, release, active * release.share, result);
  }
  const double waiting = between(waiting_, day, rest_.day - 1);
  const double heat = between(heat_, day, rest_.day - 1);
  const double left = active * std::max(0.0, 1.0 - released);
  const double alive = left * std::exp(-(waiting + heat));
  result.losses.lost_wet += part_of(left - alive, waiting, waiting + heat);
  result.losses.heat += part_of(left - alive, heat, waiting + heat);
  result.losses.nights_too_warm += alive;
  return result;
}

} // namespace nightsow::planner
