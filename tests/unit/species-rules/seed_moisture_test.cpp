#include "species-rules/seed_moisture.hpp"

#include "species-rules/viability.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

TEST(SeedMoisture, BasesUndoEachOther) {
  for (const double dry_pct : {0.0, 4.0, 9.0, 30.0, 100.0}) {
    EXPECT_NEAR(dry_from_wet_pct(wet_from_dry_pct(dry_pct)), dry_pct, 1e-12);
  }
}

TEST(SeedMoisture, DamperColderAndLessOilySeedIsMoister) {
  EXPECT_GT(balanced_moisture_dry_pct(0.6, 20, 0.2), balanced_moisture_dry_pct(0.5, 20, 0.2));
  EXPECT_GT(balanced_moisture_dry_pct(0.5, 5, 0.2), balanced_moisture_dry_pct(0.5, 20, 0.2));
  EXPECT_GT(balanced_moisture_dry_pct(0.5, 20, 0.0), balanced_moisture_dry_pct(0.5, 20, 0.4));
  EXPECT_EQ(balanced_moisture_dry_pct(0.0, 20, 0.2), 0.0);
}

// The equation holds for dry seed only: up to 15 % (common practice).
TEST(SeedMoisture, EvenADampStoreStaysWithinTheEquation) {
  EXPECT_LT(wet_from_dry_pct(balanced_moisture_dry_pct(damp_humidity, 20, 0.2)), 15.0);
}

TEST(SeedMoisture, SeedAgesAsToldInADryRoomFasterInDampAirSlowlierOverSilicaGel) {
  EXPECT_DOUBLE_EQ(ageing_factor(room_c, room_humidity), 1.0);
  EXPECT_GT(ageing_factor(room_c, damp_humidity), 8.0);
  EXPECT_LT(ageing_factor(room_c, desiccated_humidity), 0.1);
}

TEST(SeedMoisture, BeyondItsRangeTheAirCountsAsItsEnds) {
  EXPECT_EQ(stored_moisture_wet_pct(0.0), stored_moisture_wet_pct(desiccated_humidity));
  EXPECT_EQ(stored_moisture_wet_pct(1.0), stored_moisture_wet_pct(damp_humidity));
}

TEST(SeedMoisture, WarmthAndDampMultiply) {
  EXPECT_NEAR(
      ageing_factor(30, 0.7), ageing_factor(30, room_humidity) * ageing_factor(room_c, 0.7), 1e-9);
}

} // namespace
} // namespace nightsow::species_rules
