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

} // namespace
} // namespace nightsow::planner
