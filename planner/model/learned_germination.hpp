#pragma once

#include "planner/model/learned_limit.hpp"
#include "planner/statistics/shares.hpp"
#include "species-rules/rule.hpp"

#include <optional>
#include <span>

namespace nightsow::planner {

/// A sowing beside what the model lets come of it.
struct ReachedSowing {
  int season = 0;
  Count count; ///< seedlings that had come by its last look, of the seeds sown
  int pots = 1;
  /// Share of the seeds that would have come by that look, did every living, ripe seed that does
  /// not wait another year come up: what is dead or unripe, waits, or is lost is out of it. 0..1
  double reached = 0.0;
};

/// Why a record tells nothing about the germination share.
enum class GerminationRefusal {
  too_few_sowings, ///< under two with a look
  too_few_seeds,   ///< under twenty could have come
  fits_no_share,   ///< the likeliest share lies at the end of what was tried
  too_unsure,      ///< the share stays as wide as the rule has it
};

struct LearnedGermination {
  std::optional<GerminationRefusal> refused; ///< where set, only the counts below hold
  int sowings = 0;
  int seasons = 0;
  LearnedValue share;
  double predicts_better = 0.0; ///< log likelihood of left-out sowings, over that of the rule
  bool offered = false; ///< three sowings in two seasons, and better by 1 at what was left out
};

inline constexpr double least_seeds_for_a_share = 20.0;

/// The garden's own share of fresh seed that comes up (`germination_share`), learned from how much
/// came of what could. Counts are beta-binomial about the share times `reached`, seeds of one pot
/// alike as in count_range.hpp. The share is a grid of log odds about the rule's, weighed by the
/// likelihood of all sowings and the rule's own range (normal), so that a small record stays near
/// the rule. For left-out sowings the likeliest share of the others stands against the rule's. A
/// range of the rule under a tenth of a unit of log odds counts as that wide.
[[nodiscard]] LearnedGermination learned_germination(std::span<const ReachedSowing> sowings,
                                                     const species_rules::Estimate& rule_share);

} // namespace nightsow::planner
