#include "planner/garden/packet_columns.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

MatchedHeader match(std::string_view line) {
  CsvReader reader{line, ',', "packets.csv"};
  EXPECT_TRUE(reader.next());
  return match_header(reader, "packets.csv");
}

std::vector<std::string> names(std::string_view line) {
  std::vector<std::string> result;
  for (const PacketColumn* column : match(line).columns) {
    result.emplace_back(column == nullptr ? "-" : column->name);
  }
  return result;
}

std::vector<std::string> problems(std::string_view line) {
  return support::texts(match(line).problems);
}

using Names = std::vector<std::string>;

TEST(PacketColumns, OwnNamesNeedNoNoteHoweverTheyAreSpelled) {
  EXPECT_EQ(names("Taxon, SEEDS ,Wanted plants,grown-in"),
            (Names{"taxon", "seeds", "wanted_plants", "grown_in"}));
  EXPECT_EQ(problems("Taxon, SEEDS ,Wanted plants,grown-in"), Names{});
}

TEST(PacketColumns, UsualOtherNamesAreTakenWithANote) {
  EXPECT_EQ(names("Species,No. of seeds"), (Names{"taxon", "seeds"}));
  EXPECT_EQ(
      problems("Species,seeds"),
      Names{"packets.csv:1:1: the column \"Species\" is read as taxon; rename it to taxon, or to "
            "something else if it is not"});
}

TEST(PacketColumns, NearMissesAreTakenWithANote) {
  EXPECT_EQ(names("taxon,seeds,harvestd"), (Names{"taxon", "seeds", "harvested"}));
  EXPECT_EQ(problems("taxon,seeds,harvestd").size(), 1U);
}

TEST(PacketColumns, AnOwnNameComesBeforeAGuess) {
  EXPECT_EQ(names("name,taxon,seed,seeds"), (Names{"-", "taxon", "-", "seeds"}));
}

TEST(PacketColumns, AColumnThatIsNotUsedIsNoted) {
  EXPECT_EQ(problems("taxon,flower colour,seeds"),
            Names{"packets.csv:1:7: the column \"flower colour\" is not used"});
}

TEST(PacketColumns, EmptyColumnsAreNothing) {
  EXPECT_EQ(problems("taxon,seeds,,"), Names{});
}

TEST(PacketColumns, AHeaderWithoutSeedsIsRefused) {
  EXPECT_EQ(
      support::fault<InputError>([] { return match("taxon,harvested"); }),
      "packets.csv:1:1: the header has no column seeds; expected at least the columns taxon and "
      "seeds, separated by comma, semicolon or tab; the first line should look like: "
      "taxon,seeds,harvested,received");
}

} // namespace
} // namespace nightsow::planner
