#include "planner/garden/packet_file.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace nightsow::planner {
namespace {

using support::day;
using Texts = std::vector<std::string>;

const std::vector<std::string> benches{"open bench", "cold frame"};

PacketFile read(std::string_view text) {
  return read_packet_file(text, "packets.csv", benches);
}

// A file of one packet with one more column.
PacketFile read_with(std::string_view column, std::string_view cell) {
  return read("packet,taxon,seeds,received," + std::string(column) + "\nb1,Bulbine annua,40,2026," +
              std::string(cell) + "\n");
}

Packet packet_with(std::string_view column, std::string_view cell) {
  return read_with(column, cell).packets.at(0);
}

Texts warnings(const PacketFile& file) {
  std::vector<Problem> kept;
  for (const Problem& problem : file.problems) {
    if (problem.severity != Severity::note) {
      kept.push_back(problem);
    }
  }
  return support::texts(kept);
}

Texts ids(const PacketFile& file) {
  Texts result;
  for (const Packet& packet : file.packets) {
    result.push_back(packet.id);
  }
  return result;
}

TEST(PacketFile, TaxonAndSeedsAreEnough) {
  const PacketFile file = read("taxon,seeds\nBulbine annua,40\n");
  ASSERT_EQ(file.packets.size(), 1U);
  EXPECT_EQ(file.packets[0].taxon, "Bulbine annua");
  EXPECT_EQ(file.packets[0].seeds.middle(), 40.0);
  EXPECT_EQ(file.packets[0].line, 2U);
}

TEST(PacketFile, TextCellsAreKeptAsTheyStand) {
  EXPECT_EQ(packet_with("grown_in", "Karoo").grown_in, "Karoo");
  EXPECT_EQ(packet_with("number", "AB 12/3").number, "AB 12/3");
  EXPECT_EQ(packet_with("provenance", "near the pan").provenance, "near the pan");
  EXPECT_EQ(packet_with("source", "swap").source, "swap");
  EXPECT_EQ(packet_with("notes", "\"two, or three\"").notes, "two, or three");
}

TEST(PacketFile, CellsWithAFormAreRead) {
  EXPECT_EQ(packet_with("harvested", "2025-11").harvested->first, day("2025-11-01"));
  EXPECT_EQ(packet_with("stored", "fridge").stored.at(0).store_c, 5.0);
  EXPECT_EQ(packet_with("tested", "14/20 2026-01-10 15C").tested->sprouted, 14);
  EXPECT_EQ(packet_with("wanted_plants", "6").wanted_plants, 6);
  EXPECT_TRUE(packet_with("irreplaceable", "x").irreplaceable);
}

TEST(PacketFile, TheHeaderWeWriteIsOneWeRead) {
  const PacketFile file = read(packet_header());
  EXPECT_TRUE(file.packets.empty());
  EXPECT_TRUE(file.problems.empty());
  EXPECT_TRUE(
      packet_header().starts_with("packet,taxon,seeds,harvested,received,stored,tested,bench,"));
}

TEST(PacketFile, TheSeparatorIsTheHeaders) {
  for (const std::string_view text : {"taxon,seeds\nBulbine annua,40\n",
                                      "taxon;seeds\nBulbine annua;40\n",
                                      "taxon\tseeds\nBulbine annua\t40\n",
                                      "\n\n\"taxon\";\"seeds\"\r\nBulbine annua;40"}) {
    EXPECT_EQ(read(text).packets.at(0).taxon, "Bulbine annua") << text;
  }
}

TEST(PacketFile, ADecimalCommaNeedsAnotherSeparatorOrQuotes) {
  EXPECT_EQ(read("taxon;seeds\nA b;0,2g\n").packets.at(0).seeds.grams, 0.2);
  EXPECT_EQ(read("taxon,seeds\nA b,\"0,2 g\"\n").packets.at(0).seeds.grams, 0.2);
}

TEST(PacketFile, HabitsOfSpreadsheetsDoNoHarm) {
  const PacketFile file = read("\xEF\xBB\xBFtaxon,seeds,,\r\n\"Bulbine annua\",40,,\r\n,,,\r\n\r\n"
                               "Oxalis obtusa,12,,\r\n");
  ASSERT_EQ(file.packets.size(), 2U);
  EXPECT_EQ(file.packets[0].taxon, "Bulbine annua");
  EXPECT_EQ(file.packets[1].line, 5U);
  EXPECT_TRUE(warnings(file).empty());
}

TEST(PacketFile, Latin1IsReadAndSaid) {
  const PacketFile file = read("packet,taxon,seeds,received\ng,\xD7 Gasteraloe,30\x96"
                               "60,2026\n");
  EXPECT_EQ(file.packets.at(0).taxon, "× Gasteraloe");
  EXPECT_EQ(file.packets.at(0).seeds.middle(), 45.0);
  EXPECT_EQ(
      to_text(file.problems.at(0)),
      "packets.csv: the file is not UTF-8 and was read as Latin-1 (Windows-1252); export it as "
      "CSV UTF-8 if names look wrong");
}

TEST(PacketFile, AFaultyCellCountsAsNotGivenAndIsListedWithItsPlace) {
  const std::vector<std::pair<std::string, std::string>> cases{{"harvested", "03/11/2025"},
                                                               {"stored", "attic"},
                                                               {"tested", "70%"},
                                                               {"wanted_plants", "some"},
                                                               {"irreplaceable", "maybe"}};
  for (const auto& [column, cell] : cases) {
    const PacketFile file = read_with(column, cell);
    ASSERT_EQ(warnings(file).size(), 1U) << column;
    const std::string text = warnings(file)[0];
    EXPECT_TRUE(text.starts_with("packets.csv:2:26: " + column + " is \"" + cell + "\"; expected "))
        << text;
    EXPECT_TRUE(text.ends_with("; it counts as not given until it is corrected")) << text;
    EXPECT_EQ(file.packets.size(), 1U);
  }
}

TEST(PacketFile, ARowWithoutUsableSeedsIsLeftOutAndListed) {
  const PacketFile file =
      read("taxon,seeds,received\nBulbine annua,many,2026\nOxalis obtusa,12,2026\n");
  EXPECT_EQ(file.packets.size(), 1U);
  EXPECT_EQ(
      warnings(file),
      Texts{"packets.csv:2:15: seeds is \"many\"; expected a number such as 40, ~40, 30-60 or "
            "0.2g; the row is left out until it is corrected"});
}

TEST(PacketFile, ARowWithoutTaxonIsLeftOutAndListed) {
  const PacketFile file = read("taxon,seeds\n,40\nOxalis obtusa\n");
  EXPECT_TRUE(file.packets.empty());
  EXPECT_EQ(
      warnings(file),
      (Texts{"packets.csv:2:1: taxon is empty; expected the plant's name; the row is left out "
             "until it is corrected",
             "packets.csv:3: seeds is empty; expected a number such as 40, ~40, 30-60 or 0.2g; "
             "the row is left out until it is corrected"}));
}

TEST(PacketFile, ARowWithMoreCellsThanTheHeaderIsLeftOutAndListed) {
  const PacketFile file = read("taxon,seeds,notes\nBulbine annua,40,from a friend, fresh\n");
  EXPECT_TRUE(file.packets.empty());
  EXPECT_EQ(
      warnings(file),
      Texts{"packets.csv:2:32: \"fresh\" stands beyond the last column; expected 3 cells as in "
            "the header; the row is left out; put cells that hold the separator in double "
            "quotes"});
}

TEST(PacketFile, AnEmptyPacketIsANote) {
  const PacketFile file = read("taxon,seeds\nBulbine annua,0\n");
  EXPECT_TRUE(file.packets.empty());
  EXPECT_EQ(support::texts(file.problems),
            Texts{"packets.csv:2:1: Bulbine annua has no seeds; the row is left out"});
}

TEST(PacketFile, ABenchIsFoundWhateverItsCapitals) {
  EXPECT_EQ(packet_with("bench", "Cold Frame").bench, "cold frame");
  EXPECT_EQ(packet_with("bench", "").bench, "");
}

TEST(PacketFile, AnUnknownBenchIsListedAndTheFirstOneTaken) {
  const PacketFile file = read_with("bench", "cold fram");
  EXPECT_EQ(file.packets.at(0).bench, "");
  EXPECT_EQ(warnings(file),
            Texts{"packets.csv:2:26: the garden has no bench \"cold fram\"; expected one of: open "
                  "bench, cold frame; did you mean \"cold frame\"? the packet stands on the first "
                  "bench"});
}

TEST(PacketFile, FilesThatAreNoTableAreRefused) {
  const std::vector<std::pair<std::string, std::string>> cases{
      {"PK\x03\x04...", "this is a spreadsheet's own file"},
      {"\xFF\xFEt", "this text is in UTF-16"},
      {std::string("taxon\0seeds", 11), "this is no text"},
      {"", "the file is empty"},
      {"\n\n", "the file is empty"}};
  for (const auto& [text, found] : cases) {
    EXPECT_EQ(support::fault<InputError>([&, &content = text] { return read(content); }),
              "packets.csv: " + found +
                  "; expected a table as text, the first line its header; export the sheet as CSV "
                  "(UTF-8)");
  }
}

TEST(PacketFile, PacketsWithoutIdAreNamedAfterTaxonAndHarvest) {
  const PacketFile file =
      read("taxon,seeds,harvested\nBulbine annua,40,2025-11\nBulbine annua,9,11/2025\n"
           "Oxalis obtusa,5,2025\n");
  EXPECT_EQ(ids(file),
            (Texts{"bulbine-annua-2025-11", "bulbine-annua-2025-11-2", "oxalis-obtusa-2025"}));
  EXPECT_EQ(
      support::texts(file.problems),
      Texts{"packets.csv: no id in the column packet, so named after taxon and harvest: "
            "bulbine-annua-2025-11, bulbine-annua-2025-11-2, oxalis-obtusa-2025; write ids of "
            "your own if these must never change"});
}

TEST(PacketFile, AWrittenIdIsNeverTakenByAMadeUpOne) {
  const PacketFile file = read("packet,taxon,seeds,harvested\n,Bulbine annua,40,2025\n"
                               "bulbine-annua-2025,Bulbine annua,9,2025\n");
  EXPECT_EQ(ids(file), (Texts{"bulbine-annua-2025-2", "bulbine-annua-2025"}));
}

TEST(PacketFile, TheSecondPacketOfOneIdIsRenamedAndListed) {
  const PacketFile file =
      read("packet,taxon,seeds,harvested\nb1,A b,40,2025\nb1,A c,9,2025\nb1-2,A d,9,2025\n");
  EXPECT_EQ(ids(file), (Texts{"b1", "b1-2", "b1-2-2"}));
  EXPECT_EQ(
      warnings(file).at(0),
      "packets.csv:3: a second packet \"b1\"; expected every packet with an id of its own; it is "
      "called b1-2 until one is renamed");
}

TEST(PacketFile, AnUnknownHarvestIsGuessedFromTheReceipt) {
  const PacketFile file = read("packet,taxon,seeds,received\nb1,Bulbine annua,40,2026-01-10\n");
  const Packet& packet = file.packets.at(0);
  EXPECT_TRUE(packet.harvest_guessed);
  EXPECT_EQ(packet.harvested->first, day("2024-11-10"));
  EXPECT_EQ(packet.harvested->last, day("2025-11-10"));
  EXPECT_EQ(
      support::texts(file.problems),
      Texts{"packets.csv: harvest not given, so taken to be 2 to 14 months before receipt: b1; "
            "fill in harvested where you know it; a year is enough"});
}

TEST(PacketFile, WithoutHarvestAndReceiptTheAgeIsUnknown) {
  const PacketFile file = read("packet,taxon,seeds\nb1,Bulbine annua,40\nb2,Bulbine annua,40\n");
  EXPECT_FALSE(file.packets.at(0).harvested);
  EXPECT_EQ(support::texts(file.problems),
            Texts{"packets.csv: neither harvested nor received is given, so the age of the seed is "
                  "unknown: b1, b2; fill in one of the two; a year is enough"});
}

TEST(PacketFile, ANoteNamesTenPacketsAndCountsTheRest) {
  std::string text = "packet,taxon,seeds\n";
  for (int i = 1; i <= 12; ++i) {
    text += "p" + std::to_string(i) + ",Bulbine annua,40\n";
  }
  EXPECT_NE(to_text(read(text).problems.at(0)).find("p9, p10 and 2 more;"), std::string::npos);
}

TEST(PacketFile, AHarvestEndsWithTheReceipt) {
  const PacketFile file =
      read("packet,taxon,seeds,harvested,received\nb1,Bulbine annua,40,2025,2025-03-10\n");
  EXPECT_EQ(file.packets.at(0).harvested->first, day("2025-01-01"));
  EXPECT_EQ(file.packets.at(0).harvested->last, day("2025-03-10"));
}

TEST(PacketFile, AHarvestAfterTheReceiptIsListed) {
  const PacketFile file =
      read("packet,taxon,seeds,harvested,received\nb1,Bulbine annua,40,2026,2025-03-10\n");
  EXPECT_EQ(
      warnings(file),
      Texts{"packets.csv:2: b1 was harvested 2026, after it was received 2025-03-10; expected a "
            "harvest before that; correct one of the two; the harvest is used"});
}

} // namespace
} // namespace nightsow::planner
