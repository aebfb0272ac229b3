#include "planner/model/store_history.hpp"

#include "species-rules/viability.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace nightsow::planner {
namespace {

using support::day;

const Date today = day("2026-11-15");
const Date harvested = day("2025-11-15");

Packet packet(const std::string& text) {
  return support::packet_from(text, today);
}

// As most kinds are.
Kept kept_dry(std::span<const StoreStage> stages, Date from, Date until) {
  return kept(stages, from, until, species_rules::SeedStorage::orthodox);
}

Packet bought() {
  Packet packet;
  packet.received = DateRange{day("2026-01-10"), day("2026-01-10")};
  return packet;
}

TEST(StoreHistory, SeedOfOnesOwnWithNothingWrittenLiesOnTheShelf) {
  const Packet own = packet("Bulbine, harvested 2025-11-15");
  EXPECT_TRUE(store_known(own));
  const auto histories = store_histories(own, harvested);
  ASSERT_EQ(histories.size(), 1U);
  ASSERT_EQ(histories.front().size(), 1U);
  EXPECT_DOUBLE_EQ(histories.front().front().store_c, species_rules::room_c);
}

TEST(StoreHistory, BoughtSeedMayHaveBeenWarmAllAlongOrCooledAfterTwoMonths) {
  EXPECT_FALSE(store_known(bought()));
  const auto histories = store_histories(bought(), harvested);
  ASSERT_EQ(histories.size(), 2U);
  const double a = kept_dry(histories[0], harvested, today).room_years;
  const double b = kept_dry(histories[1], harvested, today).room_years;
  EXPECT_NEAR(std::max(a, b), 365 / 365.25, 1e-9);
  // Sixty days of room, the rest at 5 °C.
  const double cooled = (60 + 305 * species_rules::ageing_factor(5.0, 0.45)) / 365.25;
  EXPECT_NEAR(std::min(a, b), cooled, 1e-9);
}

TEST(StoreHistory, OnlyTheUnknownStageIsGuessed) {
  const Packet some =
      packet("Bulbine, harvested 2025-11-15, stored unknown to 2026-05-01; freezer");
  for (const auto& stages : store_histories(some, harvested)) {
    EXPECT_DOUBLE_EQ(stages.back().store_c, -18.0);
    for (const StoreStage& stage : stages) {
      EXPECT_TRUE(stage.known);
    }
  }
}

TEST(StoreHistory, AYearInTheRoomIsAYearAndRipensFifteenDegreesADay) {
  const Kept year =
      kept_dry(store_histories(packet("Bulbine"), harvested).front(), harvested, today);
  EXPECT_NEAR(year.room_years, 365 / 365.25, 1e-9);
  EXPECT_NEAR(year.ripened_c_d(5.0), 365 * 15.0, 1e-6); // 20 °C over a base of 5
}

// The reverse of all other seed: what keeps a Bulbine kills a Haemanthus.
TEST(StoreHistory, SeedThatDiesDryAgesLeastInADampFridgeAndMostOnADryShelf) {
  using species_rules::SeedStorage;
  const auto years = [](const char* stored, SeedStorage storage) {
    const Packet seed = packet(std::string{"Haemanthus, stored "} + stored);
    return kept(store_histories(seed, harvested).front(), harvested, today, storage).room_years;
  };
  EXPECT_LT(years("fridge damp", SeedStorage::recalcitrant),
            years("fridge", SeedStorage::recalcitrant));
  EXPECT_LT(years("fridge", SeedStorage::recalcitrant),
            years("shelf damp", SeedStorage::recalcitrant));
  EXPECT_LT(years("shelf damp", SeedStorage::recalcitrant),
            years("shelf", SeedStorage::recalcitrant));
  EXPECT_GT(years("freezer", SeedStorage::recalcitrant), years("shelf", SeedStorage::recalcitrant));
  EXPECT_GT(years("fridge damp", SeedStorage::orthodox), years("fridge", SeedStorage::orthodox));
}

TEST(StoreHistory, EachStageCountsForItsOwnDays) {
  const Packet staged = packet("Bulbine, stored shelf 25C to 2026-02-23; fridge");
  const Kept all = kept_dry(store_histories(staged, harvested).front(), harvested, today);
  EXPECT_NEAR(all.ripened_c_d(5.0), 100 * 20.0, 20.0); // a hundred days at 20 over the base
  const Kept cool = kept_dry(store_histories(staged, harvested).front(), day("2026-03-01"), today);
  EXPECT_DOUBLE_EQ(cool.ripened_c_d(5.0), 0.0);
  EXPECT_LT(cool.room_years, all.room_years);
}

TEST(StoreHistory, BackwardsNothingIsKept) {
  const Kept none =
      kept_dry(store_histories(packet("Bulbine"), harvested).front(), today, harvested);
  EXPECT_DOUBLE_EQ(none.room_years, 0.0);
  EXPECT_DOUBLE_EQ(none.ripened_c_d(5.0), 0.0);
}

} // namespace
} // namespace nightsow::planner
