#include "planner/model/seed_place.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

TEST(SeedPlace, IsThatOfTheShelterWhereNothingIsWritten) {
  Bench bench;
  bench.shelter = "cold frame";
  const climate::SeedPlace place = seed_place(Garden{}, bench);
  EXPECT_TRUE(place.glass);
  EXPECT_EQ(place.sun, 0.7);
  EXPECT_EQ(place.shade, 0.5);
  EXPECT_EQ(place.night_loss_k, 3.0);
  EXPECT_EQ(place.frost_care, climate::FrostCare::fleece);
}

TEST(SeedPlace, IsWhatTheGrowerWrote) {
  Garden garden;
  garden.latitude = -34.0;
  Bench bench;
  bench.sun = 0.4;
  bench.shade = 0.1;
  bench.pot_colour = "dark";
  bench.frost_care = "in";
  const climate::SeedPlace place = seed_place(garden, bench);
  EXPECT_EQ(place.latitude, -34.0);
  EXPECT_EQ(place.sun, 0.4);
  EXPECT_EQ(place.shade, 0.1);
  EXPECT_EQ(place.pots, climate::PotColour::dark);
  EXPECT_EQ(place.frost_care, climate::FrostCare::in);
}

} // namespace
} // namespace nightsow::planner
