#include "planner/model/learned_times.hpp"

#include "planner/statistics/survival.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

enum class Taken { early, late };

std::vector<Waited> seeds_of(std::span<const TimedSowing> sowings, Taken taken) {
  std::vector<Waited> seeds;
  for (const TimedSowing& sowing : sowings) {
    if (sowing.looks.empty()) {
      continue;
    }
    DayLook before;
    for (const DayLook& look : sowing.looks) {
      const int day = taken == Taken::early ? before.day : look.day;
      seeds.insert(seeds.end(),
                   static_cast<std::size_t>(std::max(0, look.came - before.came)),
                   Waited{static_cast<double>(day), true});
      before = look;
    }
    seeds.insert(seeds.end(),
                 static_cast<std::size_t>(std::max(0, sowing.seeds - before.came)),
                 Waited{static_cast<double>(before.day), false});
  }
  return seeds;
}

std::optional<BetweenLooks> between(std::span<const SurvivalStep> early,
                                    std::span<const SurvivalStep> late,
                                    double waiting_share) {
  const std::optional<double> after = days_until_waiting(early, waiting_share);
  const std::optional<double> by = days_until_waiting(late, waiting_share);
  if (!after || !by) {
    return std::nullopt;
  }
  return BetweenLooks{static_cast<int>(std::lround(*after)), static_cast<int>(std::lround(*by))};
}

} // namespace

LearnedTimes learned_times(std::span<const TimedSowing> sowings) {
  LearnedTimes result;
  for (const TimedSowing& sowing : sowings) {
    if (!sowing.looks.empty()) {
      ++result.sowings;
      result.seeds += sowing.seeds;
      result.came += sowing.looks.back().came;
    }
  }
  const std::vector<SurvivalStep> early = kaplan_meier(seeds_of(sowings, Taken::early));
  const std::vector<SurvivalStep> late = kaplan_meier(seeds_of(sowings, Taken::late));
  if (early.empty() || late.empty()) {
    return result;
  }
  result.came_share = 1.0 - late.back().waiting_share;
  const Interval waiting = log_log_limits(late.back());
  result.came_limits = {1.0 - waiting.high, 1.0 - waiting.low};
  // The first step takes the share waiting below one.
  result.first = BetweenLooks{static_cast<int>(std::lround(early.front().days)),
                              static_cast<int>(std::lround(late.front().days))};
  result.half = between(early, late, 1.0 - 0.5 * result.came_share);
  result.half_sown = between(early, late, 0.5);
  return result;
}

} // namespace nightsow::planner
