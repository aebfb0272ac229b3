#include "planner/model/sowing_facts.hpp"

#include "tests/support/invented_journal.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using support::invented_count;
using support::on;

// 25 seeds of 2 March, watered on that day.
RecordedSowing sowing() {
  RecordedSowing sown = support::invented_sowing();
  sown.id = 1;
  sown.first_water = sown.on;
  sown.bench = "open bench";
  return sown;
}

SowingFacts facts_of(const Records& records) {
  return sowing_facts(sowing(), records);
}

Records counted(std::vector<SeedlingCount> counts) {
  Records records;
  records.counts = std::move(counts);
  return records;
}

Watering watering(std::string_view day, WateringKind kind) {
  return {0, 1, on(day), kind};
}

TEST(SowingFacts, SeedlingsThatDiedAreUpAllTheSame) {
  SeedlingCount later = invented_count(1, "2026-03-30", 5);
  later.dead = 4;
  const SowingFacts facts = facts_of(counted({invented_count(1, "2026-03-20", 7), later}));
  EXPECT_EQ(facts.up_in_all(), 9);
  EXPECT_EQ(facts.died, 4);
  EXPECT_EQ(facts.fell, 0);
}

TEST(SowingFacts, ACountThatFallsWithoutAWordIsTold) {
  const SowingFacts facts =
      facts_of(counted({invented_count(1, "2026-03-20", 7), invented_count(1, "2026-03-30", 5)}));
  EXPECT_EQ(facts.up_in_all(), 7);
  EXPECT_EQ(facts.fell, 2);
}

TEST(SowingFacts, LeavesThatComeBackAfterTheRestAreNoNewSeedlings) {
  const SowingFacts facts = facts_of(counted({invented_count(1, "2026-05-20", 7),
                                              invented_count(1, "2026-11-30", 0),
                                              invented_count(1, "2027-04-10", 6)}));
  EXPECT_EQ(facts.up_in_all(), 7);
  EXPECT_EQ(facts.died, 1);
}

TEST(SowingFacts, OfTwoCountsOnOneDayTheLaterStands) {
  const SowingFacts facts =
      facts_of(counted({invented_count(1, "2026-03-20", 17), invented_count(1, "2026-03-20", 7)}));
  ASSERT_EQ(facts.looks.size(), 1U);
  EXPECT_EQ(facts.up_in_all(), 7);
}

TEST(SowingFacts, CountsOfOtherSowingsAreOfNoAccount) {
  EXPECT_TRUE(facts_of(counted({invented_count(2, "2026-03-20", 7)})).looks.empty());
}

TEST(SowingFacts, DrySeedHasNoFirstWaterUntilItIsWrittenDownOrSeedlingsShowIt) {
  RecordedSowing dry = sowing();
  dry.first_water.reset();
  EXPECT_FALSE(sowing_facts(dry, {}).first_water);
  EXPECT_FALSE(sowing_facts(dry, counted({invented_count(1, "2026-03-20", 0)})).first_water);
  const SowingFacts taken = sowing_facts(dry, counted({invented_count(1, "2026-03-20", 3)}));
  EXPECT_EQ(taken.first_water, on("2026-03-02"));
  EXPECT_TRUE(taken.water_taken);
  Records records;
  records.waterings = {watering("2026-03-09", WateringKind::first_water)};
  const SowingFacts written = sowing_facts(dry, records);
  EXPECT_EQ(written.first_water, on("2026-03-09"));
  EXPECT_FALSE(written.water_taken);
}

TEST(SowingFacts, ADryRestEndsTheDayBeforeItIsWetAgain) {
  Records records;
  records.waterings = {watering("2026-04-01", WateringKind::dry_rest),
                       watering("2026-04-21", WateringKind::rewet),
                       watering("2026-06-01", WateringKind::dry_rest)};
  const SowingFacts facts = facts_of(records);
  ASSERT_EQ(facts.dry.size(), 2U);
  EXPECT_EQ(facts.dry[0].from, on("2026-04-01"));
  EXPECT_EQ(facts.dry[0].to, on("2026-04-20"));
  EXPECT_FALSE(facts.dry[1].to);
}

TEST(SowingFacts, APotStandsWhereItWasMovedTo) {
  Records records;
  records.moves = {{0, 1, on("2026-03-10"), MoveKind::bench, "cold frame"},
                   {0, 1, on("2026-03-20"), MoveKind::mat, "mat"},
                   {0, 1, on("2026-03-25"), MoveKind::mat, "off"},
                   {0, 1, on("2026-03-26"), MoveKind::bag, "off"}};
  const SowingFacts facts = facts_of(records);
  ASSERT_EQ(facts.places.size(), 4U);
  EXPECT_EQ(facts.places[0].bench, "open bench");
  EXPECT_EQ(facts.places[2].bench, "cold frame");
  EXPECT_EQ(facts.places[2].mat, "mat");
  EXPECT_EQ(facts.places[3].mat, "");
  EXPECT_TRUE(facts.shade_or_bag_changed);
}

TEST(SowingFacts, WhatWasPressedIsAtMostWhatIsNotUp) {
  Records records = counted({invented_count(1, "2026-03-20", 22)});
  records.press_tests = {{0, 1, on("2026-03-21"), 2, 3}};
  const SowingFacts facts = facts_of(records);
  EXPECT_EQ(facts.pressed.firm, 2);
  EXPECT_EQ(facts.pressed.soft, 1);
}

} // namespace
} // namespace nightsow::planner
