#include "planner/model/establishment.hpp"

#include "planner/model/hazards.hpp"
#include "planner/model/once.hpp"
#include "species-rules/development.hpp"
#include "species-rules/drying.hpp"
#include "species-rules/normal.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <memory>
#include <numeric>

namespace nightsow::planner {

namespace {

constexpr int root_safe_days = 14;       // after emergence a seedling's root is deep enough
constexpr double root_out_share = 0.5;   // of the thermal time
constexpr double drying_worth_it = 1e-3; // less of a pause changes no date
constexpr int stride = 4;                // days at a time
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

std::size_t at(int day) {
  return static_cast<std::size_t>(day);
}

template <std::size_t N> std::array<double, N> class_scores() {
  std::array<double, N> scores{};
  for (std::size_t i = 0; i < N; ++i) {
    scores.at(i) =
        species_rules::normal_quantile((static_cast<double>(i) + 0.5) / static_cast<double>(N));
  }
  return scores;
}

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

std::vector<double> waiting_sums(const FeltDays& felt,
                                 const species_rules::SeedParameters& seed,
                                 int days) {
  std::vector<double> hazards(at(days));
  for (std::size_t day = 0; day < hazards.size(); ++day) {
    hazards[day] = hazard_of(std::min(1.0, seed.wet_loss_per_day * felt.wet_ageing[day]));
  }
  return running_sums(hazards);
}

// As many days as the first has.
std::vector<double> both(std::vector<double> sums, const std::vector<double>& others) {
  std::transform(sums.begin(), sums.end(), others.begin(), sums.begin(), std::plus<>{});
  return sums;
}

double mean_rate(std::span<const float> hours,
                 const species_rules::CardinalTemperatures& cardinal) {
  const double sum =
      std::transform_reduce(hours.begin(), hours.end(), 0.0, std::plus<>{}, [&](float hour_c) {
        return species_rules::thermal_rate(static_cast<double>(hour_c), cardinal);
      });
  return sum / static_cast<double>(hours.size());
}

std::shared_ptr<const FeltDays> felt_of(const SeedCourse& course) {
  return course.felt ? course.felt : std::make_shared<const FeltDays>(felt_days(course));
}

PotDryness dryness_of(const SeedCourse& course,
                      const FeltDays& felt,
                      const PotCare& care,
                      bool closed_bag) {
  if (!closed_bag && care.watering_point_mm == species_rules::usual_watering_point_mm) {
    return {felt.since_water_mm.at(care.grit ? 1 : 0), care.seed_depth_mm};
  }
  return {std::make_shared<const RangeMaximum>(
              since_water_mm(gone_a_day_mm(course, {.grit = care.grit, .closed_bag = closed_bag}),
                             care.watering_point_mm)),
          care.seed_depth_mm};
}

} // namespace

SeedSeason::SeedSeason(const SeedCourse& course,
                       const species_rules::SeedParameters& seed,
                       const PotCare& care,
                       const SeasonDays& season)
    : course_(&course), felt_(felt_of(course)), seed_(seed), care_(care),
      rest_(rest_day(course, seed, season)),
      fates_(course,
             *felt_,
             seed,
             season,
             rest_,
             damping_of(felt_->seedling_fungus, seed, care, rest_.day),
             care.kept_through_rest),
      nights_(std::span(course.night_c).first(at(rest_.day)), seed),
      waiting_(waiting_sums(*felt_, seed, rest_.day)),
      damping_(running_sums(damping_of(felt_->fungus, seed, care, rest_.day))),
      waits_(both(waiting_, felt_->heat_sums)), grows_(both(damping_, felt_->heat_sums)),
      under_bag_(care.bag_until_up ? std::optional{dryness_of(course, *felt_, care, true)}
                                   : std::nullopt),
      open_(dryness_of(course, *felt_, care, false)), plants_(at(rest_.day), unknown),
      plants_later_(at(rest_.day), unknown) {
  sum_progress();
  find_emergence();
}

// Most days stay on one side of the optimum: then the mean of the rates is the rate of the mean.
void SeedSeason::sum_progress() {
  const FeltDays& felt = *felt_;
  const species_rules::CardinalTemperatures& cardinal = seed_.cardinal;
  progress_.assign(at(rest_.day + stride), std::numeric_limits<double>::infinity());
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
      rate = mean_rate(course_->hours_of(day), cardinal);
    }
    progress += rate * species_rules::swing_factor_of(felt.swing[at(day)], seed_.swing);
    progress_[at(day)] = progress;
  }
}

void SeedSeason::find_emergence() {
  static const std::array<double, emergence_classes> scores = class_scores<emergence_classes>();
  for (std::size_t i = 0; i < emergence_classes; ++i) {
    needed_c_d_[i] = seed_.thermal_time_c_d * std::exp(seed_.thermal_time_spread * scores[i]);
    root_out_[i] = days_after_release(root_out_share * needed_c_d_[i]);
    up_[i] = days_after_release(needed_c_d_[i]);
  }
}

// The first day, not before that one, by which so much progress has been made since the course
// began; the day of the rest where there is none. It is mostly near, and some days at a time are
// counted without a question after each.
int SeedSeason::day_of_progress(int not_before, double wanted_c_d) const {
  int day = not_before;
  int passed = stride;
  while (passed == stride) {
    passed = 0;
    for (int ahead = 0; ahead < stride; ++ahead) {
      passed += progress_[at(day + ahead)] < wanted_c_d ? 1 : 0;
    }
    day += passed;
  }
  return day;
}

// Seed released later is never there sooner; so the days are walked once.
SeedSeason::DaysByRelease SeedSeason::days_after_release(double thermal_time_c_d) const {
  DaysByRelease days(at(rest_.day));
  int day = 0;
  for (int released = 0; released < rest_.day; ++released) {
    const double wanted = progress_[at(released)] + thermal_time_c_d;
    day = std::max(day, released + 1);
    while (progress_[at(day)] < wanted) {
      ++day;
    }
    days[at(released)] = static_cast<std::int16_t>(day);
  }
  return days;
}

// The share of pots that dry from the day on which the root is out until it is deep enough.
double SeedSeason::drying(int root_out, int emerged) {
  const int safe = std::min(emerged + root_safe_days, rest_.day - 1);
  if (!under_bag_) {
    return open_.dry_share(open_.driest(root_out, safe));
  }
  const double before = under_bag_->dry_share(under_bag_->driest(root_out, emerged));
  return emerged < safe ? std::max(before, open_.dry_share(open_.driest(emerged + 1, safe)))
                        : before;
}

SeedSeason::Passage SeedSeason::passage(int released, double part, int root_out, int emerged) {
  Passage passage;
  passage.part = part;
  const int to = std::min(emerged, rest_.day - 1);
  if (emerged < rest_.day) {
    passage.emerged = emerged;
    passage.dried = seed_.dry_loss_share * drying(root_out, emerged);
  }
  passage.alive = part * grows_.share(released + 1, to) * (1.0 - passage.dried);
  return passage;
}

// Where the pot dries before the root is out, half of the progress made by then is undone, and all
// comes that later.
template <class Take> void SeedSeason::each_passage(int released, Take take) {
  constexpr double a_class = 1.0 / static_cast<double>(emergence_classes);
  for (std::size_t i = 0; i < emergence_classes; ++i) {
    const int root_out = root_out_[i][at(released)];
    const int emerged = up_[i][at(released)];
    const int by_then = std::min(root_out, rest_.day - 1);
    double dry = 0.0;
    if (released < by_then) {
      const int driest = before_up().driest(released, by_then - 1);
      const double dry_share = before_up().dry_share(driest);
      if (dry_share > drying_worth_it) {
        dry = dry_share;
        const double to_make =
            progress_[at(released)] + 0.5 * between(progress_, released + 1, driest);
        take(passage(released,
                     dry * a_class,
                     day_of_progress(root_out, to_make + root_out_share * needed_c_d_[i]),
                     day_of_progress(emerged, to_make + needed_c_d_[i])));
      }
    }
    take(passage(released, (1.0 - dry) * a_class, root_out, emerged));
  }
}

// Released seed dies of damping off, of heat and of drying; what comes up meets its fate as a
// seedling.
void SeedSeason::add_to_outcome(int released, const Passage& passage, Outcome& outcome) {
  const int to = passage.emerged.value_or(rest_.day - 1);
  const double damping = between(damping_, released + 1, to);
  const double heat = between(felt_->heat_sums, released + 1, to);
  const double drying = hazard_of(passage.dried);
  const double all = damping + heat + drying;
  const double lost = passage.part - passage.alive;
  outcome.losses.lost_wet += part_of(lost, damping, all);
  outcome.losses.heat += part_of(lost, heat, all);
  outcome.losses.dried += part_of(lost, drying, all);
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
  outcomes_.resize(at(rest_.day));
  std::optional<Outcome>& outcome = outcomes_[at(released)];
  if (!outcome) {
    outcome.emplace();
    outcome->first_passage = passages_.size();
    each_passage(released, [&](const Passage& passage) { passages_.push_back(passage); });
    outcome->passages = passages_.size() - outcome->first_passage;
    for (const Passage& passage : passages_of(released)) {
      add_to_outcome(released, passage, *outcome);
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
void SeedSeason::follow(int water,
                        const NightRelease::Step& release,
                        double share,
                        Establishment& result) {
  const double waiting = between(waiting_, water, release.day);
  const double heat = between(felt_->heat_sums, water, release.day);
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

double SeedSeason::plants_of_released(int released) {
  return once(plants_[at(released)], [&] {
    double plants = 0.0;
    each_passage(released, [&](const Passage& passage) {
      plants += passage.emerged ? passage.alive * fates_.plants(*passage.emerged) : 0.0;
    });
    return plants;
  });
}

// Of seed that waits from `water` on, so much of it released before that day, what the windows
// release from then on; as a share of the seed on the day of first water.
double SeedSeason::plants_by_windows(int water, int from, double released) {
  const std::optional<int> day = nights_.next(from, released);
  if (!day) {
    return 0.0;
  }
  const double share = nights_.by_window(*day) - released;
  return waits_.share(water, *day) *
         (share * plants_of_released(*day) + plants_released_later(*day));
}

// What follows when a day's window has released its share is the same for all first waters before.
double SeedSeason::plants_released_later(int day) {
  return once(plants_later_[at(day)],
              [&] { return plants_by_windows(day + 1, day + 1, nights_.by_window(day)); });
}

double SeedSeason::plants_of_sound_seed(int day) {
  if (day >= rest_.day) {
    return 0.0;
  }
  const NightRelease::Steps& first = nights_.before_windows(day);
  double plants = 0.0;
  for (const NightRelease::Step& release : first.steps) {
    if (release.share > 0.0) {
      plants += release.share * waits_.share(day, release.day) * plants_of_released(release.day);
    }
  }
  plants += plants_by_windows(day, nights_.first_window(day), first.share);
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
  const NightRelease::Steps& releases = nights_.all(day);
  for (const NightRelease::Step& release : releases.steps) {
    follow(day, release, active * release.share, result);
  }
  const double waiting = between(waiting_, day, rest_.day - 1);
  const double heat = between(felt_->heat_sums, day, rest_.day - 1);
  const double left = active * std::max(0.0, 1.0 - releases.share);
  const double alive = left * std::exp(-(waiting + heat));
  result.losses.lost_wet += part_of(left - alive, waiting, waiting + heat);
  result.losses.heat += part_of(left - alive, heat, waiting + heat);
  result.losses.nights_too_warm += alive;
  return result;
}

} // namespace nightsow::planner
