#pragma once

#include "planner/statistics/shares.hpp"

#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// One look at one sowing: what waited, what came, and how cool the nights had been by then.
struct WindowLook {
  int sowing = 0; ///< which sowing, any number
  int season = 0;
  double waiting = 0.0;          ///< willing seeds not yet up at the look before
  double came = 0.0;             ///< of those, since
  double coolest_window_c = 0.0; ///< running minimum of the deciding night, by this look less the
                                 ///< days from release to emergence
  double days = 14.0;            ///< since the look before; > 0
};

/// What the rule says of the night limit.
struct LimitBefore {
  double limit_c = 13.0;
  double limit_deviation_k = 2.0; ///< how well the rule knows it
  double spread_k = 2.5;          ///< how far seeds' own limits lie apart
};

/// Why a record tells nothing about the night limit.
enum class LimitRefusal {
  too_few_sowings,    ///< one only
  too_few_seedlings,  ///< under twenty came
  nights_too_alike,   ///< coolest windows within 3 K of each other
  not_told_by_nights, ///< the share that comes does not rise as nights get cooler
  too_unsure,         ///< the limit stays as wide as the rule has it
};

struct LearnedLimit {
  std::optional<LimitRefusal> refused; ///< where set, only the counts below hold
  int sowings = 0;
  int seasons = 0;
  double limit_c = 0.0;
  Interval limits_c;            ///< 80 %
  double predicts_better = 0.0; ///< log likelihood of left-out sowings, over that of the rule
  bool offered = false; ///< three sowings in two seasons, and better by 1 at what was left out
};

/// The garden's own night limit: the coolest window at which half of the willing seeds come within
/// a fortnight. Discrete-time hazard with complementary log-log link on the running coolest window,
/// the days of a look as they are, and a ridge toward the rule; see fit_hazard. The rule's slope is
/// that of a normal spread of seeds' limits at its middle.
[[nodiscard]] LearnedLimit learned_limit(std::span<const WindowLook> looks,
                                         const LimitBefore& rule);

} // namespace nightsow::planner
