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
  return sowing_meant(typed, {in_hand(), in_hand()}, "open bench", on("2026-03-02"));
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

TEST(QuickEntry, TakesACollectionNumberOrACultivarForAPlantAndNotForAPacket) {
  for (const char* name :
       {"Albuca sp. MV12", "Conophytum 'Karoo 2'", "LITHOPS LESLIEI", "Massonia sp. 12"}) {
    EXPECT_EQ(sown(name).packet_id, "") << name;
    EXPECT_EQ(sown(name).taxon, name);
  }
  for (const char* packet : {"a7", "S12", "LITHOPS"}) {
    EXPECT_THROW(static_cast<void>(sown(packet)), UsageError) << packet;
  }
}

Problem refusal(QuickSowing typed, const std::vector<Packet>& all) {
  try {
    static_cast<void>(sowing_meant(typed, {in_hand(), all}, "", on("2026-03-02")));
  } catch (const UsageError& error) {
    return error.problem();
  }
  ADD_FAILURE() << "it was not refused";
  return {};
}

TEST(QuickEntry, RefusesWhatLooksLikeAPacketAndIsNoneWithTheNearest) {
  struct Case {
    const char* typed;
    const char* nearest;
  };

  const std::vector<Packet> all{packet_called("S10", "Albuca spiralis"),
                                packet_called("S07", "Bulbine annua")};
  for (const Case& one :
       {Case{"S1O", "S10"}, Case{"S08", "S07"}, Case{"S99", ""}, Case{"XYZ", ""}}) {
    QuickSowing typed;
    typed.what = one.typed;
    typed.seeds = 5;
    SCOPED_TRACE(one.typed);
    const Problem problem = refusal(typed, all);
    EXPECT_EQ(problem.found, std::string("no packet is called \"") + one.typed + '"');
    const std::string nearest =
        *one.nearest == 0 ? "" : std::string("did you mean \"") + one.nearest + "\"? ";
    EXPECT_EQ(problem.remedy, nearest + "`nightsow packet list` shows them; nothing was written");
  }
}

TEST(QuickEntry, RefusesMoreSeedsThanThePacketHoldsUnlessToldToGoOn) {
  std::vector<Packet> packets = in_hand();
  packets[0].seeds = {16.0, 24.0, {}}; // about 20
  QuickSowing typed;
  typed.what = "a1";
  const auto sow = [&](int seeds) {
    typed.seeds = seeds;
    return sowing_meant(typed, {packets, packets}, "", on("2026-03-02")).seeds;
  };
  EXPECT_EQ(sow(24), 24);
  EXPECT_THROW(sow(25), UsageError);
  typed.anyway = true;
  EXPECT_EQ(sow(25), 25);
}

TEST(QuickEntry, RefusesAPacketThatIsUsedUpUnlessToldToGoOn) {
  const std::vector<Packet> all{packet_called("S10", "Gethyllis afra")};
  QuickSowing typed;
  typed.what = "S10";
  typed.seeds = 5;
  EXPECT_EQ(refusal(typed, all).found, "5 seeds were typed, and packet S10 is used up");
  typed.anyway = true;
  EXPECT_EQ(sowing_meant(typed, {in_hand(), all}, "", on("2026-03-02")).packet_id, "S10");
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
  const PacketsToSow packets{in_hand(), in_hand()};
  EXPECT_EQ(sowing_meant(typed, packets, "", on("2026-03-02")).on, on("2026-03-02"));
  EXPECT_THROW(static_cast<void>(sowing_meant(typed, packets, "", on("2026-03-01"))), UsageError);
}

/// Two sowings of one packet, of which the first was closed in May.
Records one_closed() {
  Records records;
  records.sowings = {support::invented_sowing(), support::invented_sowing()};
  records.sowings[0].id = 1;
  records.sowings[1].id = 4;
  records.closings = {{7, 1, on("2026-05-01"), ClosingReason::emptied}};
  return records;
}

TEST(QuickEntry, CountsTheSowingThatIsNotClosed) {
  const Records records = one_closed();
  QuickCount typed;
  typed.what = "albuca";
  EXPECT_EQ(count_meant(typed, records, on("2026-06-01")).sowing, 4);
  typed.what = "1";
  EXPECT_THROW(static_cast<void>(count_meant(typed, records, on("2026-05-02"))), UsageError);
  EXPECT_EQ(count_meant(typed, records, on("2026-05-01")).sowing, 1);
}

TEST(QuickEntry, NamesTheNearestSowingOfAMistypedOne) {
  QuickCount typed;
  typed.what = "albucca";
  try {
    static_cast<void>(count_meant(typed, one_closed(), on("2026-06-01")));
    FAIL() << "it was not refused";
  } catch (const UsageError& error) {
    EXPECT_EQ(error.problem().remedy.substr(0, 23), "did you mean \"Albuca\"? ");
  }
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
