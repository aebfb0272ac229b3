#include "planner/model/quantities.hpp"

#include <gtest/gtest.h>

#include <array>

namespace nightsow::planner {
namespace {

// Geometry: V = pi h (R² + R r + r²) / 3; web pages on flowerpot volumes print the same form. cm³.
TEST(PotVolume, IsThatOfACylinderWithStraightWallsAndOfAConeWithoutABase) {
  EXPECT_NEAR(1000.0 * frustum_litres(10.0, 10.0, 10.0), 785.3981633974482, 1e-9);
  EXPECT_NEAR(1000.0 * frustum_litres(10.0, 0.0, 10.0), 261.79938779914943, 1e-9);
}

// The two printed forms, by radii and by diameters, are one.
TEST(PotVolume, ByDiametersEqualsThatByRadii) {
  EXPECT_NEAR(1000.0 * frustum_litres(12.0, 8.0, 11.0), 875.457153, 1e-6);
}

struct TrueVolume {
  double us_gallons;
  double litres;
  double rounding;
};

// A nursery's page on true pot volumes, list rows of classes 1, 5 and 15, gallons of two digits; an
// encyclopedia article on the trade gallon, text: three US quarts. The page on truncated cones
// calls it 0.7 gallon and 2.65 l.
constexpr std::array<TrueVolume, 5> true_volumes{
    {{0.74, 2.8, 0.2}, {3.9, 14.9, 0.2}, {14.5, 54.9, 0.2}, {0.75, 2.8, 0.05}, {0.7, 2.65, 0.005}}};

TEST(PotVolume, OfTradeClassesIsThatOfTheirTrueGallons) {
  for (const TrueVolume& pot : true_volumes) {
    EXPECT_NEAR(litres_of_us_gallons(pot.us_gallons), pot.litres, pot.rounding) << pot.us_gallons;
  }
}

// Web table of seeds per ounce and per gram, rows Abutilon, Achillea, Ageratum, Alyssum; the page
// rounds, and divides by 0.035: 1.5 per cent.
TEST(SeedsPerGram, FollowFromSeedsPerOunce) {
  constexpr std::array<std::array<double, 2>, 4> rows{
      {{8500, 300}, {140000, 4900}, {200000, 7000}, {90000, 3150}}};
  for (const auto& [per_ounce, per_gram] : rows) {
    EXPECT_NEAR(seeds_per_gram(per_ounce), per_gram, 0.015 * per_gram) << per_ounce;
  }
}

// Data sheet of a retail soil-warming cable, list of areas covered (values from the printed pairs).
TEST(Heating, SpreadsAsTheCableSheetSays) {
  EXPECT_NEAR(watts_per_m2(50.0, 0.45), 111.1, 0.06);
  EXPECT_NEAR(watts_per_m2(150.0, 1.75), 85.7, 0.06);
}

// A growers' society's page on a hot bed, question 1: 20 mm of wood (U 6.67), and the same with
// 25 mm of polystyrene (U 1.6), 15 K apart. It prints 1.28 and 19 W where layers in series give
// 1.290.
TEST(Heating, IsLostThroughWallsAsTheSocietyReckons) {
  EXPECT_NEAR(heat_loss_w(6.67, 1.0, 15.0), 100.0, 0.06);
  EXPECT_NEAR(u_in_series(6.67, 1.6), 1.28, 0.011);
  EXPECT_NEAR(heat_loss_w(u_in_series(6.67, 1.6), 1.0, 15.0), 19.0, 0.4);
}

} // namespace
} // namespace nightsow::planner
