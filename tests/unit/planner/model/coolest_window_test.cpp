#include "planner/model/coolest_window.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace nightsow::planner {
namespace {

TEST(BestWindow, CountsTheCoolNightsOfTheCoolestWeek) {
  const std::vector<double> nights{20, 12, 12, 20, 12, 20, 20, 20, 20};
  const BestWindow best = best_window(nights, 5, 7, 13.0, NightsWanted::cool);
  EXPECT_EQ(best.met, 3);
  EXPECT_EQ(best.deciding_c, 20.0);
  EXPECT_FALSE(best.day);
}

TEST(BestWindow, TellsTheDayOnWhichTheLimitWasMetFirst) {
  const std::vector<double> nights{20, 12, 12, 13, 12, 13, 20, 10, 10};
  const BestWindow best = best_window(nights, 5, 7, 13.0, NightsWanted::cool);
  EXPECT_EQ(best.day, 6);
  EXPECT_EQ(best.met, 6);
  EXPECT_EQ(best.deciding_c, 13.0);
}

TEST(BestWindow, TurnsRoundForSeedThatWaitsForWarmth) {
  const std::vector<double> nights{20, 22, 23, 20, 24, 22, 22};
  const BestWindow best = best_window(nights, 5, 7, 21.0, NightsWanted::warm);
  EXPECT_EQ(best.met, 5);
  EXPECT_EQ(best.deciding_c, 22.0);
  EXPECT_EQ(best.day, 6);
}

TEST(BestWindow, FewerNightsThanAWindowDecideNothing) {
  const std::vector<double> nights{10, 10, 10, 10, 10};
  const BestWindow best = best_window(nights, 5, 7, 13.0, NightsWanted::cool);
  EXPECT_EQ(best.met, 5);
  EXPECT_FALSE(best.deciding_c);
  EXPECT_FALSE(best.day);
}

} // namespace
} // namespace nightsow::planner
