#include "species-rules/development.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

// Brewster, Onions and Other Vegetable Alliums, text to equation 4.7: 80 °C d above 2.5 °C.
TEST(ThermalTime, OnionTakesFourDaysInWarmthAndSixteenInTheCool) {
  const CardinalTemperatures onion{2.5, 25.0, 35.0};
  EXPECT_NEAR(80.0 / thermal_rate(22.5, onion), 4.0, 1e-9);
  EXPECT_NEAR(80.0 / thermal_rate(7.5, onion), 16.0, 1e-9);
}

// drcSeedGerm for R, the line of Garcia-Huidobro and others 1982: (T - Tb) / theta.
TEST(ThermalTime, UnderTheOptimumIsTheLineOfTheReferenceLibrary) {
  EXPECT_NEAR(thermal_rate(10.0, {2.5, 25.0, 35.0}) / 80.0, 0.09375, 2e-9);
}

// drcSeedGerm for R, broken stick after Bradford 2002: (1 - k (T - To)) (To - Tb) / theta with
// k 0.1, which is a ceiling 1 / k over the optimum.
TEST(ThermalTime, OverTheOptimumIsTheBrokenStickOfTheReferenceLibrary) {
  EXPECT_NEAR(thermal_rate(28.0, {2.0, 25.0, 35.0}) / 60.0, 0.2683333333, 2e-9);
}

} // namespace
} // namespace nightsow::species_rules
