#include "planner/journal/quick_entry.hpp"

#include "climate/base/problem.hpp"
#include "tests/support/invented_journal.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using support::on;

Packet packet_called(std::string id, std::string taxon, std::string bench = "") {
  Packet packet;
  packet.id = std::move(id);
  packet.taxon = std::move(taxon);
  packet.bench = std::move(bench);
  return packet;
}

const std::vector<Packet>& in_hand() {
  static const std::vector<Packet> packets{packet_called("a1", "Albuca spiralis", "cold frame"),
                                           packet_called("a2", "Albuca shawii"),
                                           packet_called("b1", "Bulbine annua")};
  return packets;
}

RecordedSowing sown(std::string what) {
  QuickSowing typed;
  typed.what = std::move(what);
  typed.seeds = 25;
  return sowing_meant(typed, in_hand(), "open bench", on("2026-03-02"));
}

TEST(QuickEntry, FindsThePacketByIdTaxonOrItsFirstLetters) {
  EXPECT_EQ(sown("a2").packet_id, "a2");
  EXPECT_EQ(sown("ALBUCA SPIRALIS").packet_id, "a1");
  EXPECT_EQ(sown("bulb").packet_id, "b1");
}

TEST(QuickEntry, GuessesDayWaterPotAndBench) {
  const RecordedSowing sowing = sown("a1");
  EXPECT_EQ(sowing.on, on("2026-03-02"));
  EXPECT_EQ(sowing.first_water, on("2026-03-02"));
  EXPECT_EQ(sowing.pots, 1);
  EXPECT_EQ(sowing.bench, "cold frame");
  EXPECT_EQ(sown("b1").bench, "open bench");
  EXPECT_EQ(sowing.packet.taxon, "Albuca spiralis");
}

TEST(QuickEntry, TakesATaxonThatIsNotInHandAsTyped) {
  EXPECT_EQ(sown("Gethyllis afra").packet_id, "");
  EXPECT_EQ(sown("Gethyllis afra").taxon, "Gethyllis afra");
}

TEST(QuickEntry, AsksWhenSeveralPacketsAreCalledSo) {
  try {
    sown("albuca");
    FAIL() << "it was not asked";
  } catch (const UsageError& error) {
    EXPECT_EQ(error.problem().found, "2 packets are called \"albuca\"");
    EXPECT_EQ(error.problem().expected, "one of a1 (Albuca spiralis), a2 (Albuca shawii)");
  }
}

TEST(QuickEntry, RefusesADayAfterToday) {
  QuickSowing typed;
  typed.what = "a1";
  typed.seeds = 25;
  typed.on = on("2026-03-02");
  EXPECT_EQ(sowing_meant(typed, in_hand(), "", on("2026-03-02")).on, on("2026-03-02"));
  EXPECT_THROW(static_cast<void>(sowing_meant(typed, in_hand(), "", on("2026-03-01"))), UsageError);
}

TEST(QuickEntry, FindsTheSowingThatIsCountedOrAsks) {
  Records records;
  records.sowings = {support::invented_sowing(), support::invented_sowing()};
  records.sowings[0].id = 1;
  records.sowings[1].id = 4;
  QuickCount typed;
  typed.seen = 7;
  typed.what = "4";
  const SeedlingCount count = count_meant(typed, records, on("2026-04-01"));
  EXPECT_EQ(count.sowing, 4);
  EXPECT_EQ(count.seen, 7);
  EXPECT_EQ(count.on, on("2026-04-01"));
  typed.what = "albuca";
  EXPECT_THROW(static_cast<void>(count_meant(typed, records, on("2026-04-01"))), UsageError);
  records.sowings.pop_back();
  EXPECT_EQ(count_meant(typed, records, on("2026-04-01")).sowing, 1);
  typed.what = "lachenalia";
  EXPECT_THROW(static_cast<void>(count_meant(typed, records, on("2026-04-01"))), UsageError);
}

} // namespace
} // namespace nightsow::planner
