#include "planner/garden/sown_file.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

using support::day;
using support::fault;
using support::texts;

std::vector<Packet> packets() {
  Packet first;
  first.id = "S1";
  first.taxon = "Bulbine annua";
  first.bench = "frame";
  Packet second = first;
  second.id = "S2";
  second.taxon = "Albuca spiralis";
  Packet third = second;
  third.id = "S3";
  return {first, second, third};
}

SownFile read(std::string_view text) {
  const std::vector<std::string> benches{"open bench", "frame"};
  return read_sown_file(text, "sown.csv", packets(), benches);
}

TEST(SownFile, GivesASowingForEachRowByDate) {
  const SownFile file = read("packet,seeds,sown_on,watered_on,bench,pots\n"
                             "S2,10,2026-04-03,,open bench,2\n"
                             "s1,25,2026-03-28,2026-04-01,,\n");
  EXPECT_EQ(texts(file.problems), std::vector<std::string>{});
  ASSERT_EQ(file.sowings.size(), 2U);
  EXPECT_EQ(file.sowings[0].packet_id, "S1");
  EXPECT_EQ(file.sowings[0].taxon, "Bulbine annua");
  EXPECT_EQ(file.sowings[0].seeds, 25);
  EXPECT_EQ(file.sowings[0].on, day("2026-03-28"));
  EXPECT_EQ(file.sowings[0].first_water, day("2026-04-01"));
  EXPECT_EQ(file.sowings[0].bench, "frame");
  EXPECT_EQ(file.sowings[1].bench, "open bench");
  EXPECT_EQ(file.sowings[1].first_water, std::nullopt);
  EXPECT_EQ(file.sowings[1].pots, 2);
  EXPECT_LT(file.sowings[1].id, 0);
  EXPECT_NE(file.sowings[0].id, file.sowings[1].id);
}

TEST(SownFile, TakesOtherNamesOfColumnsAndOtherSeparators) {
  const SownFile file = read("Species;No. of seeds;Date sown;First water\n"
                             "Bulbine annua;12;3.4.2026;5 Apr 2026\n");
  EXPECT_EQ(texts(file.problems), std::vector<std::string>{});
  ASSERT_EQ(file.sowings.size(), 1U);
  EXPECT_EQ(file.sowings[0].packet_id, "S1");
  EXPECT_EQ(file.sowings[0].first_water, day("2026-04-05"));
}

TEST(SownFile, SaysWhichPacketIsNotSaidWhereTwoHaveTheName) {
  const SownFile file = read("taxon,seeds,sown_on\nAlbuca spiralis,12,2026-04-03\n");
  ASSERT_EQ(file.sowings.size(), 1U);
  EXPECT_EQ(file.sowings[0].packet_id, "");
  EXPECT_EQ(texts(file.problems),
            std::vector<std::string>{
                "sown.csv:2:1: which packet of Albuca spiralis was sown is not said; it takes no "
                "seeds off any; write the packet's id into column packet"});
}

TEST(SownFile, TellsEveryRowAndCellThatCannotBeUsed) {
  const SownFile file = read("packet,seeds,sown_on,watered_on,bench,pots,weather\n"
                             "S9,10,2026-04-03,,,,\n"
                             "S1,some,2026-04-03,,,,\n"
                             "S1,10,2026-04,,,,\n"
                             "S1,10,2026-04-03,2026-04-01,shed,0,dull\n"
                             ",,,,,,\n");
  EXPECT_EQ(texts(file.problems),
            (std::vector<std::string>{
                "sown.csv:1:44: column \"weather\" is not used",
                "sown.csv:2:1: packet is \"S9\"; expected the id of a row in packets.csv; the row "
                "is left out until it is corrected",
                "sown.csv:3:4: seeds is \"some\"; expected a whole number from 1 on; the row is "
                "left out until it is corrected",
                "sown.csv:4:7: sown_on is \"2026-04\"; expected a day such as 2026-04-12; the row "
                "is left out until it is corrected",
                "sown.csv:5:18: watered_on is \"2026-04-01\"; expected a day on or after sown_on, "
                "or nothing; it counts as not given until it is corrected",
                "sown.csv:5:34: pots is \"0\"; expected a whole number from 1 on; it counts as not "
                "given until it is corrected",
                "sown.csv:5:29: bench is \"shed\"; expected one of: open bench, frame; it counts "
                "as not given until it is corrected"}));
  ASSERT_EQ(file.sowings.size(), 1U);
  EXPECT_EQ(file.sowings[0].pots, 1);
  EXPECT_EQ(file.sowings[0].bench, "frame");
}

TEST(SownFile, IsRefusedWithoutAColumnThatIsNeeded) {
  for (const char* text : {"seeds,sown_on\n", "packet,sown_on\n", "packet,seeds\n"}) {
    EXPECT_NE(fault<InputError>([&] { return read(text); }).find("sown.csv:1:1: the header lacks"),
              std::string::npos);
  }
  EXPECT_NE(fault<InputError>([] { return read(""); }), "");
}

} // namespace
} // namespace nightsow::planner
