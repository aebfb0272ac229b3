#include "planner/model/pot_dryness.hpp"

#include <gtest/gtest.h>

#include <cstddef>
#include <memory>
#include <vector>

namespace nightsow::planner {
namespace {

TEST(PotDryness, TheClockBeginsAnewOnTheDayAfterWater) {
  const RangeMaximum since = since_water_mm({0.9, 0.9, 0.9, 0.9, 3.0, 0.1}, 2.0);
  const std::vector<double> expected{0.9, 1.8, 2.7, 0.9, 3.9, 0.1};
  ASSERT_EQ(since.size(), expected.size());
  for (int day = 0; day < 6; ++day) {
    EXPECT_NEAR(since.value(day), expected[static_cast<std::size_t>(day)], 1e-12) << "day " << day;
  }
}

TEST(PotDryness, TheDriestDayDriesSeedAtTheSurfaceSoonerThanDeepSeed) {
  const auto since =
      std::make_shared<const RangeMaximum>(since_water_mm({1.0, 1.5, 1.0, 4.0, 0.5, 0.5}, 2.0));
  PotDryness at_surface{since, 0.0};
  PotDryness deep{since, 10.0};
  EXPECT_EQ(at_surface.driest(0, 5), 3);
  EXPECT_EQ(at_surface.driest(0, 2), 1);
  EXPECT_GT(at_surface.dry_share(3), 0.5); // half of the pots are dry at 4 mm
  EXPECT_LT(deep.dry_share(3), 0.1);       // and at 10 mm for seed so deep
}

} // namespace
} // namespace nightsow::planner
