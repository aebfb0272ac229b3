#include "planner/answers/water_window.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using support::day;

TEST(WaterWindow, HoldsTheDaysThatLoseATwentiethOrLess) {
  const auto window = water_window(day("2026-04-01"), {0.1, 0.38, 0.385, 0.4, 0.381, 0.3}, {});
  ASSERT_TRUE(window);
  EXPECT_EQ(window->best, day("2026-04-04"));
  EXPECT_EQ(window->from, day("2026-04-02"));
  EXPECT_EQ(window->to, day("2026-04-05"));
  EXPECT_EQ(window->plants_share, 0.4);
}

TEST(WaterWindow, IsAsWideAsHalfAPlantWhereThatIsMore) {
  const auto window = water_window(day("2026-04-01"), {0.3, 0.35, 0.4, 0.33, 0.3}, 8.0);
  EXPECT_EQ(window->from, day("2026-04-02"));
  EXPECT_EQ(window->to, day("2026-04-03"));
}

TEST(WaterWindow, NeverLosesMoreThanAFifth) {
  const auto window = water_window(day("2026-04-01"), {0.1, 0.31, 0.33, 0.4}, 2.0);
  EXPECT_EQ(window->from, day("2026-04-03"));
}

TEST(WaterWindow, IsNotThereWhereNothingIsToBeExpected) {
  EXPECT_FALSE(water_window(day("2026-04-01"), {}, {}));
  EXPECT_FALSE(water_window(day("2026-04-01"), {0.0, 0.0}, {}));
  EXPECT_FALSE(water_window(day("2026-04-01"), {0.004, 0.003}, 10.0));
}

} // namespace
} // namespace nightsow::planner
