#include "planner/garden/new_packet.hpp"

#include "climate/base/problem.hpp"
#include "planner/garden/packet_file.hpp"

#include <gtest/gtest.h>

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {
namespace {

const std::vector<PacketCell>& bulbine() {
  static const std::vector<PacketCell> cells{
      {"taxon", "TAXON", "Bulbine annua"}, {"seeds", "SEEDS", "9"}, {"notes", "--notes", "a, b"}};
  return cells;
}

struct Added {
  std::string_view before;
  std::string_view after;
};

TEST(ANewPacket, LeavesTheRestOfTheFileAsItIs) {
  for (const Added& file : {
           Added{"packet,taxon,seeds,notes\na1,Albuca spiralis,40,\n",
                 "packet,taxon,seeds,notes\na1,Albuca spiralis,40,\n"
                 "bulbine-annua,Bulbine annua,9,\"a, b\"\n"},
           Added{"\xEF\xBB\xBFSpecies;Seeds;Shelf\r\n\"Albuca \"\"x\"\"\";40;top",
                 "\xEF\xBB\xBFSpecies;Seeds;Shelf;notes\r\n\"Albuca \"\"x\"\"\";40;top\r\n"
                 "Bulbine annua;9;;a, b\r\n"},
           Added{"taxon,seeds,packet,notes\nBulbine annua,3,bulbine-annua,\n",
                 "taxon,seeds,packet,notes\nBulbine annua,3,bulbine-annua,\n"
                 "Bulbine annua,9,bulbine-annua-2,\"a, b\"\n"},
       }) {
    EXPECT_EQ(with_packet_row(file.before, "packets.csv", bulbine()), file.after);
  }
}

TEST(ANewPacket, MakesTheFileWhenThereIsNone) {
  const std::string text = with_packet_row("", "packets.csv", bulbine());
  EXPECT_EQ(text.substr(0, text.find('\n') + 1), packet_header());
  EXPECT_EQ(read_packet_file(text, "packets.csv", {}).packets.size(), 1U);
}

TEST(ANewPacket, OfNoSeedsIsRefused) {
  for (const char* seeds : {"0", "~0", "0-0", "0.0"}) {
    const std::array<PacketCell, 2> cells{
        {{"taxon", "TAXON", "Bulbine annua"}, {"seeds", "SEEDS", seeds}}};
    EXPECT_THROW(static_cast<void>(with_packet_row("", "packets.csv", cells)), UsageError) << seeds;
  }
}

TEST(ANewPacket, IsRefusedWhereItsColumnCannotHoldACell) {
  const std::array<PacketCell, 3> cells{{{"taxon", "TAXON", "Bulbine annua"},
                                         {"seeds", "SEEDS", "9"},
                                         {"harvested", "--harvested", "03/11/2025"}}};
  try {
    static_cast<void>(with_packet_row("", "packets.csv", cells));
    FAIL() << "nothing was refused";
  } catch (const UsageError& error) {
    EXPECT_EQ(error.problem().where, "--harvested");
  }
}

TEST(ANewPacket, WithLettersBeyondASCIINeedsAFileInUTF8) {
  const std::array<PacketCell, 2> cells{{{"taxon", "TAXON", "Bülbine"}, {"seeds", "SEEDS", "9"}}};
  EXPECT_THROW(
      static_cast<void>(with_packet_row("taxon,seeds\nM\xFCller,3\n", "packets.csv", cells)),
      InputError);
}

TEST(APacketTakenOut, LeavesTheRestOfTheFileAsItIs) {
  struct Taken {
    std::string_view before;
    std::size_t line;
    std::string_view after;
    std::string_view row;
  };

  for (const Taken& file : {
           Taken{"taxon,seeds\na,1\nb,2\n", 2, "taxon,seeds\nb,2\n", "a,1"},
           Taken{"taxon,seeds\na,1\nb,2", 3, "taxon,seeds\na,1\n", "b,2"},
           Taken{"\xEF\xBB\xBFtaxon;seeds\r\n\r\n\"a\nx\";1\r\nb;2\r\n",
                 3,
                 "\xEF\xBB\xBFtaxon;seeds\r\n\r\nb;2\r\n",
                 "\"a\nx\";1"},
       }) {
    const PacketRowTaken taken = without_packet_row(file.before, "packets.csv", file.line);
    EXPECT_EQ(taken.text, file.after);
    EXPECT_EQ(taken.row, file.row);
  }
}

TEST(APacketTakenOut, IsTheFileBeforeItWasAdded) {
  const std::string before = "packet,taxon,seeds,notes\r\na1,Albuca spiralis,40,\r\n";
  const std::string with = with_packet_row(before, "packets.csv", bulbine());
  const std::size_t line = read_packet_file(with, "packets.csv", {}).packets.back().line;
  EXPECT_EQ(without_packet_row(with, "packets.csv", line).text, before);
}

} // namespace
} // namespace nightsow::planner
