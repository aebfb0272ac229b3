#include "planner/model/night_release.hpp"

#include "planner/model/once.hpp"

#include <algorithm>
#include <functional>
#include <limits>

namespace nightsow::planner {

namespace {

using species_rules::Start;

constexpr double least_share = 5e-4; // less is added to the next day's
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

std::size_t at(int day) {
  return static_cast<std::size_t>(day);
}

bool all_released(double share) {
  return share + least_share >= 1.0;
}

// While fewer nights are wet than a window has.
std::vector<std::size_t> ranks_of_few(int nights, int of) {
  std::vector<std::size_t> ranks;
  ranks.reserve(at(of));
  for (int so_many = 0; so_many < of; ++so_many) {
    ranks.push_back(at(species_rules::deciding_night(nights, of, so_many).value_or(0)));
  }
  return ranks;
}

} // namespace

NightRelease::NightRelease(std::span<const double> night_c,
                           const species_rules::SeedParameters& seed)
    : limit_(seed.release), warmth_(seed.start == Start::hot), of_(seed.of),
      days_(static_cast<int>(night_c.size())) {
  if (!limit_) {
    return;
  }
  const double sign = warmth_ ? -1.0 : 1.0;
  coolness_.reserve(night_c.size());
  for (const double c : night_c) {
    coolness_.push_back(sign * c);
  }
  by_night_.assign(night_c.size(), unknown);
  ranks_ = ranks_of_few(seed.nights, seed.of);
  find_windows(seed.nights);
}

void NightRelease::find_windows(int nights) {
  const auto cooler = [&](int one, int other) { return coolness_[at(one)] < coolness_[at(other)]; };
  deciding_.assign(coolness_.size(), 0);
  std::vector<int> ordered;
  for (int day = 0; day < days_; ++day) {
    ordered.insert(std::upper_bound(ordered.begin(), ordered.end(), day, cooler), day);
    if (day >= of_) {
      ordered.erase(std::find(ordered.begin(), ordered.end(), day - of_));
    }
    if (day + 1 >= of_) {
      deciding_[at(day)] = ordered[at(nights - 1)];
    }
  }
  next_better_.resize(coolness_.size());
  for (int day = days_ - 1; day >= 0; --day) {
    int next = day + 1;
    while (next < days_ && !cooler(deciding_[at(next)], deciding_[at(day)])) {
      next = next_better_[at(next)];
    }
    next_better_[at(day)] = next;
  }
}

double NightRelease::by_night(int day) {
  return once(by_night_[at(day)], [&] {
    const double coolness = coolness_[at(day)];
    return warmth_ ? species_rules::released_by_warmth(-coolness, *limit_)
                   : species_rules::released_by_cool(coolness, *limit_);
  });
}

double NightRelease::by_window(int day) {
  return by_night(deciding_[at(day)]);
}

// A night that releases hardly more than what is released already can decide nothing any more.
const NightRelease::Steps& NightRelease::before_windows(int water) {
  double& share = steps_.share;
  share = limit_ ? limit_->indifferent_share : 1.0;
  steps_.steps.assign(1, {water, share});
  best_first_.clear();
  const int ends = std::min(first_window(water), days_);
  for (int day = water; day < ends && !all_released(share); ++day) {
    const double tonight = by_night(day);
    if (tonight - share > least_share) {
      best_first_.insert(
          std::upper_bound(best_first_.begin(), best_first_.end(), tonight, std::greater<>{}),
          tonight);
    }
    const std::size_t rank = ranks_[at(day - water + 1)];
    if (rank == 0 || rank > best_first_.size()) {
      continue;
    }
    const double then = best_first_[rank - 1];
    if (then - share > least_share) {
      steps_.steps.push_back({day, then - share});
      share = then;
    }
  }
  return steps_;
}

std::optional<int> NightRelease::next(int from, double share) {
  if (all_released(share)) {
    return std::nullopt;
  }
  int day = from;
  while (day < days_ && by_window(day) - share <= least_share) {
    day = next_better_[at(day)];
  }
  return day < days_ ? std::optional{day} : std::nullopt;
}

const NightRelease::Steps& NightRelease::all(int water) {
  static_cast<void>(before_windows(water));
  std::optional<int> day = next(first_window(water), steps_.share);
  while (day) {
    const double then = by_window(*day);
    steps_.steps.push_back({*day, then - steps_.share});
    steps_.share = then;
    day = next(*day + 1, then);
  }
  return steps_;
}

} // namespace nightsow::planner
