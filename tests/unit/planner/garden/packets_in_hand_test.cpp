#include "planner/garden/packets_in_hand.hpp"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

namespace nightsow::planner {
namespace {

Packet packet_of(std::string id, SeedCount seeds) {
  Packet packet;
  packet.id = std::move(id);
  packet.seeds = seeds;
  return packet;
}

Records sown(const std::string& packet_id, std::vector<int> seeds) {
  Records records;
  for (const int count : seeds) {
    RecordedSowing& sowing = records.sowings.emplace_back();
    sowing.packet_id = packet_id;
    sowing.seeds = count;
  }
  return records;
}

TEST(PacketsInHand, ShrinkByAllThatWasSownOfThem) {
  const auto left = packets_in_hand({packet_of("a", {40, 40, {}}), packet_of("b", {30, 60, {}})},
                                    sown("a", {10, 5}));
  ASSERT_EQ(left.size(), 2u);
  EXPECT_EQ(left[0].seeds.low, 25);
  EXPECT_EQ(left[0].seeds.high, 25);
  EXPECT_EQ(left[1].seeds.low, 30);
  EXPECT_EQ(left[1].seeds.high, 60);
}

TEST(PacketsInHand, ARangeNeverGoesBelowNothing) {
  const auto left = packets_in_hand({packet_of("a", {30, 60, {}})}, sown("a", {40}));
  ASSERT_EQ(left.size(), 1u);
  EXPECT_EQ(left[0].seeds.low, 0);
  EXPECT_EQ(left[0].seeds.high, 20);
}

TEST(PacketsInHand, AWhollySownPacketIsGone) {
  EXPECT_TRUE(packets_in_hand({packet_of("a", {40, 40, {}})}, sown("a", {40})).empty());
  EXPECT_TRUE(packets_in_hand({packet_of("a", {32, 48, {}})}, sown("a", {41})).empty());
}

TEST(PacketsInHand, AWeighedPacketStaysAndSowingsOfNoPacketTakeNothing) {
  EXPECT_EQ(packets_in_hand({packet_of("a", {{}, {}, 0.2})}, sown("a", {40})).size(), 1u);
  EXPECT_EQ(packets_in_hand({packet_of("", {40, 40, {}})}, sown("", {40})).size(), 1u);
}

} // namespace
} // namespace nightsow::planner
