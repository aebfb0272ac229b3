#include "planner/model/learned_effects.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace nightsow::planner {
namespace {

// Invented sowings: old seed of two kinds comes half as well as fresh.
std::vector<EffectSowing> sowings() {
  return {{"Albuca", {24, 30}, 3, 0.4, "open bench"},
          {"Albuca", {9, 30}, 3, 2.4, "open bench"},
          {"Albuca", {22, 30}, 3, 0.5, "cold frame"},
          {"Bulbine", {20, 30}, 3, 0.5, "open bench"},
          {"Bulbine", {7, 30}, 3, 2.6, "open bench"},
          {"Bulbine", {21, 30}, 3, 0.4, "cold frame"}};
}

TEST(EffectsLearned, OldSeedComesWorse) {
  const LearnedEffect age = learned_effects(sowings()).front();
  ASSERT_FALSE(age.refused);
  EXPECT_TRUE(age.against.empty());
  EXPECT_LT(age.share, age.usual_share);
  EXPECT_LT(age.limits.low, age.share);
  EXPECT_GT(age.limits.high, age.share);
  EXPECT_TRUE(age.settled);
}

TEST(EffectsLearned, ABenchIsComparedWithTheOneOfMostSowings) {
  const std::vector<LearnedEffect> effects = learned_effects(sowings());
  ASSERT_EQ(effects.size(), 2U);
  EXPECT_EQ(effects[1].bench, "cold frame");
  EXPECT_EQ(effects[1].against, "open bench");
  ASSERT_FALSE(effects[1].refused);
  EXPECT_FALSE(effects[1].settled);
}

TEST(EffectsLearned, FewSowingsSayLittle) {
  const Interval of_many = learned_effects(sowings()).front().limits;
  std::vector<EffectSowing> small = sowings();
  for (EffectSowing& sowing : small) {
    sowing.count = {sowing.count.came / 6, sowing.count.sown / 6};
  }
  const Interval of_few = learned_effects(small).front().limits;
  EXPECT_GT(of_few.high - of_few.low, 1.2 * (of_many.high - of_many.low));
}

TEST(EffectsLearned, AreRefusedWhereNothingDiffersWithinAKind) {
  std::vector<EffectSowing> alike = sowings();
  for (EffectSowing& sowing : alike) {
    sowing.age_years = sowing.kind == "Albuca" ? 0.5 : 3.0;
    sowing.bench = sowing.kind == "Albuca" ? "open bench" : "cold frame";
  }
  const std::vector<LearnedEffect> effects = learned_effects(alike);
  EXPECT_EQ(effects[0].refused, EffectRefusal::nothing_differs);
  EXPECT_EQ(effects[1].refused, EffectRefusal::nothing_differs);
}

TEST(EffectsLearned, NothingAndOneSowingAreTooFew) {
  EXPECT_EQ(learned_effects({}).front().refused, EffectRefusal::too_few_sowings);
  EXPECT_EQ(learned_effects(std::vector{sowings().front()}).front().refused,
            EffectRefusal::too_few_sowings);
}

} // namespace
} // namespace nightsow::planner
