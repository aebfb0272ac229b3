#include "species-rules/development.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

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

struct EmergenceRow {
  std::string kind;
  std::vector<double> at_c;
  std::vector<double> days;
};

// Harrington and Minges 1954, Vegetable Seed Germination, California Agricultural Extension
// leaflet: days to emergence from half an inch, as reprinted by university extensions; columns up
// to the fastest.
std::vector<EmergenceRow> emergence_table() {
  return {{"onion", {5, 10, 15, 20, 25}, {31, 13, 7, 5, 4}},
          {"lettuce", {5, 10, 15, 20, 25}, {15, 7, 4, 3, 2}},
          {"carrot", {5, 10, 15, 20, 25}, {51, 17, 10, 7, 6}},
          {"spinach", {5, 10, 15, 20, 25}, {23, 12, 7, 6, 5}},
          {"pea", {5, 10, 15, 20, 25}, {36, 14, 9, 8, 6}},
          {"beet", {5, 10, 15, 20, 25}, {42, 17, 10, 6, 5}}};
}

// Base and sum from two temperatures: 1 / days is a straight line of temperature.
std::pair<double, double> base_and_sum(double cool_c,
                                       double cool_days,
                                       double warm_c,
                                       double warm_days) {
  const double slope = (1.0 / warm_days - 1.0 / cool_days) / (warm_c - cool_c);
  return {cool_c - 1.0 / (cool_days * slope), 1.0 / slope};
}

TEST(ThermalTime, BaseAndSumOfTwoTemperaturesForetellTheDaysBetween) {
  for (const EmergenceRow& row : emergence_table()) {
    const auto [base_c, sum_c_d] = base_and_sum(row.at_c[1], row.days[1], row.at_c[4], row.days[4]);
    const CardinalTemperatures cardinal{base_c, 30.0, 40.0};
    for (const std::size_t i : {2U, 3U}) {
      const double foretold = sum_c_d / thermal_rate(row.at_c[i], cardinal);
      EXPECT_LE(std::abs(foretold - row.days[i]), 0.5 + 0.2 * row.days[i])
          << row.kind << " at " << row.at_c[i] << ": " << foretold;
    }
  }
}

} // namespace
} // namespace nightsow::species_rules
