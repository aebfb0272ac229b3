#include "planner/statistics/comparison.hpp"

#include "planner/statistics/sample_size.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace nightsow::planner {
namespace {

// Fisher (1935), tea tasting; R's fisher.test gives 0.4857 and, one-sided, 0.2428571.
TEST(ComparedShares, FishersTestOfTheTea) {
  const FisherTest test = fisher_exact({3, 4}, {1, 4});
  EXPECT_NEAR(test.two_sided, 0.4857, 5.1e-5);
  EXPECT_NEAR(test.greater, 0.2429, 5.1e-5);
}

// Convictions of twins, Fisher (1962), in the help of R's fisher.test: 2 of 17 against 10 of 13.
TEST(ComparedShares, FishersTestOfTheTwins) {
  const FisherTest test = fisher_exact({2, 17}, {10, 13});
  EXPECT_NEAR(test.two_sided, 0.0005367241, 1e-9);
  EXPECT_NEAR(test.less, 0.0004652, 6e-8);
  const OddsRatio odds = odds_ratio({2, 17}, {10, 13});
  // fisher.test prints 0.04693661, 0.003325764 and 0.363182271, whose roots stop at about 1e-4.
  EXPECT_NEAR(odds.ratio, 0.04693661, 6e-8);
  EXPECT_NEAR(odds.limits.low, 0.003325764, 1e-5);
  EXPECT_NEAR(odds.limits.high, 0.363182271, 1e-5);
  // The same roots to their last digits; recorded.R beside this file.
  EXPECT_NEAR(odds.ratio, 0.0469366390497, 1e-11);
  EXPECT_NEAR(odds.limits.low, 0.00331716395066, 1e-11);
  EXPECT_NEAR(odds.limits.high, 0.363189602357, 1e-11);
}

// fisher.test of R 4.2.2, the odds by its roots to the last digits; recorded.R beside this file.
TEST(ComparedShares, FishersTestIsThatOfR) {
  const FisherTest test = fisher_exact({7, 25}, {15, 25});
  EXPECT_NEAR(test.two_sided, 0.0450045404792, 1e-9);
  EXPECT_NEAR(test.less, 0.0225022702396, 1e-9);
  const OddsRatio odds = odds_ratio({7, 25}, {15, 25});
  EXPECT_NEAR(odds.ratio, 0.266883003721, 1e-11);
  EXPECT_NEAR(odds.limits.low, 0.0666019195017, 1e-11);
  EXPECT_NEAR(odds.limits.high, 0.975323846113, 1e-11);
}

// Agresti (2002), Categorical Data Analysis, p. 57, satisfaction with the job by income: p 0.7827.
// Three arms: fisher.test of R 4.2.2; recorded.R.
TEST(ComparedShares, TheExactTestOfLargerTables) {
  const std::vector<std::vector<int>> jobs{
      {1, 2, 1, 0}, {3, 3, 6, 1}, {10, 10, 14, 9}, {6, 7, 12, 11}};
  const std::optional<double> of_jobs = exact_test(jobs);
  ASSERT_TRUE(of_jobs);
  EXPECT_NEAR(*of_jobs, 0.7827, 5.1e-5);
  const std::vector<std::vector<int>> arms{{7, 18}, {15, 10}, {11, 9}};
  EXPECT_NEAR(exact_test(arms).value_or(-1.0), 0.0615872800515, 1e-9);
  const std::vector<std::vector<int>> twins{{2, 15}, {10, 3}};
  EXPECT_NEAR(exact_test(twins).value_or(-1.0), fisher_exact({2, 17}, {10, 13}).two_sided, 1e-12);
}

TEST(ComparedShares, ATableTooLargeToGoThroughIsRefused) {
  const std::vector<std::vector<int>> large(8, std::vector<int>(8, 30));
  EXPECT_FALSE(exact_test(large));
}

// Newcombe (1998), Statistics in Medicine 17: 873-890, Table II, method 10: 56 of 70 against 48 of
// 80 gives 0.0524 to 0.3339, 9 of 10 against 3 of 10 0.1705 to 0.8090, 10 of 10 against 0 of 20
// 0.6791 to 1; from memory.
TEST(ComparedShares, NewcombesDifferenceIsThatOfThePublishedTable) {
  EXPECT_NEAR(newcombe_difference({56, 70}, {48, 80}).low, 0.0524, 5.1e-5);
  EXPECT_NEAR(newcombe_difference({56, 70}, {48, 80}).high, 0.3339, 5.1e-5);
  EXPECT_NEAR(newcombe_difference({9, 10}, {3, 10}).low, 0.1705, 5.1e-5);
  EXPECT_NEAR(newcombe_difference({9, 10}, {3, 10}).high, 0.8090, 5.1e-5);
  EXPECT_NEAR(newcombe_difference({10, 10}, {0, 20}).low, 0.6791, 5.1e-5);
  EXPECT_NEAR(newcombe_difference({10, 10}, {0, 20}).high, 1.0, 5.1e-5);
}

TEST(ComparedShares, OddsAreWithoutEndWhereOneArmHasNothing) {
  const OddsRatio odds = odds_ratio({5, 10}, {0, 10});
  EXPECT_TRUE(std::isinf(odds.ratio));
  EXPECT_TRUE(std::isinf(odds.limits.high));
  EXPECT_GT(odds.limits.low, 1.0);
  EXPECT_EQ(odds_ratio({0, 10}, {5, 10}).ratio, 0.0);
}

// Sedcole (1977), Crop Science 17: 667-668, table, from memory; USDA GIPSA (2000), Sampling for the
// Detection of Biotech Grains, 95 % table, from memory.
TEST(ComparedShares, SeedsForSomePlantsAreThoseOfThePublishedTables) {
  EXPECT_EQ(seeds_for_plants(0.25, 1, 0.95), 11);
  EXPECT_EQ(seeds_for_plants(0.25, 2, 0.95), 18);
  EXPECT_EQ(seeds_for_plants(0.25, 3, 0.95), 23);
  EXPECT_EQ(seeds_for_plants(0.25, 5, 0.95), 34);
  EXPECT_EQ(seeds_for_plants(0.01, 1, 0.95), 299);
  EXPECT_EQ(seeds_for_plants(0.005, 1, 0.95), 598);
  EXPECT_EQ(seeds_for_plants(0.001, 1, 0.95), 2995);
  EXPECT_EQ(seeds_for_plants(0.0, 1, 0.95), std::nullopt);
  EXPECT_EQ(seeds_for_plants(0.3, 0, 0.95), 0);
}

TEST(ComparedShares, SeedsToSettleAreTheFewestThatDo) {
  const std::optional<int> more = seeds_to_settle({5, 20}, {10, 20});
  ASSERT_TRUE(more);
  EXPECT_GT(*more, 0);
  const int seeds = 20 + *more;
  const auto grown = [&](double share) {
    return Count{static_cast<int>(std::lround(share * seeds)), seeds};
  };
  EXPECT_LT(newcombe_difference(grown(0.25), grown(0.5)).high, 0.0);
  EXPECT_EQ(seeds_to_settle({1, 25}, {24, 25}), 0);
  EXPECT_EQ(seeds_to_settle({10, 20}, {10, 20}), std::nullopt);
}

// Fleiss, Levin and Paik (2003), table A.4: 0.25 against 0.50, 95 %, power 0.80: 66 an arm; from
// memory.
TEST(ComparedShares, SeedsAnArmAreThoseOfThePublishedTable) {
  EXPECT_EQ(seeds_an_arm(0.25, 0.50), 66);
  EXPECT_EQ(seeds_an_arm(0.5, 0.25), seeds_an_arm(0.25, 0.5));
  EXPECT_EQ(seeds_an_arm(0.3, 0.3), std::nullopt);
}

} // namespace
} // namespace nightsow::planner
