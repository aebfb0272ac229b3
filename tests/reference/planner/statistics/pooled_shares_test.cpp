#include "planner/statistics/pooled_shares.hpp"

#include "planner/model/count_range.hpp"

#include <gtest/gtest.h>

#include <array>
#include <vector>

namespace nightsow::planner {
namespace {

// optim (BFGS) of R 4.2.2 on the same likelihood; recorded.R beside this file. optim stops at about
// 1e-6 of the parameters.
TEST(PooledShares, TheFitIsThatOfR) {
  const std::vector<Count> sowings{
      {3, 20}, {12, 25}, {7, 20}, {0, 15}, {18, 25}, {9, 30}, {5, 10}, {14, 20}};
  const std::optional<BetaFit> fit = fit_beta_binomial(sowings);
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->shares.a, 1.56576158297, 1e-5);
  EXPECT_NEAR(fit->shares.b, 2.42937908835, 1e-5);
  EXPECT_NEAR(fit->log_likelihood, -23.1774564443, 1e-9);
}

// Sex of the first twelve children in 6115 families (Geissler 1889): observed families by number of
// boys, from memory. The alpha 34.1350 and beta 31.6085 often printed beside them are the fit by
// moments; nlm of R 4.2.2 on the likelihood gives these, recorded.R.
TEST(PooledShares, TheFitIsThatOfThePublishedFamilies) {
  constexpr std::array observed{3, 24, 104, 286, 670, 1033, 1343, 1112, 829, 478, 181, 45, 7};
  std::vector<Count> families;
  for (std::size_t boys = 0; boys < observed.size(); ++boys) {
    families.insert(
        families.end(), static_cast<std::size_t>(observed.at(boys)), {static_cast<int>(boys), 12});
  }
  const std::optional<BetaFit> fit = fit_beta_binomial(families);
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->shares.a, 34.1029, 0.002);
  EXPECT_NEAR(fit->shares.b, 31.5782, 0.002);
}

TEST(PooledShares, SowingsAsAlikeAsChanceAllowsAreTakenAsAlike) {
  const std::vector<Count> sowings{{5, 10}, {5, 10}, {5, 10}};
  const std::optional<BetaFit> fit = fit_beta_binomial(sowings);
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->shares.mean(), 0.5, 1e-6);
  EXPECT_LT(fit->shares.correlation(), 1e-2);
}

TEST(PooledShares, TooLittleIsRefused) {
  EXPECT_FALSE(fit_beta_binomial(std::vector<Count>{{5, 10}}));
  EXPECT_FALSE(fit_beta_binomial(std::vector<Count>{{0, 10}, {0, 20}}));
  EXPECT_FALSE(fit_beta_binomial(std::vector<Count>{{10, 10}, {20, 20}}));
}

TEST(PooledShares, OwnCountsMoveTheShareTowardThem) {
  const BetaShares before{2.0, 3.0};
  EXPECT_NEAR(given(before, {10, 10}).mean(), 12.0 / 15.0, 1e-12);
  EXPECT_NEAR(given(before, {0, 0}).mean(), before.mean(), 1e-12);
}

TEST(PooledShares, QuantilesOfCountsAddUp) {
  const BetaShares shares{34.1350, 31.6085};
  const std::vector<double> chances = beta_binomial(12, shares.mean(), shares.correlation());
  double so_far = 0.0;
  for (int k = 0; k <= 12; ++k) {
    so_far += chances.at(static_cast<std::size_t>(k));
    EXPECT_EQ(count_quantile(shares, 12, so_far - 1e-6), k);
  }
}

} // namespace
} // namespace nightsow::planner
