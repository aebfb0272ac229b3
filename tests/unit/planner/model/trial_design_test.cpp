#include "planner/model/trial_design.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

namespace nightsow::planner {
namespace {

TEST(TrialsPlanned, TheOneThatWouldTeachMostStandsFirst) {
  const std::vector<TrialIdea> ideas{{"a small difference", 40, 0.5, 0.55, 1.0},
                                     {"a large difference", 40, 0.2, 0.7, 1.0},
                                     {"alike", 40, 0.4, 0.4, 1.0},
                                     {"one seed", 1, 0.1, 0.9, 1.0},
                                     {"between", 40, 0.3, 0.6, 1.0}};
  const std::vector<PlannedTrial> trials = planned_trials(ideas, 2);
  ASSERT_EQ(trials.size(), 2U);
  EXPECT_EQ(trials.at(0).name, "a large difference");
  EXPECT_EQ(trials.at(1).name, "between");
  EXPECT_EQ(trials.at(0).seeds_an_arm, 20);
  EXPECT_GT(trials.at(0).power, 0.8);
}

TEST(TrialsPlanned, MoreSeedsSettleMore) {
  EXPECT_LT(chance_to_settle(0.25, 0.5, 20), chance_to_settle(0.25, 0.5, 60));
  EXPECT_LT(chance_to_settle(0.5, 0.5, 40), 0.08);
}

TEST(TrialsPlanned, PotsAreDrawnEvenlyAndTheSameEveryTime) {
  const std::vector<int> arms = drawn_arms(12, 3, 42);
  for (int arm = 0; arm < 3; ++arm) {
    EXPECT_EQ(std::count(arms.begin(), arms.end(), arm), 4);
  }
  EXPECT_EQ(arms, drawn_arms(12, 3, 42));
  EXPECT_NE(arms, drawn_arms(12, 3, 43));
  EXPECT_TRUE(drawn_arms(0, 2, 1).empty());
}

TEST(TrialsPlanned, EachPotMeetsEachArmAsOften) {
  int first_of_arm_one = 0;
  for (std::uint32_t number = 0; number < 2000; ++number) {
    first_of_arm_one += drawn_arms(4, 2, number).front();
  }
  EXPECT_NEAR(first_of_arm_one, 1000, 100);
}

} // namespace
} // namespace nightsow::planner
