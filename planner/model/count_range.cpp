#include "planner/model/count_range.hpp"

#include <cmath>
#include <cstddef>
#include <numeric>

namespace nightsow::planner {

namespace {

// Shares this near to none or all leave nothing to chance.
constexpr double certain = 1e-9;

double log_choose(int n, int k) {
  return std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0);
}

double log_beta(double a, double b) {
  return std::lgamma(a) + std::lgamma(b) - std::lgamma(a + b);
}

int quantile(const std::vector<double>& chances, double p) {
  double so_far = 0.0;
  for (std::size_t k = 0; k < chances.size(); ++k) {
    so_far += chances[k];
    if (so_far >= p - 1e-12) {
      return static_cast<int>(k);
    }
  }
  return static_cast<int>(chances.size()) - 1;
}

} // namespace

std::vector<double> beta_binomial(int n, double share, double correlation) {
  std::vector<double> chances(static_cast<std::size_t>(n) + 1, 0.0);
  if (share <= certain || share >= 1.0 - certain) {
    (share <= certain ? chances.front() : chances.back()) = 1.0;
    return chances;
  }
  for (int k = 0; k <= n; ++k) {
    double log_chance = log_choose(n, k);
    if (correlation > 0.0) {
      const double size = 1.0 / correlation - 1.0;
      const double a = share * size;
      const double b = (1.0 - share) * size;
      log_chance += log_beta(k + a, n - k + b) - log_beta(a, b);
    } else {
      log_chance += k * std::log(share) + (n - k) * std::log1p(-share);
    }
    chances[static_cast<std::size_t>(k)] = std::exp(log_chance);
  }
  return chances;
}

CountRange count_range(int n, std::span<const double> shares, double correlation) {
  std::vector<double> chances(static_cast<std::size_t>(n) + 1, 0.0);
  for (const double share : shares) {
    const std::vector<double> of_share = beta_binomial(n, share, correlation);
    for (std::size_t k = 0; k < chances.size(); ++k) {
      chances[k] += of_share[k] / static_cast<double>(shares.size());
    }
  }
  const double mean_share =
      std::accumulate(shares.begin(), shares.end(), 0.0) / static_cast<double>(shares.size());
  return {n * mean_share, quantile(chances, 0.1), quantile(chances, 0.9)};
}

} // namespace nightsow::planner
