#include "species-rules/growth.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace nightsow::species_rules {
namespace {

TEST(Growth, AWinterGrowerLivesBetweenThreeAndTwentySevenDegrees) {
  for (const auto& [mean_c, rate] : {std::pair{-10.0, 0.0},
                                     {3.0, 0.0},
                                     {6.5, 0.5},
                                     {10.0, 1.0},
                                     {17.0, 1.0},
                                     {22.0, 0.5},
                                     {27.0, 0.0},
                                     {40.0, 0.0}}) {
    EXPECT_DOUBLE_EQ(winter_growth_rate(mean_c), rate) << mean_c;
  }
}

TEST(Growth, ASummerGrowerLivesBetweenTwelveAndFortyTwoDegrees) {
  for (const auto& [mean_c, rate] : {std::pair{5.0, 0.0},
                                     {12.0, 0.0},
                                     {16.0, 0.5},
                                     {20.0, 1.0},
                                     {30.0, 1.0},
                                     {36.0, 0.5},
                                     {42.0, 0.0}}) {
    EXPECT_DOUBLE_EQ(summer_growth_rate(mean_c), rate) << mean_c;
  }
}

TEST(HeatRest, NothingAddsUpWhileItIsCoolHoweverLongTheDay) {
  EXPECT_DOUBLE_EQ(heat_rest_rate(10, 15), 0.0);
  EXPECT_DOUBLE_EQ(heat_rest_rate(2, 15), 0.0);
}

TEST(HeatRest, WarmthCountsAFifthInShortDaysAndFullyInLongOnes) {
  EXPECT_DOUBLE_EQ(heat_rest_rate(22, 9), 0.2);
  EXPECT_DOUBLE_EQ(heat_rest_rate(22, 11), 0.2);
  EXPECT_DOUBLE_EQ(heat_rest_rate(22, 12.5), 0.6);
  EXPECT_DOUBLE_EQ(heat_rest_rate(22, 14), 1.0);
  EXPECT_DOUBLE_EQ(heat_rest_rate(35, 16), 1.0);
  EXPECT_DOUBLE_EQ(heat_rest_rate(16, 14), 0.5);
}

TEST(HeatRest, TwentyFullDaysBeginTheRestWhereNoRuleSaysOtherwise) {
  EXPECT_DOUBLE_EQ(default_rest_sum, 20 * heat_rest_rate(25, 15));
}

} // namespace
} // namespace nightsow::species_rules
