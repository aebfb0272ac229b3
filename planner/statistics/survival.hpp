#pragma once

#include "planner/statistics/shares.hpp"

#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// A seed that came on a day, or was last looked for then and had not come.
struct Waited {
  double days = 0.0;
  bool came = false;
};

/// The share still waiting after a day on which some came.
struct SurvivalStep {
  double days = 0.0;
  int at_risk = 0; ///< waiting just before
  int came = 0;
  double waiting_share = 1.0;
  double error = 0.0; ///< Greenwood's standard error
};

/// Kaplan and Meier's product; in order of days, one step a day on which seeds came. Of equal days
/// those that came are counted first.
[[nodiscard]] std::vector<SurvivalStep> kaplan_meier(std::span<const Waited> seeds);

/// The same of a life table, where seeds at risk and those that came are known look by look; `days`
/// are then 1, 2 … Requires: equally long, came <= at_risk.
[[nodiscard]] std::vector<SurvivalStep> life_table(std::span<const int> at_risk,
                                                   std::span<const int> came);

/// Limits of waiting_share by its log(-log); the share itself where none or all came.
[[nodiscard]] Interval log_log_limits(const SurvivalStep& step,
                                      double confidence = usual_confidence);

/// The first day after which at most that share waits; empty where more do to the end.
[[nodiscard]] std::optional<double> days_until_waiting(std::span<const SurvivalStep> steps,
                                                       double share);

/// Whether two groups came alike in time (Mantel 1966).
struct LogRank {
  double expected_a = 0.0; ///< of group a, were they alike
  double observed_a = 0.0;
  double variance = 0.0;
  double chi_square = 0.0; ///< one degree of freedom; 0 where the groups cannot be told apart
  double chance = 1.0;     ///< of one so large or larger
};

[[nodiscard]] LogRank log_rank(std::span<const Waited> a, std::span<const Waited> b);

} // namespace nightsow::planner
