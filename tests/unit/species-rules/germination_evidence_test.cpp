#include "species-rules/germination_evidence.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace nightsow::species_rules {
namespace {

constexpr ShareRange all_of_it{1, 1, 1};
constexpr std::array<double, 1> right{1.0};

/// The range of a beta distribution by its mean and standard deviation, as the code reads ranges.
ShareRange beta(double a, double b) {
  const double mean = a / (a + b);
  const double deviation = std::sqrt(a * b / ((a + b) * (a + b) * (a + b + 1)));
  return {mean, mean - 1.2815515655446 * deviation, mean + 1.2815515655446 * deviation};
}

SeedBelief sure_to_come_up(const ShareRange& alive) {
  return {alive, all_of_it};
}

// Textbook: a beta prior (a, b) and k of n give beta (a + k, b + n - k).
TEST(GerminationEvidence, WhereAllLivingSeedComesUpItIsTheBetaPriorPlusTheCount) {
  for (const auto& [a, b, k, n] : {std::array{4.0, 2.0, 14.0, 20.0},
                                   {10.0, 10.0, 0.0, 20.0},
                                   {2.0, 2.0, 20.0, 20.0},
                                   {60.0, 40.0, 5.0, 10.0}}) {
    const SeedBelief after =
        after_test(sure_to_come_up(beta(a, b)), {static_cast<int>(k), static_cast<int>(n)}, right);
    EXPECT_NEAR(after.alive.share, (a + k) / (a + b + n), 0.002) << k << " of " << n;
  }
}

// Uniform prior and 14 of 20: beta (15, 7); its quantiles by the exact sum of binomials (the chance
// that beta (15, 7) is at most x is that of 15 or more of 21 at x), reckoned apart in Python.
TEST(GerminationEvidence, TheRangeIsThatOfTheBetaDistribution) {
  const SeedBelief after = after_test(sure_to_come_up(beta(1, 1)), {14, 20}, right);
  // The range given ends at 0.13 and 0.87, the tenths of a uniform one at 0.1 and 0.9: of that 0.03
  // a ninth is left, as of the variance (1/12 before, 0.0093 after).
  EXPECT_NEAR(after.alive.low, 0.55229 + 0.0034, 0.001);
  EXPECT_NEAR(after.alive.high, 0.80381 - 0.0034, 0.001);
}

// Ranges as half-lives and rules make them: skewed, narrow, near an end.
TEST(GerminationEvidence, ATestThatSuitedNothingLeavesTheBeliefAsItWas) {
  constexpr std::array<double, 1> wrong{0.0};
  for (const ShareRange& before : {ShareRange{0.6, 0.2, 0.75},
                                   ShareRange{0.93, 0.6, 0.95},
                                   ShareRange{0.05, 0.01, 0.4},
                                   ShareRange{0.5, 0.49, 0.51}}) {
    const SeedBelief after = after_test({before, before}, {0, 20}, wrong);
    for (const ShareRange& range : {after.alive, after.germination}) {
      EXPECT_NEAR(range.share, before.share, 1e-9);
      EXPECT_NEAR(range.low, before.low, 1e-9);
      EXPECT_NEAR(range.high, before.high, 1e-9);
    }
  }
}

TEST(GerminationEvidence, ManySeedsOutweighWhateverSkewedRangeWasBelieved) {
  const ShareRange after = after_test(sure_to_come_up({0.9, 0.3, 0.92}), {400, 1000}, right).alive;
  EXPECT_NEAR(after.share, 0.4, 0.01);
  EXPECT_NEAR(after.low, 0.38, 0.01); // 1.28 standard deviations of 1000 seeds: 0.02
  EXPECT_NEAR(after.high, 0.42, 0.01);
}

TEST(GerminationEvidence, ThePoorerTheTestFitsTheLessABadResultSays) {
  const ShareRange before = beta(6, 4);
  double last = 0.0;
  for (const double fit : {1.0, 0.6, 0.3, 0.1}) {
    const std::array<double, 1> fits{fit};
    const double alive = after_test(sure_to_come_up(before), {1, 20}, fits).alive.share;
    EXPECT_GT(alive, last) << fit;
    EXPECT_LT(alive, before.share) << fit;
    last = alive;
  }
}

TEST(GerminationEvidence, WhatCameUpWasAliveHoweverPoorlyTheTestFits) {
  constexpr std::array<double, 1> poor{0.05};
  EXPECT_GT(after_test(sure_to_come_up(beta(2, 3)), {18, 20}, poor).alive.share, 0.8);
}

TEST(GerminationEvidence, AKindOfWhichFewComeUpIsNotTakenForDead) {
  const ShareRange alive = beta(18, 4);
  const SeedBelief few{alive, {0.3, 0.15, 0.5}};
  const SeedBelief after = after_test(few, {5, 20}, right);
  EXPECT_GT(after.alive.share, 0.75);
  EXPECT_LT(after_test(sure_to_come_up(alive), {5, 20}, right).alive.share, 0.65);
  EXPECT_LT(after.germination.share, 0.35);
}

TEST(GerminationEvidence, MoreSeedsMakeTheRangeNarrower) {
  const auto width = [](int k, int n) {
    const ShareRange alive = after_test(sure_to_come_up(beta(1, 1)), {k, n}, right).alive;
    return alive.high - alive.low;
  };
  EXPECT_LT(width(70, 100), width(14, 20));
  EXPECT_LT(width(14, 20), width(7, 10));
}

SeedParameters cool_starter() {
  SeedParameters seed;
  seed.release = ReleaseLimit{14, 2.5, 0.15};
  seed.thermal_time_c_d = 150;
  seed.thermal_time_spread = 0.35;
  return seed;
}

TEST(GerminationEvidence, ATestInWarmthSuitsFewSeedsThatWaitForCool) {
  EXPECT_GT(test_fit(cool_starter(), 10), 0.9);
  EXPECT_NEAR(test_fit(cool_starter(), 14), 0.575, 0.01); // half, and the indifferent
  EXPECT_LT(test_fit(cool_starter(), 24), 0.2);
  EXPECT_EQ(test_fit(cool_starter(), 35), 0.0); // over the ceiling nothing comes up
}

TEST(GerminationEvidence, ATestInTheColdSuitsNoHotStarter) {
  SeedParameters seed = cool_starter();
  seed.start = Start::hot;
  seed.cardinal = {12, 28, 40};
  seed.release->limit_c = 20;
  EXPECT_GT(test_fit(seed, 27), 0.9);
  EXPECT_LT(test_fit(seed, 14), 0.2);
}

// By hand: ten of ten sure seeds, half of them taken for ripe. Of each tenth more that is ripe
// after all the chance beforehand is 0.01; Bayes.
TEST(GerminationEvidence, ATestShowsRipenessByTheRuleOfBayes) {
  const SeedBelief sure{all_of_it, all_of_it};
  double total = 0.9 * std::pow(0.5, 10);
  double sum = 0.0;
  for (int step = 1; step <= 10; ++step) {
    const double chance = 0.01 * std::pow(0.5 + 0.05 * step, 10);
    total += chance;
    sum += chance * step / 10.0;
  }
  const double beforehand = 0.1 * 0.55;
  EXPECT_NEAR(needs_no_ripening(sure, {10, 10}, right, 0.5),
              (sum / total - beforehand) / (1.0 - beforehand),
              1e-6);
}

TEST(GerminationEvidence, AFewThatComeUpDoNotShowThatAllIsRipe) {
  const SeedBelief sure{all_of_it, all_of_it};
  const double few = needs_no_ripening(sure, {4, 20}, right, 0.0);
  EXPECT_GT(few, 0.15);
  EXPECT_LT(few, 0.4);
}

TEST(GerminationEvidence, AFewInSpiteOfAWrongWarmthShowNothingOfRipeness) {
  const SeedBelief sure{all_of_it, all_of_it};
  constexpr std::array<double, 1> poor{0.1};
  EXPECT_EQ(needs_no_ripening(sure, {2, 20}, poor, 0.1), 0.0);
  EXPECT_GT(needs_no_ripening(sure, {16, 20}, poor, 0.1), 0.5);
}

TEST(GerminationEvidence, ATestThatIsNoLikelierOfRipeSeedLeavesUnripenessAsItWas) {
  const SeedBelief sure{all_of_it, all_of_it};
  EXPECT_EQ(needs_no_ripening(sure, {5, 10}, right, 0.5), 0.0);
  EXPECT_EQ(needs_no_ripening(sure, {0, 10}, right, 0.0), 0.0);
  EXPECT_NEAR(needs_no_ripening(sure, {10, 10}, right, 1.0), 0.0, 1e-12);
}

TEST(GerminationEvidence, TheGerminationOfLivingSeedIsThatOfFreshSeedWithoutItsDead) {
  const ShareRange germination = germination_of_living({0.6, 0.4, 0.98, {}});
  EXPECT_NEAR(germination.share, 0.6 / 0.95, 0.0001);
  EXPECT_EQ(germination.high, 1.0);
}

} // namespace
} // namespace nightsow::species_rules
