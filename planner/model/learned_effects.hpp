#pragma once

#include "planner/statistics/shares.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace nightsow::planner {

/// What came of one sowing, with what may have made it more or less.
struct EffectSowing {
  std::string kind; ///< sowings are compared within a kind
  Count count;
  int pots = 1;
  std::optional<double> age_years; ///< of the seed when it was sown
  std::string bench;
};

enum class EffectRefusal {
  too_few_sowings, ///< under four that can be compared
  nothing_differs, ///< within each kind all were alike in this
};

struct LearnedEffect {
  std::string bench;                    ///< empty: the effect of a year of age
  std::string against;                  ///< the bench it is compared with
  std::optional<EffectRefusal> refused; ///< where set, only `sowings` holds below
  int sowings = 0;                      ///< of kinds in which it differs
  double usual_share = 0.0;             ///< on the bench compared with; of the fresher seed
  double share = 0.0;                   ///< of seed that would come at the usual share otherwise
  Interval limits;                      ///< 95 %
  bool settled = false;                 ///< the limits leave out the usual share
};

inline constexpr int least_sowings_for_an_effect = 4;

/// The effect of a year of age, then of each bench against the one with most sowings, by logistic
/// regression on all sowings at once: each kind has its own level (drawn to the middle of all), and
/// effects are drawn to none by a normal of one unit of log odds, so that few sowings say little.
/// Seeds that share a pot count for less, as in count_range.hpp.
[[nodiscard]] std::vector<LearnedEffect> learned_effects(std::span<const EffectSowing> sowings);

} // namespace nightsow::planner
