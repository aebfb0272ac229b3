// Published figures for scores of forecasts, each with its source beside it.
#include "climate/scores.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

namespace nightsow::climate {
namespace {

TEST(Scores, FairCrpsOfSmallEnsembles) {
  struct Case {
    std::vector<double> members;
    double observed;
    double expected;
  };

  // source: Python package scores (Bureau of Meteorology), crps_test_data.py, EXP_CRPSENS_FAIR;
  // the last one (a single member, its ordinary form) from EXP_CRPSENS_ECDF.
  const std::vector<Case> cases{{{0, 4, 3, 7}, 2, 2.0 / 3.0},
                                {{1, -1, 2, 4}, 3, 2.0 / 3.0},
                                {{0, 1, 4}, 1, 0.0},
                                {{2}, 4, 2.0}};
  for (const Case& one : cases) {
    EXPECT_NEAR(fair_crps(one.members, one.observed), one.expected, 1e-12) << one.observed;
  }
}

TEST(Scores, BrierScoreOfOneForecast) {
  // source: worked list of the encyclopedia article "Brier score".
  EXPECT_NEAR(brier_score(1.0, false), 1.0, 1e-12);
  EXPECT_NEAR(brier_score(0.7, true), 0.09, 1e-12);
  EXPECT_NEAR(brier_score(0.3, true), 0.49, 1e-12);
  EXPECT_NEAR(brier_score(0.5, true), 0.25, 1e-12);
}

TEST(Scores, FairCrpsOfManyEvenlySpacedNormalQuantilesNearsThatOfTheNormal) {
  // No outside figure: two ways to the same number. Members stand at a fine grid of a normal with
  // mean 3 and deviation 2, found by bisection on its distribution function.
  std::vector<double> members;
  constexpr int count = 4000;
  for (int i = 0; i < count; ++i) {
    const double share = (i + 0.5) / count;
    double low = -8.0;
    double high = 8.0;
    for (int step = 0; step < 60; ++step) {
      const double middle = 0.5 * (low + high);
      (0.5 * std::erfc(-middle / std::numbers::sqrt2) < share ? low : high) = middle;
    }
    members.push_back(3.0 + 2.0 * low);
  }
  for (const double observed : {-2.0, 3.0, 4.5, 9.0}) {
    EXPECT_NEAR(fair_crps(members, observed), normal_crps(3.0, 2.0, observed), 2e-3) << observed;
  }
}

TEST(Scores, MiddleRankCountsEqualMembersHalf) {
  EXPECT_DOUBLE_EQ(middle_rank(std::vector<double>{1, 2, 2, 3}, 2), 0.5);
  EXPECT_DOUBLE_EQ(middle_rank(std::vector<double>{1, 2, 2, 3}, 0), 0.0);
  EXPECT_DOUBLE_EQ(middle_rank(std::vector<double>{1, 2, 2, 3}, 4), 1.0);
  EXPECT_DOUBLE_EQ(middle_rank(std::vector<double>{1, 2, 2, 3}, 1), 0.125);
}

TEST(Scores, NoMembersHaveNoScore) {
  EXPECT_TRUE(std::isnan(fair_crps({}, 1.0)));
  EXPECT_TRUE(std::isnan(middle_rank({}, 1.0)));
}

} // namespace
} // namespace nightsow::climate
