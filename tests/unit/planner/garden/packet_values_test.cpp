#include "planner/garden/packet_values.hpp"

#include "planner/garden/store_stages.hpp"
#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace nightsow::planner {
namespace {

using support::day;

TEST(SeedCount, ANumberOrARangeIsRead) {
  for (const auto& [text, low, high] : {std::tuple{"40", 40.0, 40.0},
                                        {" 40 ", 40.0, 40.0},
                                        {"40.0", 40.0, 40.0},
                                        {"40 seeds", 40.0, 40.0},
                                        {"0", 0.0, 0.0},
                                        {"30-60", 30.0, 60.0},
                                        {"30 – 60", 30.0, 60.0},
                                        {"30-60 seeds", 30.0, 60.0},
                                        {"~40", 32.0, 48.0},
                                        {"ca. 40", 32.0, 48.0},
                                        {"about 40 seeds", 32.0, 48.0}}) {
    const auto seeds = parse_seed_count(text);
    ASSERT_TRUE(seeds) << text;
    EXPECT_EQ(seeds->low, low) << text;
    EXPECT_EQ(seeds->high, high) << text;
  }
}

TEST(SeedCount, AWeightLeavesTheNumberUnknown) {
  for (const auto& [text, grams] :
       {std::pair{"0.2g", 0.2}, {"0,2 g", 0.2}, {"~0.2g", 0.2}, {"2 G", 2.0}, {"150mg", 0.15}}) {
    const auto seeds = parse_seed_count(text);
    ASSERT_TRUE(seeds) << text;
    EXPECT_DOUBLE_EQ(seeds->grams.value(), grams) << text;
    EXPECT_FALSE(seeds->middle()) << text;
  }
}

TEST(SeedCount, TheMiddleOfARangeIsTheNumberToPlanWith) {
  EXPECT_EQ(parse_seed_count("30-60")->middle(), 45.0);
  EXPECT_DOUBLE_EQ(parse_seed_count("~40")->middle().value(), 40.0);
}

TEST(SeedCount, AnythingElseIsNoNumberOfSeeds) {
  for (const std::string_view text : {"",
                                      "many",
                                      "-4",
                                      "60-30",
                                      "1,000",
                                      "1.000",
                                      "4.5",
                                      "50+",
                                      "g",
                                      "0g",
                                      "40 plants",
                                      "~",
                                      "3-",
                                      "99999999"}) {
    EXPECT_FALSE(parse_seed_count(text)) << text;
  }
}

TEST(Temperature, NeedsItsUnit) {
  for (const auto& [text, wanted] : {std::pair{"22C", 22.0},
                                     {"5 C", 5.0},
                                     {"5 °C", 5.0},
                                     {"5c", 5.0},
                                     {"-18C", -18.0},
                                     {"4,5 C", 4.5},
                                     {"77F", 25.0}}) {
    ASSERT_TRUE(parse_temperature(text)) << text;
    EXPECT_DOUBLE_EQ(*parse_temperature(text), wanted) << text;
  }
  for (const std::string_view text : {"22", "C", "warm", "220C", "-90C", "2-2C", "22K", ""}) {
    EXPECT_FALSE(parse_temperature(text)) << text;
  }
}

TEST(Store, AKnownPlaceHasItsTemperature) {
  for (const auto& [place, store_c] :
       {std::pair{"shelf", 20.0}, {"indoors", 20.0}, {"fridge", 5.0}, {"Freezer", -18.0}}) {
    const auto stages = parse_store_stages(place);
    ASSERT_TRUE(stages) << place;
    ASSERT_EQ(stages->size(), 1U);
    EXPECT_EQ(stages->front().place, place);
    EXPECT_EQ(stages->front().store_c, store_c);
    EXPECT_FALSE(stages->front().until);
  }
}

TEST(Store, AWrittenTemperatureIsTakenForAnyPlace) {
  EXPECT_EQ(parse_store_stages("shelf 22C")->front().store_c, 22.0);
  EXPECT_EQ(parse_store_stages("freezer -20 C")->front().store_c, -20.0);
  EXPECT_EQ(parse_store_stages("cold-store 8 °C")->front().place, "cold-store");
}

TEST(Store, StagesFollowOneAnother) {
  const auto stages = parse_store_stages("shelf 22C to 2026-03-01; fridge until 2026-04 ;freezer");
  ASSERT_TRUE(stages);
  ASSERT_EQ(stages->size(), 3U);
  EXPECT_EQ((*stages)[0].until, day("2026-03-01"));
  EXPECT_EQ((*stages)[1].until, day("2026-04-30"));
  EXPECT_EQ((*stages)[1].store_c, 5.0);
  EXPECT_FALSE((*stages)[2].until);
}

TEST(Store, AnythingElseIsNoStore) {
  for (const std::string_view text : {"",
                                      "attic",
                                      "20C",
                                      "shelf 22",
                                      "shelf; fridge",
                                      "shelf to 2026-03-01; fridge to 2026-03-01",
                                      "shelf to spring; fridge",
                                      "shelf to 2026-03-01;",
                                      "shelf 22C, fridge"}) {
    EXPECT_FALSE(parse_store_stages(text)) << text;
  }
}

TEST(GerminationTest, CountsAreEnough) {
  const auto test = parse_germination_test("14/20");
  ASSERT_TRUE(test);
  EXPECT_EQ(test->sprouted, 14);
  EXPECT_EQ(test->of, 20);
  EXPECT_FALSE(test->on);
  EXPECT_FALSE(test->at_c);
}

TEST(GerminationTest, DayAndTemperatureMayFollow) {
  const auto test = parse_germination_test(" 14/20 2026-01-10 15C ");
  ASSERT_TRUE(test);
  EXPECT_EQ(test->on, day("2026-01-10"));
  EXPECT_EQ(test->at_c, 15.0);
  EXPECT_EQ(parse_germination_test("14/20 15 °C")->at_c, 15.0);
  EXPECT_EQ(parse_germination_test("0/20 2026-01-10")->sprouted, 0);
}

TEST(GerminationTest, AnythingElseIsNoTest) {
  for (const std::string_view text : {"",
                                      "14",
                                      "21/20",
                                      "1/0",
                                      "/20",
                                      "14/",
                                      "14/20 15",
                                      "14/20 soon",
                                      "14/20 2026-02-30",
                                      "70%",
                                      "14/20 15C 2026-01-10"}) {
    EXPECT_FALSE(parse_germination_test(text)) << text;
  }
}

TEST(YesOrNo, IsReadInItsUsualForms) {
  for (const std::string_view text : {"yes", "Y", "TRUE", "1", "x", " X "}) {
    EXPECT_EQ(parse_yes_or_no(text), true) << text;
  }
  for (const std::string_view text : {"no", "N", "False", "0"}) {
    EXPECT_EQ(parse_yes_or_no(text), false) << text;
  }
  EXPECT_FALSE(parse_yes_or_no("perhaps"));
}

TEST(Positive, IsAWholeNumberFromOneOn) {
  EXPECT_EQ(parse_positive("12"), 12);
  EXPECT_EQ(parse_positive("12.0"), 12);
  for (const std::string_view text : {"", "0", "-1", "1.5", "some"}) {
    EXPECT_FALSE(parse_positive(text)) << text;
  }
}

} // namespace
} // namespace nightsow::planner
