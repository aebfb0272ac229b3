#include "planner/garden/seed_age.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <tuple>

namespace nightsow::planner {
namespace {

using support::day;

constexpr double days_a_month = 365.25 / 12;

TEST(SeedAge, IsANumberAndAUnitGiveOrTakeHalfOfItsLastPlace) {
  for (const auto& [text, days, give_or_take] : {std::tuple{"90d", 90.0, 0.5},
                                                 {"6 weeks", 42.0, 3.5},
                                                 {"18mo", 18 * days_a_month, days_a_month / 2},
                                                 {"2 Y", 730.5, 365.25 / 2},
                                                 {"1.5 years", 547.875, 18.2625},
                                                 {"1,5 years", 547.875, 18.2625}}) {
    const auto age = parse_seed_age(text);
    ASSERT_TRUE(age) << text;
    EXPECT_NEAR(age->days, days, 1e-9) << text;
    EXPECT_NEAR(age->give_or_take_days, give_or_take, 1e-9) << text;
  }
}

TEST(SeedAge, WhatIsNoAgeIsRefused) {
  for (const char* text : {"", "old", "18", "mo", "-2y", "3 decades", "201 years", "2y 3mo"}) {
    EXPECT_FALSE(parse_seed_age(text)) << text;
  }
}

TEST(SeedAge, TheHarvestLiesThatLongAgo) {
  const DateRange harvest = harvest_of({42.0, 3.5}, day("2026-03-20"));
  EXPECT_EQ(harvest.first, day("2026-02-02")); // 46 days, 45.5 rounded
  EXPECT_EQ(harvest.last, day("2026-02-09"));  // 39 days, 38.5 rounded
}

TEST(SeedAge, NoHarvestIsStillToCome) {
  EXPECT_EQ(harvest_of({0.0, 3.5}, day("2026-03-20")).last, day("2026-03-20"));
}

} // namespace
} // namespace nightsow::planner
