#include "planner/statistics/sample_size.hpp"

#include "planner/statistics/comparison.hpp"
#include "species-rules/normal.hpp"

#include <boost/math/special_functions/beta.hpp>

#include <cmath>

namespace nightsow::planner {

namespace {

constexpr int most_seeds = 1'000'000;

// At least `plants` of n: the incomplete beta function, DLMF 8.17.5.
double chance_of(double share, int plants, int n) {
  if (plants <= 0) {
    return 1.0;
  }
  return n < plants ? 0.0 : boost::math::ibeta(plants, n - plants + 1, share);
}

Count grown(const Count& count, int more) {
  const double share = static_cast<double>(count.came) / count.sown;
  return {static_cast<int>(std::lround(share * (count.sown + more))), count.sown + more};
}

bool settled(const Count& a, const Count& b, double confidence) {
  const Interval difference = newcombe_difference(a, b, confidence);
  return difference.low > 0.0 || difference.high < 0.0;
}

} // namespace

std::optional<int> seeds_for_plants(double share, int plants, double chance) {
  if (chance_of(share, plants, most_seeds) < chance) {
    return std::nullopt;
  }
  int too_few = plants - 1;
  int enough = most_seeds;
  while (enough - too_few > 1) {
    const int middle = too_few + (enough - too_few) / 2;
    (chance_of(share, plants, middle) >= chance ? enough : too_few) = middle;
  }
  return enough;
}

std::optional<int> seeds_to_settle(const Count& a, const Count& b, double confidence) {
  if (a.sown == 0 || b.sown == 0) {
    return std::nullopt;
  }
  for (int more = 0; more <= most_seeds_asked; ++more) {
    if (settled(grown(a, more), grown(b, more), confidence)) {
      return more;
    }
  }
  return std::nullopt;
}

std::optional<int> seeds_an_arm(double share_a, double share_b, double power, double confidence) {
  const double difference = std::abs(share_a - share_b);
  if (difference < 1e-9) {
    return std::nullopt;
  }
  const double middle = 0.5 * (share_a + share_b);
  const double by_chance = species_rules::normal_quantile(0.5 + 0.5 * confidence) *
                           std::sqrt(2.0 * middle * (1.0 - middle));
  const double in_truth = species_rules::normal_quantile(power) *
                          std::sqrt(share_a * (1.0 - share_a) + share_b * (1.0 - share_b));
  const double plain = std::pow((by_chance + in_truth) / difference, 2.0);
  const double corrected =
      0.25 * plain * std::pow(1.0 + std::sqrt(1.0 + 4.0 / (plain * difference)), 2.0);
  return corrected > most_seeds_asked ? std::nullopt
                                      : std::optional{static_cast<int>(std::ceil(corrected))};
}

} // namespace nightsow::planner
