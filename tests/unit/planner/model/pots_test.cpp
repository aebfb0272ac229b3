#include "planner/model/pots.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

TEST(Pots, OfTheGardenStandBeforeTheUsualOnes) {
  Garden garden;
  EXPECT_EQ(pot_for(garden, "deep").deep_cm, 11.0);
  garden.pot_sizes.push_back({"deep", 9.0, 7.0, 13.0});
  EXPECT_EQ(pot_for(garden, "deep").deep_cm, 13.0);
  EXPECT_EQ(pot_for(garden, "shallow").deep_cm, 6.0);
}

TEST(Pots, WithoutADepthAreStandard) {
  EXPECT_EQ(pot_for({}, "").depth, "standard");
  EXPECT_EQ(pot_for({}, "bottomless").depth, "standard");
}

TEST(Pots, DeeperOnesHoldMore) {
  double before = 0.0;
  for (const PotSize& pot : usual_pots()) {
    EXPECT_GT(filled_litres(pot), before) << pot.depth;
    before = filled_litres(pot);
  }
}

// A cylinder of 10 cm across, 11 cm deep: pi 25 x 10 cm³ to a centimetre under the rim, and pi 25 x
// 0.5 cm³ of cover.
TEST(Pots, AreFilledToUnderTheRimAndCoveredThere) {
  const PotSize pot{"standard", 10.0, 10.0, 11.0};
  EXPECT_NEAR(filled_litres(pot), 0.785398, 1e-6);
  EXPECT_NEAR(cover_litres(pot, 5.0), 0.039270, 1e-6);
}

TEST(Pots, AreNeverCoveredByMoreThanTheyHold) {
  const PotSize pot{"shallow", 8.0, 6.0, 4.0};
  EXPECT_NEAR(cover_litres(pot, 500.0), filled_litres(pot), 1e-12);
}

TEST(Pots, WiderOnesHoldMoreSeedsByArea) {
  EXPECT_EQ(seeds_in_pot({"standard", 8.0, 6.0, 8.0}, 15), 15);
  EXPECT_EQ(seeds_in_pot({"standard", 16.0, 12.0, 14.0}, 15), 60);
  EXPECT_EQ(seeds_in_pot({"standard", 4.0, 3.0, 5.0}, 1), 1);
}

} // namespace
} // namespace nightsow::planner
