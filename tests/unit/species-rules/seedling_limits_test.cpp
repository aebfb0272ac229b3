#include "species-rules/seedling_limits.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

TEST(SeedlingLimits, HalfDieAtTheLimit) {
  EXPECT_DOUBLE_EQ(frost_dead_share(-1.0, -1.0), 0.5);
  EXPECT_DOUBLE_EQ(heat_dead_share(39.0, 39.0), 0.5);
}

TEST(SeedlingLimits, FewDieWellWithinTheLimitAndFewLiveWellBeyond) {
  EXPECT_LT(frost_dead_share(3.0, -1.0), 0.001);
  EXPECT_GT(frost_dead_share(-4.6, -1.0), 0.998);
  EXPECT_LT(heat_dead_share(30.0, 39.0), 0.001);
  EXPECT_GT(heat_dead_share(47.0, 39.0), 0.998);
}

TEST(SeedlingLimits, OlderSeedlingsStandMoreHeat) {
  EXPECT_EQ(heat_hardening_k(0), 0.0);
  EXPECT_EQ(heat_hardening_k(29), 0.0);
  EXPECT_EQ(heat_hardening_k(30), 3.0);
  EXPECT_EQ(heat_hardening_k(90), 3.0);
  EXPECT_EQ(heat_hardening_k(91), 6.0);
}

} // namespace
} // namespace nightsow::species_rules
