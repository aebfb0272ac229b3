#include "planner/answers/carried.hpp"

#include "planner/answers/plan.hpp"
#include "planner/answers/pot_prospects.hpp"
#include "planner/answers/today.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <tuple>

namespace nightsow::planner {
namespace {

using support::InventedGarden;

constexpr int a_year = 365;

InventedGarden garden_in(int hottest_day_of_year, int days_after_hottest) {
  InventedGarden garden;
  garden.climate.hottest_day_of_year = hottest_day_of_year;
  garden.days_after_hottest = days_after_hottest;
  return garden;
}

/// One sowing of 40 seeds so many days before today, watered that day.
RecordedSowing sown(const LoadedGarden& garden, const char* taxon, int days_ago) {
  RecordedSowing sowing;
  sowing.id = 7;
  sowing.packet_id = "p1";
  sowing.taxon = taxon;
  sowing.on = garden.today - Days{days_ago};
  sowing.first_water = sowing.on;
  sowing.seeds = 40;
  sowing.pots = 2;
  sowing.packet = support::packet_from(std::string(taxon) + ", 40 seeds", garden.today);
  sowing.packet.harvested = DateRange{sowing.on - Days{200}, sowing.on - Days{200}};
  return sowing;
}

SeedlingCount counted(const RecordedSowing& sowing, int days_later, int seen) {
  SeedlingCount count;
  count.sowing = sowing.id;
  count.on = sowing.on + Days{days_later};
  count.seen = seen;
  return count;
}

class CarriedOnBothHalves : public testing::TestWithParam<int> {};

TEST_P(CarriedOnBothHalves, APotOfLastSeasonWakesWhenNightsHoldNearItsOwnLimit) {
  LoadedGarden garden = support::garden_of(garden_in(GetParam(), 20));
  const RecordedSowing sowing = sown(garden, "Lachenalia mutabilis", a_year - 70);
  garden.records.sowings = {sowing};
  garden.records.counts = {counted(sowing, 60, 12)};
  const PlanAnswer answer = plan(garden, {});
  ASSERT_EQ(answer.carried.size(), 1U);
  const CarriedPot& pot = answer.carried.front();
  EXPECT_EQ(pot.stage, PotStage::resting);
  EXPECT_EQ(pot.alive, 12);
  EXPECT_EQ(pot.cool_seasons, 1);
  ASSERT_TRUE(pot.water.expected.p50);
  EXPECT_GT(*pot.water.expected.p50, garden.today);
  EXPECT_LT(*pot.water.expected.p50, garden.today + Days{180});
  EXPECT_TRUE(support::gives(pot.reasons, ReasonCode::wakes_when_cool));
  EXPECT_TRUE(support::gives(pot.reasons, ReasonCode::seed_in_pot));
  ASSERT_TRUE(pot.more);
  EXPECT_GT(pot.more->mean, 0.0);
  EXPECT_LE(pot.more->p90, 28.0);
}

TEST_P(CarriedOnBothHalves, ItsWakingIsAmongTheTasksAndStandsInItsOwnTray) {
  LoadedGarden garden = support::garden_of(garden_in(GetParam(), 20));
  garden.records.sowings = {sown(garden, "Lachenalia mutabilis", a_year - 70)};
  const PlanAnswer answer = plan(garden, {});
  ASSERT_EQ(answer.lots.size(), 1U);
  EXPECT_TRUE(answer.lots.front().carried);
  ASSERT_EQ(answer.tasks.size(), 1U);
  EXPECT_EQ(answer.tasks.front().kind, TaskKind::wake);
  EXPECT_EQ(answer.tasks.front().on, *answer.carried.front().water.expected.p50);
  EXPECT_EQ(answer.tasks.front().lot, answer.lots.front().id);
  EXPECT_EQ(answer.diary.size(), 1U);
}

TEST_P(CarriedOnBothHalves, OnceNightsHoldItIsDueUntilWaterIsWrittenDown) {
  LoadedGarden garden = support::garden_of(garden_in(GetParam(), 150));
  const RecordedSowing sowing = sown(garden, "Albuca spiralis", a_year + 60);
  garden.records.sowings = {sowing};
  garden.records.counts = {counted(sowing, 60, 12)};
  const PlanAnswer due = plan(garden, {});
  ASSERT_EQ(due.carried.size(), 1U);
  EXPECT_EQ(due.carried.front().verdict, Verdict::water_now);
  EXPECT_TRUE(support::gives(due.carried.front().reasons, ReasonCode::wake_due));
  const TodayAnswer now = today(garden);
  ASSERT_EQ(now.now.size(), 1U);
  EXPECT_EQ(now.now.front().kind, TaskKind::wake);
  Watering water;
  water.sowing = sowing.id;
  water.on = garden.today - Days{10};
  garden.records.waterings = {water};
  EXPECT_EQ(plan(garden, {}).carried.front().stage, PotStage::growing);
}

// Ursinia is an annual: twelve that grew last season are dead, whatever was watered since.
TEST_P(CarriedOnBothHalves, AnnualsOfLastSeasonAreNotPrickedOut) {
  const auto to_prick_out = [&](const char* taxon) {
    LoadedGarden garden = support::garden_of(garden_in(GetParam(), 150));
    const RecordedSowing sowing = sown(garden, taxon, a_year + 60);
    garden.records.sowings = {sowing};
    garden.records.counts = {counted(sowing, 60, 12)};
    Watering water;
    water.sowing = sowing.id;
    water.on = garden.today - Days{10};
    garden.records.waterings = {water};
    const CarriedPot pot = plan(garden, {}).carried.at(0);
    EXPECT_EQ(pot.stage, PotStage::growing) << taxon;
    return std::any_of(pot.work.begin(), pot.work.end(), [](const PotTask& task) {
      return task.kind == TaskKind::prick_out;
    });
  };
  EXPECT_FALSE(to_prick_out("Ursinia anthemoides"));
  EXPECT_TRUE(to_prick_out("Albuca spiralis"));
}

// Of Oxalis seed dies dry and bulbs rest dry: what the pot holds decides.
TEST_P(CarriedOnBothHalves, ARestingPotIsKeptMoistOnlyForWhatLivesInIt) {
  const auto kept_moist = [&](const char* taxon, int seen) {
    LoadedGarden garden = support::garden_of(garden_in(GetParam(), 20));
    const RecordedSowing sowing = sown(garden, taxon, a_year - 70);
    garden.records.sowings = {sowing};
    garden.records.counts = {counted(sowing, 60, seen)};
    const CarriedPot pot = plan(garden, {}).carried.at(0);
    EXPECT_EQ(pot.stage, PotStage::resting) << taxon;
    return support::gives(pot.reasons, ReasonCode::not_dried_off);
  };
  EXPECT_FALSE(kept_moist("Oxalis hirta", 12));
  EXPECT_TRUE(kept_moist("Oxalis hirta", 0));
  EXPECT_FALSE(kept_moist("Lachenalia mutabilis", 12));
  EXPECT_FALSE(kept_moist("Lachenalia mutabilis", 0));
}

TEST_P(CarriedOnBothHalves, SummerGrowersWakeInWarmth) {
  LoadedGarden garden = support::garden_of(garden_in(GetParam(), 150));
  garden.records.sowings = {sown(garden, "Pachypodium namaquanum", 150)};
  std::ignore = plan(garden, {});
  garden.records.sowings = {sown(garden, "Haworthia truncata", a_year)};
  std::ignore = plan(garden, {});
  garden.records.sowings = {sown(garden, "Adenium obesum", 170)};
  const PlanAnswer answer = plan(garden, {});
  ASSERT_EQ(answer.carried.size(), 1U);
  const CarriedPot& pot = answer.carried.front();
  EXPECT_EQ(pot.stage, PotStage::resting);
  EXPECT_TRUE(support::gives(pot.reasons, ReasonCode::wakes_in_warmth));
  EXPECT_GT(*pot.water.expected.p50, garden.today);
}

TEST_P(CarriedOnBothHalves, APotSownDryGetsTheFirstWaterOfItsPacket) {
  InventedGarden invented = garden_in(GetParam(), 30);
  invented.packets = {"Lachenalia mutabilis, 40 seeds, harvested 200 days ago"};
  LoadedGarden garden = support::garden_of(invented);
  const PlanAnswer packet = plan(garden, {});
  ASSERT_EQ(packet.sowings.size(), 1U);
  RecordedSowing sowing = sown(garden, "Lachenalia mutabilis", 0);
  sowing.first_water.reset();
  sowing.packet = garden.packets.front();
  garden.records.sowings = {sowing};
  garden.packets.clear();
  const PlanAnswer pots = plan(garden, {});
  ASSERT_EQ(pots.carried.size(), 1U);
  EXPECT_EQ(pots.carried.front().stage, PotStage::dry);
  EXPECT_EQ(pots.carried.front().water.expected.p50,
            packet.sowings.front().first_water.expected.p50);
  ASSERT_EQ(pots.tasks.size(), 2U);
  EXPECT_EQ(pots.tasks.front().kind, TaskKind::sow_dry);
  EXPECT_EQ(pots.tasks.front().done_on, garden.today);
  EXPECT_EQ(pots.tasks.back().kind, TaskKind::first_water);
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorth,
                         CarriedOnBothHalves,
                         testing::Values(support::hottest_in_the_south,
                                         support::hottest_in_the_north));

TEST(Carried, SaysWhatTheRecordLacks) {
  LoadedGarden garden = support::garden_of(garden_in(support::hottest_in_the_south, 20));
  RecordedSowing sowing = sown(garden, "Lachenalia mutabilis", a_year - 70);
  garden.records.sowings = {sowing};
  EXPECT_TRUE(
      support::gives(plan(garden, {}).carried.front().reasons, ReasonCode::count_not_recorded));
  sowing.first_water.reset();
  garden.records.sowings = {sowing};
  garden.records.counts = {counted(sowing, 60, 12)};
  const CarriedPot pot = plan(garden, {}).carried.front();
  EXPECT_TRUE(support::gives(pot.reasons, ReasonCode::water_not_recorded));
  EXPECT_EQ(pot.first_water, sowing.on);
}

TEST(Carried, APotIsGivenUpOnlyAfterItsSeasonsAndAPressedSeed) {
  LoadedGarden garden = support::garden_of(garden_in(support::hottest_in_the_south, 20));
  for (const auto& [years, code] :
       {std::pair{1, ReasonCode::pot_kept}, std::pair{5, ReasonCode::press_before_emptying}}) {
    const RecordedSowing sowing = sown(garden, "Lachenalia mutabilis", years * a_year - 70);
    garden.records.sowings = {sowing};
    garden.records.counts = {counted(sowing, 60, 0)};
    EXPECT_TRUE(support::gives(plan(garden, {}).carried.front().reasons, code)) << years;
  }
}

TEST(Carried, LessIsToComeTheMoreHaveCome) {
  LoadedGarden garden = support::garden_of(garden_in(support::hottest_in_the_south, 20));
  double before = 1e9;
  for (const int seen : {10, 25, 38}) {
    const RecordedSowing sowing = sown(garden, "Moraea ciliata", a_year - 70);
    garden.records.sowings = {sowing};
    garden.records.counts = {counted(sowing, 90, seen)};
    const CarriedPot pot = plan(garden, {}).carried.front();
    ASSERT_TRUE(pot.more) << seen;
    EXPECT_LE(pot.more->mean, before) << seen;
    before = pot.more->mean;
  }
}

TEST(Carried, LeavesOutWhatAllCameUpAndDied) {
  LoadedGarden garden = support::garden_of(garden_in(support::hottest_in_the_south, 20));
  const RecordedSowing sowing = sown(garden, "Lachenalia mutabilis", a_year - 70);
  garden.records.sowings = {sowing};
  garden.records.counts = {counted(sowing, 60, 40), counted(sowing, 90, 0)};
  EXPECT_EQ(plan(garden, {}).carried.size(), 0U);
}

TEST(Carried, APlantOutsideOfTheRulesIsListedAndNotPlanned) {
  LoadedGarden garden = support::garden_of(garden_in(support::hottest_in_the_south, 20));
  garden.records.sowings = {sown(garden, "Zzyzx", a_year)};
  const PlanAnswer answer = plan(garden, {});
  ASSERT_EQ(answer.carried.size(), 1U);
  EXPECT_TRUE(support::gives(answer.carried.front().reasons, ReasonCode::unknown_taxon));
  EXPECT_TRUE(answer.tasks.empty());
}

} // namespace
} // namespace nightsow::planner
