#include "planner/garden/drawn_station.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace nightsow::planner {
namespace {

Garden with_normals_only() {
  Garden garden;
  garden.monthly_normals = MonthlyNormals{{16, 16, 15, 12, 10, 8, 7, 8, 9, 11, 13, 15},
                                          {29, 29, 27, 22, 19, 16, 15, 17, 19, 22, 25, 27}};
  return garden;
}

TEST(DrawnStation, StandsInOnlyWhereThereAreNormalsAndNoReadings) {
  Garden garden = with_normals_only();
  EXPECT_TRUE(knows_normals_only(garden));
  garden.readings.emplace_back();
  EXPECT_FALSE(knows_normals_only(garden));
  EXPECT_FALSE(knows_normals_only(Garden{}));
}

TEST(DrawnStation, HasNoNightOfTheLastYear) {
  const Date today = make_date(2026, 2, 20).value();
  const climate::DailySeries series = drawn_station(with_normals_only(), today);
  EXPECT_LT(series.last(), today - Days{366});
  // Nothing that looks at the last two weeks of readings finds any.
  for (std::size_t i = series.size() - 14; i < series.size(); ++i) {
    EXPECT_TRUE(std::isnan(series.night_c()[i]));
    EXPECT_TRUE(std::isnan(series.day_c()[i]));
  }
  EXPECT_FALSE(std::isnan(series.night_c()[series.size() - 15]));
}

TEST(DrawnStation, HasThirtyYearsFromTheGardensNormals) {
  const Date today = make_date(2026, 2, 20).value();
  const climate::DailySeries series = drawn_station(with_normals_only(), today);
  double sum = 0.0;
  int nights = 0;
  for (const float night : series.night_c()) {
    sum += std::isnan(night) ? 0.0 : static_cast<double>(night);
    nights += std::isnan(night) ? 0 : 1;
  }
  EXPECT_EQ(nights, 30 * 365);
  EXPECT_NEAR(sum / nights, 11.66, 0.2); // mean of the twelve, by their days
}

} // namespace
} // namespace nightsow::planner
