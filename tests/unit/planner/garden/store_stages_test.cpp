#include "planner/garden/store_stages.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <string_view>
#include <utility>

namespace nightsow::planner {
namespace {

using support::day;

StoreStage only_stage(std::string_view cell) {
  const auto stages = parse_store_stages(cell);
  EXPECT_TRUE(stages) << cell;
  EXPECT_EQ(stages ? stages->size() : 0U, 1U) << cell;
  return stages ? stages->front() : StoreStage{};
}

// The temperatures of the contract in store_stages.hpp.
TEST(StoreStages, APlaceHasItsUsualTemperatureUnlessOneIsWritten) {
  for (const auto& [cell, store_c] : {std::pair{"shelf", 20.0},
                                      {"Indoors", 20.0},
                                      {"fridge", 5.0},
                                      {"freezer", -18.0},
                                      {"shelf 25C", 25.0},
                                      {"freezer -20 C", -20.0},
                                      {"cellar 12C", 12.0}}) {
    EXPECT_DOUBLE_EQ(only_stage(cell).store_c, store_c) << cell;
    EXPECT_TRUE(only_stage(cell).known) << cell;
  }
}

TEST(StoreStages, TheAirIsAsDryAsARoomUnlessAWordOrANumberTells) {
  using namespace species_rules;
  for (const auto& [cell, humidity] : {std::pair{"shelf", room_humidity},
                                       {"fridge sealed", room_humidity},
                                       {"fridge, silica gel", -1.0},
                                       {"fridge desiccated", desiccated_humidity},
                                       {"silica gel fridge", desiccated_humidity},
                                       {"damp shelf", damp_humidity},
                                       {"shelf 60 % RH", 0.6},
                                       {"shelf 35%", 0.35}}) {
    if (humidity < 0.0) {
      EXPECT_FALSE(parse_store_stages(cell)) << cell;
    } else {
      EXPECT_DOUBLE_EQ(only_stage(cell).humidity, humidity) << cell;
    }
  }
  EXPECT_LT(desiccated_humidity, room_humidity);
  EXPECT_LT(room_humidity, damp_humidity);
}

TEST(StoreStages, EachStageButTheLastEndsOnADay) {
  const auto stages =
      parse_store_stages("shelf 22C to 2026-03-01; damp shed 15C until 2026-05; fridge");
  ASSERT_TRUE(stages);
  ASSERT_EQ(stages->size(), 3U);
  EXPECT_EQ(stages->at(0).until, day("2026-03-01"));
  EXPECT_EQ(stages->at(1).until, day("2026-05-31")); // of a month the last day
  EXPECT_FALSE(stages->at(2).until);
  EXPECT_DOUBLE_EQ(stages->at(1).store_c, 15.0);
  EXPECT_DOUBLE_EQ(stages->at(1).humidity, species_rules::damp_humidity);
}

TEST(StoreStages, OfAnUnknownStageNothingIsTaken) {
  EXPECT_FALSE(only_stage("unknown").known);
  const auto stages = parse_store_stages("unknown to 2026-03-01; fridge");
  ASSERT_TRUE(stages);
  EXPECT_FALSE(stages->front().known);
  EXPECT_TRUE(stages->back().known);
}

TEST(StoreStages, WhatCannotBeMeantIsRefused) {
  for (const char* cell : {"",
                           "cellar",
                           "22C",
                           "shelf; fridge",
                           "shelf to 2026-03-01; fridge to 2026-02-01",
                           "shelf to yesterday",
                           "shelf 140 % RH",
                           "% shelf",
                           "shelf to 2026-03-01;"}) {
    EXPECT_FALSE(parse_store_stages(cell)) << cell;
  }
}

} // namespace
} // namespace nightsow::planner
