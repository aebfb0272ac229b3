#include "planner/journal/quick_care.hpp"

#include "climate/base/problem.hpp"
#include "tests/support/invented_journal.hpp"

#include <gtest/gtest.h>

#include <string>

namespace nightsow::planner {
namespace {

using support::invented_sowing;
using support::on;

const Date today = on("2026-06-01");

/// Three pots: watered on the frame, dry on the frame, in dry rest on the open bench.
Records three_pots() {
  Records records;
  for (const EntryId id : {1, 2, 3}) {
    RecordedSowing sowing = invented_sowing();
    sowing.id = id;
    sowing.bench = id == 3 ? "open bench" : "frame";
    if (id != 2) {
      sowing.first_water = sowing.on;
    }
    records.sowings.push_back(sowing);
  }
  records.waterings.push_back({4, 3, on("2026-05-01"), WateringKind::dry_rest});
  return records;
}

CareMeant watered(std::string what,
                  std::optional<WateringKind> kind = {},
                  bool even_so = false,
                  const std::vector<NotDriedOff>& not_dried_off = {}) {
  const Records records = three_pots();
  return waterings_meant({std::move(what), kind, {}, even_so},
                         open_sowings(records, {"open bench", "frame"}, today),
                         records,
                         not_dried_off,
                         today);
}

std::vector<std::pair<EntryId, WateringKind>> told(const CareMeant& care) {
  std::vector<std::pair<EntryId, WateringKind>> told;
  for (const EntryValue& value : care.entries) {
    const auto& watering = std::get<Watering>(value);
    told.emplace_back(watering.sowing, watering.kind);
  }
  return told;
}

using Told = std::vector<std::pair<EntryId, WateringKind>>;

TEST(Water, OfOnePotIsWhatThatPotNeeds) {
  EXPECT_EQ(told(watered("1")), (Told{{1, WateringKind::watered}}));
  EXPECT_EQ(told(watered("2")), (Told{{2, WateringKind::first_water}}));
  EXPECT_EQ(told(watered("3")), (Told{{3, WateringKind::rewet}}));
  EXPECT_EQ(told(watered("3", WateringKind::dry_rest)), (Told{{3, WateringKind::dry_rest}}));
}

TEST(Water, NoDryRestIsWrittenOfAKindThatIsNotDriedOffUnlessItIsToBeEvenSo) {
  const std::vector<NotDriedOff> evergreen{{1, "is evergreen"}};
  EXPECT_THROW(static_cast<void>(watered("1", WateringKind::dry_rest, false, evergreen)),
               UsageError);
  EXPECT_EQ(told(watered("1", WateringKind::dry_rest, true, evergreen)),
            (Told{{1, WateringKind::dry_rest}}));
  EXPECT_EQ(told(watered("1", {}, false, evergreen)), (Told{{1, WateringKind::watered}}));
}

TEST(Water, ADryRestOfAllLeavesOutWhatIsNotDriedOff) {
  Records records = three_pots();
  records.waterings.clear();
  const auto open = open_sowings(records, {"open bench", "frame"}, today);
  const CareMeant care = waterings_meant(
      {"all", WateringKind::dry_rest, {}}, open, records, {{3, "is evergreen"}}, today);
  EXPECT_EQ(told(care), (Told{{1, WateringKind::dry_rest}}));
  EXPECT_EQ(care.left_out_not_dried_off, std::vector<EntryId>{3});
}

TEST(Water, OfManyPotsLeavesOutWhatIsDryOrAtRest) {
  const CareMeant all = watered("all");
  EXPECT_EQ(told(all), (Told{{1, WateringKind::watered}}));
  EXPECT_EQ(all.left_out_dry, (std::vector<EntryId>{2}));
  EXPECT_EQ(all.left_out_resting, (std::vector<EntryId>{3}));
  EXPECT_EQ(told(watered("Frame")), (Told{{1, WateringKind::watered}}));
  EXPECT_EQ(told(watered("all", WateringKind::first_water)),
            (Told{{2, WateringKind::first_water}}));
  EXPECT_EQ(told(watered("all", WateringKind::rewet)), (Told{{3, WateringKind::rewet}}));
  EXPECT_THROW(watered("open bench"), UsageError);
}

TEST(Water, ThatCouldMeanSeveralPotsIsAskedBack) {
  EXPECT_THROW(watered("albuca"), UsageError);
  EXPECT_THROW(watered("bulbine"), UsageError);
}

TEST(AMove, TakesAllPotsOfABenchAlong) {
  const Records records = three_pots();
  const auto open = open_sowings(records, {}, today);
  EXPECT_EQ(moves_meant({"frame", MoveKind::bag, "off", {}}, open, records, today).entries.size(),
            2U);
  EXPECT_EQ(moves_meant({"1", MoveKind::bag, "off", {}}, open, records, today).entries.size(), 1U);
}

TEST(OpenSowings, StandInTrayOrderOnTheBenchTheyWereMovedTo) {
  Records records = three_pots();
  records.moves.push_back({5, 1, on("2026-05-02"), MoveKind::bench, "open bench"});
  records.counts.push_back(support::invented_count(2, "2026-05-03", 4));
  const auto open = open_sowings(records, {"open bench", "frame"}, today);
  ASSERT_EQ(open.size(), 3U);
  EXPECT_EQ(open[0].sowing.id, 1);
  EXPECT_EQ(open[1].sowing.id, 3);
  EXPECT_TRUE(open[1].resting());
  EXPECT_EQ(open[2].last_count->seen, 4);
  EXPECT_FALSE(open[2].wetted());
}

TEST(OpenSowings, LeaveOutWhatNobodyWroteOfForOverAYear) {
  EXPECT_EQ(open_sowings(three_pots(), {}, on("2027-05-01")).size(), 1U);
}

TEST(OpenSowings, LeaveOutWhatWasClosed) {
  Records records = three_pots();
  records.closings.push_back({5, 1, on("2026-05-20"), ClosingReason::thrown_out});
  EXPECT_EQ(open_sowings(records, {}, today).size(), 2U);
}

TEST(AClosing, IsOnceAndNotBeforeWhatIsToldOfTheSowing) {
  Records records = three_pots();
  records.counts.push_back(support::invented_count(1, "2026-05-03", 4));
  const auto close = [&](const char* day) {
    return closing_meant({"1", ClosingReason::given_away, on(day)}, records, today);
  };
  EXPECT_THROW(static_cast<void>(close("2026-05-02")), UsageError);
  const Closing closing = close("2026-05-03");
  EXPECT_EQ(closing.sowing, 1);
  EXPECT_EQ(closing.why, ClosingReason::given_away);
  records.closings.push_back(closing);
  EXPECT_THROW(static_cast<void>(close("2026-05-04")), UsageError);
}

TEST(APotting, IsOfASowingThatIsLookedAfter) {
  Records records = three_pots();
  const auto potted = [&] {
    return potting_meant({"2", PottingKind::pricked_out, 7, {}}, records, today);
  };
  EXPECT_EQ(potted().plants, 7);
  EXPECT_EQ(potted().on, today);
  records.closings.push_back({5, 2, on("2026-05-20"), ClosingReason::other});
  EXPECT_THROW(static_cast<void>(potted()), UsageError);
}

TEST(ANote, IsOfASowingElseOfAPacketElseOfTheGarden) {
  Packet packet;
  packet.id = "b1";
  packet.taxon = "Bulbine annua";
  const Records records = three_pots();
  const auto note = [&](std::string what) {
    return note_meant({std::move(what), "gnats", "", {}}, records, {packet}, today);
  };
  EXPECT_EQ(note("2").sowing, 2);
  EXPECT_EQ(note("bulb").packet_id, "b1");
  EXPECT_FALSE(note("").sowing);
  EXPECT_THROW(note("albuca"), UsageError);
  EXPECT_THROW(note("lithops"), UsageError);
}

TEST(ATest, IsOfOneSowingOrOnePacket) {
  Packet packet;
  packet.id = "b1";
  packet.taxon = "Bulbine annua";
  EXPECT_EQ(press_test_meant({"2", 3, 2, {}}, three_pots(), today).sowing, 2);
  EXPECT_EQ(germination_test_meant({"bulb", 14, 20, 15.0, {}}, {packet}, today).packet_id, "b1");
  EXPECT_EQ(packet_use_meant({"b1", 5, PacketUseKind::given, {}}, {packet}, today).seeds, 5);
  EXPECT_THROW(static_cast<void>(packet_use_meant({"x", 5, {}, {}}, {packet}, today)), UsageError);
  EXPECT_THROW(
      static_cast<void>(press_test_meant({"2", 3, 2, on("2026-06-02")}, three_pots(), today)),
      UsageError);
}

} // namespace
} // namespace nightsow::planner
