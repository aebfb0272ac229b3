#pragma once

#include "planner/statistics/shares.hpp"
#include "species-rules/rule.hpp"

#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// Seedlings that had come by the end of a day.
struct LimitLook {
  int day = 0;  ///< after first water; > 0
  int came = 0; ///< in all, never falling
};

/// A sowing of a cool starter beside the nights that came, from its first water to the end of that
/// season; both rows have one entry a day.
struct WatchedSowing {
  int sowing = 0; ///< which, any number
  int season = 0;
  int seeds = 0;
  int pots = 1;
  std::vector<LimitLook> looks; ///< by day, within the rows
  /// Share of the pressed seeds that was firm; empty: nobody pressed, and seed that did not come
  /// tells nothing, as it may have been dead.
  std::optional<double> firm_share;
  std::vector<double> progress_c_d;             ///< of released seed, by the end of the day
  std::vector<std::optional<double>> coolest_c; ///< running minimum of the deciding night; empty:
                                                ///< too few wet nights yet
};

/// Why a record tells nothing about the night limit.
enum class LimitRefusal {
  too_few_sowings,   ///< under two with a look
  too_few_seedlings, ///< under twenty came
  nights_too_alike,  ///< the coolest windows before the looks within 3 K of each other
  fits_no_limit,     ///< the likeliest limit lies at the end of what was tried
  too_unsure,        ///< the limit stays as wide as the rule has it
};

/// A number of the garden's own.
struct LearnedValue {
  double value = 0.0;
  Interval limits; ///< 80 %
};

struct LearnedLimit {
  std::optional<LimitRefusal> refused; ///< where set, only the counts below hold
  int sowings = 0;
  int seasons = 0;
  LearnedValue limit_c;
  std::optional<LearnedValue> thermal_time_c_d; ///< empty: as wide as the rule has it
  double predicts_better = 0.0; ///< log likelihood of left-out sowings, over that of the rule
  bool offered = false; ///< three sowings in two seasons, and better by 1 at what was left out
};

inline constexpr int offered_sowings = 3;
inline constexpr int offered_seasons = 2;
inline constexpr int least_seedlings_for_a_limit = 20;
inline constexpr double least_range_for_a_limit_k = 3.0;

/// The garden's own night limit (at which half of the seed is released) and its thermal time from
/// release to emergence, learned from when seedlings came: of seed that comes at all, the share up
/// by each look follows from the running coolest window and the progress made since, as in
/// release.hpp and development.hpp; the chance of coming between two looks, given that it had not,
/// is the hazard of a discrete time. Limit and time are a grid about the rule's, weighed by the
/// likelihood of all sowings and by the rule's own ranges (normal; of the time in logarithms), so
/// that a small record stays near the rule. How far seeds differ is left as the rule has it. Seeds
/// that share a pot count for less, as in count_range.hpp. For left-out sowings the likeliest cell
/// of the others stands against the rule's values. A range of the rule under a quarter of a kelvin
/// counts as that wide. Requires: a rule with a night limit and a start by cool nights.
[[nodiscard]] LearnedLimit learned_limit(std::span<const WatchedSowing> sowings,
                                         const species_rules::Rule& rule);

} // namespace nightsow::planner
