#pragma once

#include "planner/statistics/shares.hpp"

#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// Shares that differ from sowing to sowing as Beta(a, b) does.
struct BetaShares {
  double a = 1.0;
  double b = 1.0;

  [[nodiscard]] double mean() const { return a / (a + b); }

  /// Of seeds within a sowing (intraclass), 0..1.
  [[nodiscard]] double correlation() const { return 1.0 / (a + b + 1.0); }
};

struct BetaFit {
  BetaShares shares;
  double log_likelihood = 0.0; ///< with the binomial coefficients
};

/// Sowings whose shares differ no more than chance would have them are taken as this much alike:
/// a + b no larger.
inline constexpr double most_alike = 1e4;

/// Beta-binomial by maximum likelihood, Newton on the logarithms of a and b with halved steps.
/// Empty where fewer than two sowings have seeds, or all of them came, or none.
[[nodiscard]] std::optional<BetaFit> fit_beta_binomial(std::span<const Count> sowings);

/// What is known of one sowing's, or kind's, share once its own counts are seen: Beta(a + came,
/// b + the rest).
[[nodiscard]] BetaShares given(const BetaShares& before, const Count& count);

[[nodiscard]] Interval interval_of(const BetaShares& shares, double confidence);

/// The smallest count of n that at most so much of the beta-binomial passes; type 1.
[[nodiscard]] int count_quantile(const BetaShares& shares, int n, double part);

} // namespace nightsow::planner
