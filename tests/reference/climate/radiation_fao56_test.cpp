// FAO Irrigation and Drainage Paper 56, equations 50 and 52, and a published use of equation 52.
#include "climate/sun.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

TEST(HargreavesEvaporation, IsThatOfMehta2006) {
  // Mehta (2006), as held in the PyETo test suite (test_hargreaves): 28 to 38 °C, mean 35,
  // Ra 38.937.
  EXPECT_NEAR(hargreaves_evaporation_mm(35.0, 10.0, 38.93715), 6.1, 0.05);
}

TEST(HargreavesEvaporation, IsNoneWhereNightLiesAboveDayOrItIsBitterlyCold) {
  EXPECT_EQ(hargreaves_evaporation_mm(20.0, -1.0, 30.0), 0.0);
  EXPECT_EQ(hargreaves_evaporation_mm(-25.0, 9.0, 3.0), 0.0);
}

TEST(RadiationFromRange, IsEquation50UpToAClearSky) {
  EXPECT_NEAR(
      radiation_from_range_mj(9.0, 30.0, 22.5, range_factor_inland), 0.16 * 3.0 * 30.0, 1e-12);
  EXPECT_NEAR(
      radiation_from_range_mj(9.0, 30.0, 22.5, range_factor_coast), 0.19 * 3.0 * 30.0, 1e-12);
  EXPECT_EQ(radiation_from_range_mj(36.0, 30.0, 22.5, range_factor_inland), 22.5);
  EXPECT_EQ(radiation_from_range_mj(-2.0, 30.0, 22.5, range_factor_inland), 0.0);
}

TEST(SunTimes, AreHalfTheDayEitherSideOfNoon) {
  const SunTimes sun = sun_times(-20.0, 246); // example 9: 11.7 hours
  EXPECT_NEAR(sun.sets_h - sun.rises_h, 11.7, 0.05);
  EXPECT_NEAR(sun.sets_h + sun.rises_h, 24.0, 1e-12);
  EXPECT_EQ(sun_times(80.0, 172).sets_h, 24.0);
  EXPECT_EQ(sun_times(80.0, 355).rises_h, 12.0);
}

} // namespace
} // namespace nightsow::climate
