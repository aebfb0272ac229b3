#include "planner/garden/new_garden.hpp"

#include "planner/garden/garden_file.hpp"

#include <gtest/gtest.h>

#include <regex>

namespace nightsow::planner {
namespace {

NewGarden slope() {
  NewGarden garden;
  garden.latitude = -33.1;
  garden.longitude = 19.2;
  garden.readings_file = "readings/station.csv";
  return garden;
}

/// Every example behind // switched on, the comments that are sentences left alone.
std::string with_examples_on(const std::string& text) {
  return std::regex_replace(text, std::regex("// (, \\{|\")"), "$1");
}

TEST(NewGarden, LoadsAsItIs) {
  const Garden garden = read_garden_file(new_garden_text(slope()), "garden.json");
  EXPECT_EQ(garden.latitude, -33.1);
  EXPECT_EQ(garden.longitude, 19.2);
  EXPECT_EQ(garden.readings.at(0).file, "readings/station.csv");
  EXPECT_EQ(garden.benches.at(0).name, "open bench");
  EXPECT_TRUE(garden.time_zone.empty());
}

TEST(NewGarden, SaysAllThatItWasTold) {
  NewGarden told = slope();
  told.name = "Slope \"Nord\" \\ Süd";
  told.elevation_m = 240.5;
  told.time_zone = "Africa/Johannesburg";
  const Garden garden = read_garden_file(new_garden_text(told), "garden.json");
  EXPECT_EQ(garden.name, told.name);
  EXPECT_EQ(garden.elevation_m, 240.5);
  EXPECT_EQ(garden.time_zone, "Africa/Johannesburg");
}

TEST(NewGarden, EveryExampleLoadsOnceItIsSwitchedOn) {
  const std::string text = with_examples_on(new_garden_text(slope()));
  const Garden garden = read_garden_file(text, "garden.json");
  EXPECT_EQ(garden.name, "my garden");
  EXPECT_EQ(garden.time_zone, "Africa/Johannesburg");
  EXPECT_EQ(garden.sowing_days.size(), 2U);
  EXPECT_EQ(garden.away.size(), 1U);
  EXPECT_EQ(garden.mats.size(), 1U);
  EXPECT_EQ(garden.benches.size(), 2U);
  EXPECT_EQ(garden.readings.size(), 2U);
  EXPECT_TRUE(garden.mix_mineral_share.has_value());
}

TEST(NewGarden, NamesTheStationAndTheColumnThatAreMeant) {
  NewGarden garden;
  garden.readings_file = "readings/a.csv";
  EXPECT_EQ(read_garden_file(new_garden_text(garden), "g").readings.at(0).station, "");
  garden.station = "B \"2\"";
  garden.column = "Temp 2";
  const Garden read = read_garden_file(new_garden_text(garden), "garden.json");
  EXPECT_EQ(read.readings.at(0).station, "B \"2\"");
  EXPECT_EQ(read.readings.at(0).column, "Temp 2");
}

} // namespace
} // namespace nightsow::planner
