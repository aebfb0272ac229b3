#pragma once

#include "planner/statistics/shares.hpp"

#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// Seedlings of one sowing that had come by a look, so many days after first water.
struct DayLook {
  int day = 0;
  int came = 0; ///< in all, never falling
};

struct TimedSowing {
  int seeds = 0;
  std::vector<DayLook> looks; ///< by day
};

/// A day between two looks: after the one, by the other.
struct BetweenLooks {
  int after = 0;
  int by = 0;
};

/// When the seeds of a kind come.
struct LearnedTimes {
  int sowings = 0;
  int seeds = 0;
  int came = 0;
  std::optional<BetweenLooks> first;     ///< of all the sowings; empty: none came
  std::optional<BetweenLooks> half;      ///< of those that came
  std::optional<BetweenLooks> half_sown; ///< of all sown; empty: fewer than half came
  double came_share = 0.0;               ///< by Kaplan and Meier, by the last look
  Interval came_limits;                  ///< 95 %
};

/// Kaplan and Meier's product over all sowings of a kind, twice: each seedling taken as come just
/// after the look before it was seen, and at the look itself, so that what looks leave open stands
/// between the two. Seeds not up by the last look of their sowing have waited until then and have
/// not failed: they may be deferred. Sowings without looks tell nothing.
[[nodiscard]] LearnedTimes learned_times(std::span<const TimedSowing> sowings);

} // namespace nightsow::planner
