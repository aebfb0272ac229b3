#include "species-rules/drying.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

TEST(Drying, ShadeGritAndBagMultiplyButNeverStopIt) {
  EXPECT_DOUBLE_EQ(evaporation_factor({}), 1.0);
  EXPECT_DOUBLE_EQ(evaporation_factor({.shade = 0.5}), 0.5);
  EXPECT_DOUBLE_EQ(evaporation_factor({.shade = 0.5, .grit = true}), 0.2);
  EXPECT_DOUBLE_EQ(evaporation_factor({.shade = 0.5, .grit = true, .closed_bag = true}), 0.1);
  EXPECT_DOUBLE_EQ(evaporation_factor({.shade = 1.0}), 0.1);
}

TEST(Drying, SeedAtTheSurfaceIsDryInHalfOfThePotsAtFourMillimetres) {
  EXPECT_DOUBLE_EQ(dry_share(4.0, 0.0), 0.5);
  EXPECT_DOUBLE_EQ(dry_share(10.0, 10.0), 0.5);
  EXPECT_EQ(dry_share(0.0, 0.0), 0.0);
}

TEST(Drying, WaterByNeedLeavesFewPotsDry) {
  EXPECT_LT(dry_share(usual_watering_point_mm, 0.0), 0.05);
  EXPECT_GT(dry_share(8.0, 0.0), 0.95);
  EXPECT_LT(dry_share(4.0, 10.0), 0.02);
}

} // namespace
} // namespace nightsow::species_rules
