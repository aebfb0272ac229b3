// ICAO standard atmosphere (US Standard Atmosphere 1976): temperatures of its table.
#include "climate/bench.hpp"

#include <gtest/gtest.h>

#include <array>
#include <utility>

namespace nightsow::climate {
namespace {

TEST(HeightOffset, IsTheTablesFallFromTheSeaUp) {
  // Geopotential height in m, temperature in K.
  constexpr std::array<std::pair<double, double>, 3> rows{
      {{2000.0, 275.15}, {5000.0, 255.65}, {10000.0, 223.15}}};
  for (const auto& [height_m, kelvin] : rows) {
    EXPECT_NEAR(288.15 + height_offset(0.0, height_m).kelvin(), kelvin, 0.005) << height_m;
  }
}

} // namespace
} // namespace nightsow::climate
