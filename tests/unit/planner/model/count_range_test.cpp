#include "planner/model/count_range.hpp"

#include <gtest/gtest.h>

#include <numeric>
#include <vector>

namespace nightsow::planner {
namespace {

TEST(BetaBinomial, WithoutCorrelationIsTheBinomial) {
  const std::vector<double> chances = beta_binomial(10, 0.5, 0.0);
  EXPECT_NEAR(chances.at(5), 252.0 / 1024.0, 1e-12);
  EXPECT_NEAR(chances.at(0), 1.0 / 1024.0, 1e-12);
}

TEST(BetaBinomial, SumsToOneAndKeepsItsMean) {
  for (const double share : {0.0, 1e-12, 0.02, 0.4, 0.97, 1.0}) {
    const std::vector<double> chances = beta_binomial(40, share, 0.1);
    double mean = 0.0;
    for (std::size_t k = 0; k < chances.size(); ++k) {
      mean += static_cast<double>(k) * chances[k];
    }
    EXPECT_NEAR(std::accumulate(chances.begin(), chances.end(), 0.0), 1.0, 1e-9) << share;
    EXPECT_NEAR(mean, 40.0 * share, 1e-6) << share;
  }
}

TEST(CountRange, OfNoSeedIsNone) {
  const CountRange range = count_range(0, std::vector{0.5}, 0.1);
  EXPECT_EQ(range.mean, 0.0);
  EXPECT_EQ(range.p90, 0);
}

TEST(CountRange, UnlikeSharesMakeItWider) {
  const CountRange sure = count_range(100, std::vector{0.5, 0.5}, 0.0);
  const CountRange unsure = count_range(100, std::vector{0.3, 0.7}, 0.0);
  EXPECT_DOUBLE_EQ(sure.mean, unsure.mean);
  EXPECT_EQ(sure.p10, 44); // quantiles of Bin(100, 0.5), as tables have them
  EXPECT_EQ(sure.p90, 56);
  EXPECT_LT(unsure.p10, 35);
  EXPECT_GT(unsure.p90, 65);
}

TEST(CountRange, PotsThatDifferMakeItWider) {
  EXPECT_LT(count_range(40, std::vector{0.5}, 0.1).p10, count_range(40, std::vector{0.5}, 0.0).p10);
}

} // namespace
} // namespace nightsow::planner
