#include "planner/model/learned_times.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace nightsow::planner {
namespace {

TEST(TimesLearned, StandBetweenTwoLooks) {
  const std::vector<TimedSowing> sowings{{10, {{7, 0}, {14, 2}, {21, 6}, {35, 8}}}};
  const LearnedTimes times = learned_times(sowings);
  EXPECT_EQ(times.came, 8);
  ASSERT_TRUE(times.first);
  EXPECT_EQ(times.first->after, 7);
  EXPECT_EQ(times.first->by, 14);
  // Four of the eight that came are there by day 21, five of ten sown as well.
  ASSERT_TRUE(times.half);
  EXPECT_EQ(times.half->after, 14);
  EXPECT_EQ(times.half->by, 21);
  ASSERT_TRUE(times.half_sown);
  EXPECT_EQ(times.half_sown->by, 21);
  EXPECT_NEAR(times.came_share, 0.8, 1e-9);
}

TEST(TimesLearned, SeedThatIsNotUpHasWaitedAndNotFailed) {
  // The second sowing was looked at once only, early: its seeds say nothing of later days.
  const std::vector<TimedSowing> sowings{{10, {{10, 0}, {30, 8}}}, {10, {{10, 0}}}};
  const LearnedTimes times = learned_times(sowings);
  EXPECT_NEAR(times.came_share, 0.8, 1e-9);
  EXPECT_EQ(times.seeds, 20);
}

TEST(TimesLearned, HalfOfAllSownIsEmptyWhereFewerCame) {
  const LearnedTimes times = learned_times(std::vector<TimedSowing>{{20, {{10, 2}, {20, 4}}}});
  EXPECT_FALSE(times.half_sown);
  ASSERT_TRUE(times.half);
  EXPECT_EQ(times.half->by, 10);
}

TEST(TimesLearned, NothingCameAndNothingLookedAtHaveNoDays) {
  const LearnedTimes none = learned_times(std::vector<TimedSowing>{{20, {{10, 0}, {20, 0}}}});
  EXPECT_EQ(none.sowings, 1);
  EXPECT_FALSE(none.first);
  EXPECT_EQ(learned_times(std::vector<TimedSowing>{{20, {}}}).sowings, 0);
  EXPECT_EQ(learned_times({}).sowings, 0);
}

} // namespace
} // namespace nightsow::planner
