#pragma once

#include "planner/statistics/shares.hpp"

#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// Limits of the share of `a` less that of `b`: Newcombe's hybrid of two Wilson intervals, his
/// method 10; Newcombe (1998), Statistics in Medicine 17: 873-890.
[[nodiscard]] Interval newcombe_difference(const Count& a,
                                           const Count& b,
                                           double confidence = usual_confidence);

/// Fisher's exact test of two shares, given how many came in all.
struct FisherTest {
  double two_sided = 1.0; ///< chance of a table no likelier than this one, were the shares alike
  double less = 1.0;      ///< chance of so few of `a`, or fewer
  double greater = 1.0;
};

[[nodiscard]] FisherTest fisher_exact(const Count& a, const Count& b);

/// Odds of `a` over odds of `b`, by conditional maximum likelihood, with its exact limits. Infinite
/// where none of `b` or all of `a` came.
struct OddsRatio {
  double ratio = 1.0;
  Interval limits;
};

[[nodiscard]] OddsRatio odds_ratio(const Count& a,
                                   const Count& b,
                                   double confidence = usual_confidence);

/// Chance of arms that differ as much as these, or are less likely still, were all shares alike:
/// Fisher's test of a table of many rows and columns (Freeman and Halton 1951). Counts that are no
/// likelier within one in ten million count as equal. Empty where the table is too large to go
/// through. Requires: rows of equal length.
[[nodiscard]] std::optional<double> exact_test(std::span<const std::vector<int>> rows);

} // namespace nightsow::planner
