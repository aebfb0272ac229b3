#include "planner/model/establishment.hpp"
#include "planner/model/hazards.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

// The same walk as that of follow(), stopped at the end of `today`.
void SeedSeason::follow_to(
    int water, const NightRelease::Step& release, double share, int today, SeedsOnDay& result) {
  const int waits_to = std::min(release.day, today);
  const double waiting = between(waiting_, water, waits_to);
  const double heat_waiting = between(felt_->heat_sums, water, waits_to);
  const double lost_waiting = share * -std::expm1(-(waiting + heat_waiting));
  result.lost_wet += part_of(lost_waiting, waiting, waiting + heat_waiting);
  result.heat += part_of(lost_waiting, heat_waiting, waiting + heat_waiting);
  if (release.day > today) {
    result.nights_too_warm += share - lost_waiting;
    return;
  }
  for (const Passage& passage : passages_of(release.day)) {
    const bool is_up = passage.emerged && *passage.emerged <= today;
    const int to = is_up ? *passage.emerged : today;
    const double damping = between(damping_, release.day + 1, to);
    const double heat = between(felt_->heat_sums, release.day + 1, to);
    const double drying = is_up ? hazard_of(passage.dried) : 0.0;
    const double all = damping + heat + drying;
    const double begins = (share - lost_waiting) * passage.part;
    const double alive = begins * std::exp(-all);
    result.lost_wet += part_of(begins - alive, damping, all);
    result.heat += part_of(begins - alive, heat, all);
    result.dried += part_of(begins - alive, drying, all);
    if (is_up) {
      result.up_so_far += alive;
    } else {
      (passage.emerged ? result.to_come : result.too_late) += alive;
    }
  }
}

SeedsOnDay SeedSeason::on_day(int water, const SeedShares& shares, int today) {
  SeedsOnDay result;
  result.up = watered_on(water, shares).up;
  result.dead = 1.0 - shares.alive;
  result.not_ripe = shares.alive * (1.0 - shares.ripe);
  result.deferred = shares.alive * shares.ripe * seed_.deferral_share;
  const double active = shares.alive * shares.ripe * (1.0 - seed_.deferral_share);
  if (water >= rest_.day) {
    result.nights_too_warm = active;
    return result;
  }
  const int last = std::min(today, rest_.day - 1);
  const NightRelease::Steps& releases = nights_.all(water);
  for (const NightRelease::Step& release : releases.steps) {
    follow_to(water, release, active * release.share, last, result);
  }
  const double left = active * std::max(0.0, 1.0 - releases.share);
  const double waiting = between(waiting_, water, last);
  const double heat = between(felt_->heat_sums, water, last);
  const double alive = left * std::exp(-(waiting + heat));
  result.lost_wet += part_of(left - alive, waiting, waiting + heat);
  result.heat += part_of(left - alive, heat, waiting + heat);
  result.nights_too_warm += alive;
  return result;
}

} // namespace nightsow::planner
