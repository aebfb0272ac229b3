#include "planner/model/seeds_to_sow.hpp"

#include "planner/model/count_range.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace nightsow::planner {
namespace {

// The beta-binomial written out, count by count, in the other form.
double plain_chance(int wanted, int n, const std::vector<double>& shares, double correlation) {
  double chance = 0.0;
  for (const double share : shares) {
    const std::vector<double> counts = beta_binomial(n, share, correlation);
    for (int k = wanted; k <= n; ++k) {
      chance += counts.at(static_cast<std::size_t>(k)) / static_cast<double>(shares.size());
    }
  }
  return chance;
}

TEST(SeedsToSow, ChanceEqualsTheSumOfTheDistribution) {
  const std::vector<double> shares{0.05, 0.2, 0.35, 0.6, 0.97};
  for (const int n : {1, 7, 40, 150}) {
    for (const int wanted : {0, 1, 4, 12}) {
      const double plain = wanted > n ? 0.0 : plain_chance(wanted, n, shares, 0.1);
      EXPECT_NEAR(chance_of_at_least(wanted, n, shares, 0.1), plain, 1e-9) << n << ' ' << wanted;
    }
  }
}

// Families of twelve children (Geissler 1889), beta-binomial with alpha 34.1350 and beta 31.6085;
// expected counts as often reprinted, from memory: 2.3 + 22.6 + 104.8 of 6115 have under three.
TEST(SeedsToSow, ChanceAgreesWithThePublishedFamilies) {
  const std::vector<double> share{34.1350 / (34.1350 + 31.6085)};
  const double correlation = 1.0 / (34.1350 + 31.6085 + 1.0);
  const double fewer = (2.3 + 22.6 + 104.8) / 6115.0;
  EXPECT_NEAR(chance_of_at_least(3, 12, share, correlation), 1.0 - fewer, 0.4 / 6115.0);
}

// For one plant and pots alike: n = ceil(ln(1 - q) / ln(1 - p)), standard.
TEST(SeedsToSow, ForOnePlantFollowTheClosedForm) {
  for (const double p : {0.03, 0.1, 0.3, 0.55}) {
    for (const double q : {0.8, 0.9, 0.95}) {
      const std::vector<double> share{p};
      const int closed = static_cast<int>(std::ceil(std::log(1.0 - q) / std::log(1.0 - p)));
      EXPECT_EQ(seeds_to_sow(1, q, share, 1e-7), closed) << p << ' ' << q;
    }
  }
}

TEST(SeedsToSow, AreTheFewestThatDo) {
  const std::vector<double> shares{0.2, 0.3, 0.45, 0.5, 0.7};
  int before = 0;
  for (const double chance : {0.8, 0.9, 0.95}) {
    const std::optional<int> seeds = seeds_to_sow(8, chance, shares, 0.1);
    ASSERT_TRUE(seeds);
    EXPECT_GE(plain_chance(8, *seeds, shares, 0.1), chance);
    EXPECT_LT(plain_chance(8, *seeds - 1, shares, 0.1), chance);
    EXPECT_GT(*seeds, before);
    before = *seeds;
  }
}

TEST(SeedsToSow, AreNoNumberWhereSomeSeasonsGiveNothing) {
  const std::vector<double> shares{0.0, 0.0, 0.5, 0.6};
  EXPECT_FALSE(seeds_to_sow(1, 0.8, shares, 0.1));
}

TEST(SeedsToSow, AreNeverWorthLessWhenThereAreMore) {
  const std::vector<double> shares{0.02, 0.15, 0.4, 0.9};
  double before = 0.0;
  for (int n = 0; n <= 200; ++n) {
    const double chance = chance_of_at_least(5, n, shares, 0.1);
    EXPECT_GE(chance, before - 1e-12) << n;
    before = chance;
  }
}

} // namespace
} // namespace nightsow::planner
