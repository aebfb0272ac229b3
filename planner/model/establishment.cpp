#include "planner/model/establishment.hpp"

#include "planner/model/hazards.hpp"
#include "planner/model/once.hpp"
#include "species-rules/development.hpp"
#include "species-rules/drying.hpp"
#include "species-rules/normal.hpp"
#include "species-rules/release.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>

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

constexpr int stride = 8; // days at a time
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

// The hazard of released seed, or of seedlings that are just up, on the first days.
std::vector<double> damping_of(const std::vector<double>& fungus,
                               const species_rules::SeedParameters& seed,
                               const PotCare& care,
                               int days) {
  const double at_best = seed.rot_factor * species_rules::damping_off_at_best(care.mix);
  std::vector<double> hazards(at(days));
  for (std::size_t day = 0; day < hazards.size(); ++day) {
    hazards[day] = hazard_of(std::min(1.0, at_best * fungus[day]));
  }
  return hazards;
}

const FeltDays& felt_of(const SeedCourse& course, const FeltDays& own) {
  return own.fungus.empty() ? course.felt : own;
}

std::vector<double> since_water_mm(const std::vector<double>& a_day_mm,
                                   double factor,
                                   double watering_point_mm,
                                   int days) {
  std::vector<double> since(at(days));
  double gone_mm = 0.0;
  for (std::size_t day = 0; day < since.size(); ++day) {
    gone_mm += a_day_mm[day] * factor;
    since[day] = gone_mm;
    if (gone_mm > watering_point_mm) {
      gone_mm = 0.0;
    }
  }
  return since;
}

void put_in_order(double value, std::vector<double>& ordered) {
  ordered.insert(std::upper_bound(ordered.begin(), ordered.end(), value), value);
}

void take_out(double value, std::vector<double>& ordered) {
  ordered.erase(std::lower_bound(ordered.begin(), ordered.end(), value));
}

} // namespace

SeedSeason::SeedSeason(const SeedCourse& course,
                       const species_rules::SeedParameters& seed,
                       const PotCare& care,
                       const SeasonDays& season)
    : SeedSeason(
          course, course.felt.fungus.empty() ? felt_days(course) : FeltDays{}, seed, care, season) {
}

SeedSeason::SeedSeason(const SeedCourse& course,
                       const FeltDays& own,
                       const species_rules::SeedParameters& seed,
                       const PotCare& care,
                       const SeasonDays& season)
    : course_(&course), seed_(seed), care_(care), rest_(rest_day(course, seed, season)),
      fates_(course,
             seed,
             season,
             rest_,
             damping_of(felt_of(course, own).seedling_fungus, seed, care, rest_.day),
             care.kept_through_rest),
      outcomes_(at(rest_.day)) {
  static const std::array<double, emergence_classes> scores = class_scores();
  for (const double score : scores) {
    needed_c_d_.push_back(seed_.thermal_time_c_d * std::exp(seed_.thermal_time_spread * score));
  }
  sum_hazards(felt_of(course, own));
  sum_progress(felt_of(course, own));
  find_windows();
  find_driest();
}

void SeedSeason::sum_hazards(const FeltDays& felt) {
  damping_ = damping_of(felt.fungus, seed_, care_, rest_.day);
  std::partial_sum(damping_.begin(), damping_.end(), damping_.begin());
  waiting_.resize(at(rest_.day));
  heat_.resize(at(rest_.day));
  double waiting = 0.0;
  double heat = 0.0;
  for (std::size_t day = 0; day < waiting_.size(); ++day) {
    waiting += hazard_of(std::min(1.0, seed_.wet_loss_per_day * felt.wet_ageing[day]));
    heat += std::numbers::ln2 * course_->heat_half_lives[day];
    waiting_[day] = waiting;
    heat_[day] = heat;
  }
}

// Most days stay on one side of the optimum: then the mean of the rates is the rate of the mean.
void SeedSeason::sum_progress(const FeltDays& felt) {
  const species_rules::CardinalTemperatures& cardinal = seed_.cardinal;
  progress_.resize(at(rest_.day));
  double progress = 0.0;
  for (int day = 0; day < rest_.day; ++day) {
    const double coldest_c = felt.coldest_hour_c[at(day)];
    const double hottest_c = felt.hottest_hour_c[at(day)];
    double rate = 0.0;
    const bool rising = coldest_c >= cardinal.base_c && hottest_c <= cardinal.optimum_c;
    const bool falling = coldest_c >= cardinal.optimum_c && hottest_c <= cardinal.ceiling_c;
    if (rising || falling) {
      rate = species_rules::thermal_rate(course_->mean_c[at(day)], cardinal);
    } else if (hottest_c > cardinal.base_c && coldest_c < cardinal.ceiling_c) {
      for (const float hour_c : course_->hours_of(day)) {
        rate += species_rules::thermal_rate(static_cast<double>(hour_c), cardinal);
      }
      rate /= static_cast<double>(climate::SeedLevel::hours_a_day);
    }
    progress += rate * species_rules::swing_factor_of(felt.swing[at(day)], seed_.swing);
    progress_[at(day)] = progress;
  }
}

void SeedSeason::find_windows() {
  if (!seed_.release) {
    return;
  }
  const double sign = seed_.start == Start::hot ? -1.0 : 1.0;
  coolness_.resize(at(rest_.day));
  for (std::size_t day = 0; day < coolness_.size(); ++day) {
    coolness_[day] = sign * course_->night_c[day];
  }
  window_.assign(coolness_.size(), 0.0);
  released_.assign(coolness_.size(), unknown);
  std::vector<double> ordered;
  for (int day = 0; day < rest_.day; ++day) {
    put_in_order(coolness_[at(day)], ordered);
    if (day >= seed_.of) {
      take_out(coolness_[at(day - seed_.of)], ordered);
    }
    if (day + 1 >= seed_.of) {
      window_[at(day)] = ordered[at(seed_.nights - 1)];
    }
  }
  next_better_.resize(coolness_.size());
  for (int day = rest_.day - 1; day >= 0; --day) {
    int next = day + 1;
    while (next < rest_.day && window_[at(next)] >= window_[at(day)]) {
      next = next_better_[at(next)];
    }
    next_better_[at(day)] = next;
  }
}

void SeedSeason::find_driest() {
  const double open = species_rules::evaporation_factor({.grit = care_.grit});
  const double under =
      species_rules::evaporation_factor({.grit = care_.grit, .closed_bag = care_.bag_until_up});
  const auto driest = [&](double factor) {
    return RangeMaximum{
        since_water_mm(course_->evaporation_mm, factor, care_.watering_point_mm, rest_.day)};
  };
  driest_under_ = driest(under);
  driest_up_ = driest(open);
  dry_under_.assign(at(rest_.day), unknown);
  dry_up_.assign(at(rest_.day), unknown);
}

double SeedSeason::released(double coolness) const {
  return seed_.start == Start::hot ? species_rules::released_by_warmth(-coolness, *seed_.release)
                                   : species_rules::released_by_cool(coolness, *seed_.release);
}

// From day to day only a better window releases more. While fewer nights than a window's are wet,
// a smaller number of them decides.
const std::vector<SeedSeason::Release>& SeedSeason::releases(int water) {
  releases_.clear();
  if (!seed_.release) {
    releases_.push_back({water, 1.0});
    return releases_;
  }
  double so_far = seed_.release->indifferent_share;
  releases_.push_back({water, so_far});
  const auto add = [&](int day, double share) {
    if (share - so_far > least_share) {
      releases_.push_back({day, share - so_far});
      so_far = share;
    }
  };
  const int whole_window = water + seed_.of - 1;
  first_nights_.clear();
  for (int day = water; day < std::min(whole_window, rest_.day); ++day) {
    put_in_order(coolness_[at(day)], first_nights_);
    const std::optional<int> rank =
        species_rules::deciding_night(seed_.nights, seed_.of, day - water + 1);
    if (rank) {
      add(day, released(first_nights_[at(*rank - 1)]));
    }
  }
  for (int day = whole_window; day < rest_.day && so_far + least_share < 1.0;
       day = next_better_[at(day)]) {
    add(day, once(released_[at(day)], [&] { return released(window_[at(day)]); }));
  }
  return releases_;
}

// The first day on which that much progress has been made since the day of release. It is mostly
// near the day before which it cannot be, so that walking there is quicker than halving.
std::optional<int> SeedSeason::emerges(int released,
                                       double thermal_time_c_d,
                                       int not_before) const {
  const double wanted = progress_[at(released)] + thermal_time_c_d;
  int day = std::max(released + 1, not_before);
  while (day + stride < rest_.day && progress_[at(day + stride - 1)] < wanted) {
    day += stride;
  }
  while (day < rest_.day && progress_[at(day)] < wanted) {
    ++day;
  }
  return day < rest_.day ? std::optional{day} : std::nullopt;
}

double SeedSeason::dry_on(int day,
                          const RangeMaximum& since_water,
                          std::vector<double>& kept) const {
  return once(kept[at(day)], [&] {
    return species_rules::dry_share(since_water.value(day), care_.seed_depth_mm);
  });
}

// The hazard from the day on which the root is out: under the bag, and without it once it is up.
double SeedSeason::drying(int root_out, int emerged) {
  double dry = 0.0;
  if (root_out <= emerged) {
    dry = dry_on(driest_under_.of(root_out, emerged), driest_under_, dry_under_);
  }
  const int safe = std::min(emerged + root_safe_days, rest_.day - 1);
  if (emerged < safe) {
    dry = std::max(dry, dry_on(driest_up_.of(emerged + 1, safe), driest_up_, dry_up_));
  }
  return hazard_of(seed_.dry_loss_share * dry);
}

// Where `undone` of the progress was lost to drying before the root was out, all comes that later.
void SeedSeason::add_passage(
    int released, double part, double needed, double undone, int root_not_before) {
  Passage passage;
  passage.part = part;
  passage.emerged = emerges(released, needed + undone, root_not_before);
  const int to = passage.emerged.value_or(rest_.day - 1);
  passage.damping = between(damping_, released + 1, to);
  passage.heat = between(heat_, released + 1, to);
  if (passage.emerged) {
    const int root_out =
        emerges(released, root_out_share * needed + undone, root_not_before).value_or(to);
    passage.drying = drying(root_out, *passage.emerged);
  }
  passage.alive = part * std::exp(-(passage.damping + passage.heat + passage.drying));
  passages_.push_back(passage);
}

// Where the pot dries before the root is out, half of the progress made by then is undone.
void SeedSeason::add_passages(int released) {
  int root_out = released + 1;
  for (const double needed : needed_c_d_) {
    root_out = emerges(released, root_out_share * needed, root_out).value_or(rest_.day - 1);
    double dry = 0.0;
    if (released < root_out) {
      const int driest = driest_under_.of(released, root_out - 1);
      dry = dry_on(driest, driest_under_, dry_under_);
      if (dry > drying_worth_it) {
        const double undone = 0.5 * between(progress_, released + 1, driest);
        add_passage(released, dry / emergence_classes, needed, undone, root_out);
      } else {
        dry = 0.0;
      }
    }
    add_passage(released, (1.0 - dry) / emergence_classes, needed, 0.0, root_out);
  }
}

// Released seed dies of damping off, of heat and of drying; what comes up meets its fate as a
// seedling.
void SeedSeason::add_to_outcome(const Passage& passage, Outcome& outcome) {
  const double all = passage.damping + passage.heat + passage.drying;
  const double lost = passage.part - passage.alive;
  outcome.losses.lost_wet += part_of(lost, passage.damping, all);
  outcome.losses.heat += part_of(lost, passage.heat, all);
  outcome.losses.dried += part_of(lost, passage.drying, all);
  if (!passage.emerged) {
    outcome.losses.too_late += passage.alive;
    return;
  }
  const Fate& fate = fates_.of(*passage.emerged);
  outcome.losses.lost_wet += passage.alive * fate.lost_wet;
  outcome.losses.heat += passage.alive * fate.heat;
  outcome.losses.frost += passage.alive * fate.frost;
  outcome.losses.too_late += passage.alive * fate.too_small;
  outcome.losses.rest += passage.alive * fate.rest;
  outcome.plants += passage.alive * fate.plants;
  outcome.seedlings += passage.alive;
}

const SeedSeason::Outcome& SeedSeason::outcome_of(int released) {
  std::optional<Outcome>& outcome = outcomes_[at(released)];
  if (!outcome) {
    outcome.emplace();
    outcome->first_passage = passages_.size();
    add_passages(released);
    outcome->passages = passages_.size() - outcome->first_passage;
    for (const Passage& passage : passages_of(released)) {
      add_to_outcome(passage, *outcome);
    }
  }
  return *outcome;
}

std::span<const SeedSeason::Passage> SeedSeason::passages_of(int released) {
  const Outcome& outcome = outcome_of(released);
  return std::span(passages_).subspan(outcome.first_passage, outcome.passages);
}

// From first water to release seed dies waiting, and of heat; what is left goes the way of all that
// is released on that day.
void SeedSeason::follow(int water, const Release& release, double share, Establishment& result) {
  const double waiting = between(waiting_, water, release.day);
  const double heat = between(heat_, water, release.day);
  const double lost = share * loss_of(waiting + heat);
  const double begins = share - lost;
  const Outcome& outcome = outcome_of(release.day);
  result.losses.lost_wet +=
      part_of(lost, waiting, waiting + heat) + begins * outcome.losses.lost_wet;
  result.losses.heat += part_of(lost, heat, waiting + heat) + begins * outcome.losses.heat;
  result.losses.dried += begins * outcome.losses.dried;
  result.losses.frost += begins * outcome.losses.frost;
  result.losses.too_late += begins * outcome.losses.too_late;
  result.losses.rest += begins * outcome.losses.rest;
  result.plants += begins * outcome.plants;
  result.seedlings += begins * outcome.seedlings;
  for (const Passage& passage : passages_of(release.day)) {
    if (passage.emerged) {
      result.up[at(*passage.emerged)] += begins * passage.alive;
    }
  }
}

double SeedSeason::plants_of_sound_seed(int day) {
  if (day >= rest_.day) {
    return 0.0;
  }
  double plants = 0.0;
  for (const Release& release : releases(day)) {
    const double hazard = between(waiting_, day, release.day) + between(heat_, day, release.day);
    plants += release.share * (1.0 - loss_of(hazard)) * outcome_of(release.day).plants;
  }
  return (1.0 - seed_.deferral_share) * plants;
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
