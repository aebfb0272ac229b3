#include "planner/answers/plan.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

namespace nightsow::planner {
namespace {

using support::garden_of;
using support::gives;
using support::InventedGarden;
using support::sowing_of;

LoadedGarden garden_with(std::vector<std::string> packets) {
  InventedGarden garden;
  garden.climate.hottest_day_of_year = support::hottest_in_the_south;
  garden.days_after_hottest = 20;
  garden.packets = std::move(packets);
  return garden_of(garden);
}

const std::string many = "Lachenalia mutabilis, 400 seeds, harvested 300 days ago";

double amount_of(const Shopping& shopping, ShoppingItem::Kind kind) {
  double amount = 0.0;
  for (const ShoppingItem& item : shopping.items) {
    amount += item.kind == kind ? item.amount : 0.0;
  }
  return amount;
}

TEST(Amounts, SowNoMoreSeedsThanThePlantsWantedNeed) {
  LoadedGarden garden = garden_with({many});
  garden.packets.front().wanted_plants = 4;
  const Sowing line = plan(garden, {}).sowings.at(0);
  ASSERT_TRUE(line.wish && line.wish->seeds_8_in_10 && line.wish->seeds_9_in_10);
  EXPECT_LT(*line.wish->seeds_8_in_10, *line.wish->seeds_9_in_10);
  EXPECT_EQ(line.how.seeds_to_sow, line.wish->seeds_9_in_10);
  EXPECT_LT(*line.how.seeds_to_sow, 400);
  EXPECT_GE(line.wish->chance, 0.9);
  EXPECT_FALSE(gives(line.risks, ReasonCode::wish_out_of_reach));
}

TEST(Amounts, OfASmallPacketSowAllAndSayThatItIsSmall) {
  LoadedGarden garden = garden_with({"Lachenalia mutabilis, 10 seeds, harvested 300 days ago"});
  garden.packets.front().wanted_plants = 9;
  const Sowing line = plan(garden, {}).sowings.at(0);
  EXPECT_EQ(line.how.seeds_to_sow, 10);
  EXPECT_LT(line.wish->chance, 0.5);
  EXPECT_TRUE(gives(line.risks, ReasonCode::wish_out_of_reach));
}

// Seed of a kind that keeps for a year or two, ten years old.
TEST(Amounts, WhereHardlyAnySeedLivesSayThatThePacketCannotGiveItAndNoNumber) {
  LoadedGarden garden = garden_with({"Albuca spiralis, 40 seeds, harvested 3700 days ago"});
  garden.packets.front().wanted_plants = 5;
  const Sowing line = plan(garden, {}).sowings.at(0);
  ASSERT_TRUE(line.wish);
  EXPECT_FALSE(line.wish->seeds_8_in_10);
  EXPECT_FALSE(line.wish->seeds_19_in_20);
  EXPECT_EQ(line.how.seeds_to_sow, 40);
  EXPECT_TRUE(gives(line.risks, ReasonCode::wish_not_this_way));
  EXPECT_FALSE(gives(line.risks, ReasonCode::wish_out_of_reach));
}

TEST(Amounts, WithoutAWishSowThePacket) {
  const Sowing line = plan(garden_with({many}), {}).sowings.at(0);
  EXPECT_FALSE(line.wish);
  EXPECT_EQ(line.how.seeds_to_sow, 400);
}

TEST(Amounts, ListALabelForEachPotAndLeaveOutWhatIsNotCounted) {
  const PlanAnswer answer = plan(garden_with({many, "Bulbine annua, 0.2g"}), {});
  EXPECT_EQ(amount_of(answer.shopping, ShoppingItem::Kind::pots),
            amount_of(answer.shopping, ShoppingItem::Kind::labels));
  EXPECT_EQ(amount_of(answer.shopping, ShoppingItem::Kind::pots),
            sowing_of(answer, "Lachenalia mutabilis").how.pots);
  EXPECT_EQ(answer.shopping.not_counted.size(), 1U);
}

TEST(Amounts, WiderPotsOfTheGardenAreFewerAndNeedMoreMix) {
  LoadedGarden garden = garden_with({many});
  const PlanAnswer usual = plan(garden, {});
  const std::string depth = usual.sowings.at(0).how.pot_depth.value_or("standard");
  garden.garden.pot_sizes.push_back({depth, 16.0, 14.0, 16.0});
  const PlanAnswer wide = plan(garden, {});
  EXPECT_LT(wide.sowings.at(0).how.pots, usual.sowings.at(0).how.pots);
  EXPECT_GT(amount_of(wide.shopping, ShoppingItem::Kind::mix),
            amount_of(usual.shopping, ShoppingItem::Kind::mix));
}

// On free days.

TEST(FreeDays, OfTooFewPotsADayCarrySowingsToEarlierOnes) {
  const std::vector<std::string> packets{"Lachenalia mutabilis, 40 seeds, harvested 300 days ago",
                                         "Lachenalia aloides, 40 seeds, harvested 300 days ago"};
  LoadedGarden garden = garden_with(packets);
  const PlanAnswer free = plan(garden, {});
  garden.garden.pots_per_day = *free.sowings.at(0).how.pots;
  const PlanAnswer tight = plan(garden, {});
  EXPECT_EQ(free.sowings.at(0).sow_on, free.sowings.at(1).sow_on);
  EXPECT_NE(tight.sowings.at(0).sow_on, tight.sowings.at(1).sow_on);
  for (const Sowing& line : tight.sowings) {
    EXPECT_LE(*line.sow_on, *line.first_water.expected.p50);
  }
  EXPECT_EQ(tight.free_days->left_over, 0);
  EXPECT_LE(tight.free_days->gap, 0.005);
}

TEST(FreeDays, OnAFullBenchLeaveTheLeastOverAndTellTheWayOut) {
  LoadedGarden garden = garden_with({many, "Bulbine annua, 10 seeds, harvested 300 days ago"});
  const PlanAnswer free = plan(garden, {});
  garden.garden.benches.front().pots = *sowing_of(free, "Lachenalia mutabilis").how.pots;
  const PlanAnswer full = plan(garden, {});
  EXPECT_TRUE(sowing_of(full, "Lachenalia mutabilis").sow_on);
  EXPECT_FALSE(sowing_of(full, "Bulbine annua").sow_on);
  EXPECT_EQ(full.free_days->left_over, 1);
  EXPECT_TRUE(gives(full.warnings, ReasonCode::bench_full));
}

} // namespace
} // namespace nightsow::planner
