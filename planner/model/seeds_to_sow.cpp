#include "planner/model/seeds_to_sow.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

// Shares this near to none or all leave nothing to chance.
constexpr double certain = 1e-9;

// Chance of fewer than `wanted`: P(0) by logarithms, then from each count to the next,
// P(k + 1) / P(k) = (n - k) (k + a) / ((k + 1) (n - k - 1 + b)).
double chance_of_fewer(int wanted, int n, double share, double correlation) {
  if (wanted <= 0) {
    return 0.0;
  }
  if (n < wanted || share <= certain) {
    return 1.0;
  }
  if (share >= 1.0 - certain) {
    return 0.0;
  }
  const double size = 1.0 / correlation - 1.0;
  const double a = share * size;
  const double b = size - a;
  double chance =
      std::exp(std::lgamma(n + b) - std::lgamma(n + size) - std::lgamma(b) + std::lgamma(size));
  double sum = 0.0;
  for (int k = 0; k < wanted; ++k) {
    sum += chance;
    chance *= (n - k) * (k + a) / ((k + 1.0) * (n - k - 1.0 + b));
  }
  return std::min(1.0, sum);
}

} // namespace

double chance_of_at_least(int wanted, int n, std::span<const double> shares, double correlation) {
  double fewer = 0.0;
  for (const double share : shares) {
    fewer += chance_of_fewer(wanted, n, share, correlation);
  }
  return 1.0 - fewer / static_cast<double>(shares.size());
}

std::optional<int> seeds_to_sow(int wanted,
                                double chance,
                                std::span<const double> shares,
                                double correlation) {
  if (wanted == 0) {
    return 0;
  }
  const auto enough = [&](int n) {
    return chance_of_at_least(wanted, n, shares, correlation) >= chance;
  };
  // More seeds never make it less likely, so the number is found by doubling and halving.
  int too_few = wanted - 1;
  int seeds = std::min(wanted, most_seeds_to_sow);
  while (!enough(seeds)) {
    if (seeds >= most_seeds_to_sow) {
      return std::nullopt;
    }
    too_few = seeds;
    seeds = std::min(seeds * 2, most_seeds_to_sow);
  }
  while (seeds - too_few > 1) {
    const int middle = too_few + (seeds - too_few) / 2;
    (enough(middle) ? seeds : too_few) = middle;
  }
  return seeds;
}

} // namespace nightsow::planner
