#include "planner/model/learned_shares.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

// Invented sowings of two genera of one family and one of another.
std::vector<SownKind> sowings() {
  return {{"Albuca spiralis", "Albuca", "Asparagaceae", {16, 20}},
          {"Albuca spiralis", "Albuca", "Asparagaceae", {18, 25}},
          {"Albuca humilis", "Albuca", "Asparagaceae", {1, 2}},
          {"Lachenalia aloides", "Lachenalia", "Asparagaceae", {12, 20}},
          {"Monsonia crassicaulis", "Monsonia", "Geraniaceae", {2, 20}},
          {"Monsonia crassicaulis", "Monsonia", "Geraniaceae", {1, 15}}};
}

const LearnedShare& named(const std::vector<LearnedShare>& list, const std::string& name) {
  return *std::find_if(
      list.begin(), list.end(), [&](const LearnedShare& one) { return one.name == name; });
}

TEST(SharesLearned, StandFromTheGardenDownToTheTaxa) {
  const std::vector<LearnedShare> list = learned_shares(sowings());
  ASSERT_EQ(list.size(), 1U + 2U + 3U + 4U);
  EXPECT_EQ(list.front().level, KindLevel::garden);
  EXPECT_EQ(list.front().count.sown, 102);
  EXPECT_EQ(list.front().count.came, 50);
  EXPECT_EQ(named(list, "Albuca").sowings, 3);
  EXPECT_EQ(list.back().level, KindLevel::taxon);
}

TEST(SharesLearned, LieBetweenTheKindsOwnAndItsRelatives) {
  const std::vector<LearnedShare> list = learned_shares(sowings());
  const LearnedShare& often = named(list, "Albuca spiralis");
  EXPECT_LT(often.share, 34.0 / 45.0);
  EXPECT_GT(often.share, list.front().share);
  const LearnedShare& once = named(list, "Albuca humilis");
  EXPECT_GT(once.share, 0.5);
  EXPECT_GT(once.leaned, often.leaned);
  EXPECT_GT(once.limits.high - once.limits.low, often.limits.high - often.limits.low);
}

TEST(SharesLearned, OthersCountsOfLowerWeightMoveThemLess) {
  std::vector<SownKind> list = sowings();
  list.push_back({"Albuca humilis", "Albuca", "Asparagaceae", {0, 30}, 1.0});
  const double full = named(learned_shares(list), "Albuca humilis").share;
  list.back().weight = 0.2;
  const double low = named(learned_shares(list), "Albuca humilis").share;
  EXPECT_LT(full, low);
  EXPECT_LT(low, named(learned_shares(sowings()), "Albuca humilis").share);
}

TEST(SharesLearned, NothingSownTeachesNothing) {
  EXPECT_TRUE(learned_shares({}).empty());
  EXPECT_TRUE(
      learned_shares(std::vector<SownKind>{{"Oxalis", "Oxalis", "Oxalidaceae", {}}}).empty());
}

TEST(ArmsCompared, AreSettledOrSayHowManySeedsMore) {
  const ComparedArms open = compared_arms({12, 20}, {7, 20});
  EXPECT_NEAR(open.difference, 0.25, 1e-12);
  EXPECT_FALSE(open.settled);
  ASSERT_TRUE(open.more_seeds_an_arm);
  EXPECT_GT(*open.more_seeds_an_arm, 0);
  const ComparedArms clear = compared_arms({19, 20}, {3, 20});
  EXPECT_TRUE(clear.settled);
  EXPECT_EQ(clear.more_seeds_an_arm, 0);
  EXPECT_LT(clear.chance, 0.001);
}

} // namespace
} // namespace nightsow::planner
