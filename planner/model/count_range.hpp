#pragma once

#include <span>
#include <vector>

namespace nightsow::planner {

/// Pots of one sowing differ: seeds share their fate by so much (intraclass correlation of the
/// beta-binomial; common practice, no source).
inline constexpr double pots_differ = 0.1;

/// Chances of 0..n successes among n seeds where the share is itself uncertain: beta-binomial with
/// mean `share` and intraclass correlation `correlation` (0 <= correlation < 1; 0 is the binomial).
/// n + 1 values that sum to 1. Requires: n >= 0, 0 <= share <= 1.
[[nodiscard]] std::vector<double> beta_binomial(int n, double share, double correlation);

/// How many of n seeds, when each of several equally likely shares may be the right one.
struct CountRange {
  double mean = 0.0;
  int p10 = 0; ///< the smallest count that at most nine in ten cases pass; type 1
  int p90 = 0;
};

/// Requires: n >= 0, shares not empty.
[[nodiscard]] CountRange count_range(int n, std::span<const double> shares, double correlation);

} // namespace nightsow::planner
