#include "planner/garden/load_garden.hpp"
#include "planner/journal/journal.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/support/invented_journal.hpp"

#include <gtest/gtest.h>

#include <filesystem>

namespace nightsow::planner {
namespace {

using support::day;
using support::TemporaryFolder;

// write_garden lists 40 seeds of packet b1 and has readings from 1 December 2025 to 28 February.
void sow(const TemporaryFolder& folder, std::string_view on, int seeds) {
  RecordedSowing sowing = support::invented_sowing();
  sowing.packet_id = "b1";
  sowing.on = day(on);
  sowing.seeds = seeds;
  Journal(folder.path() / "journal.db").add_sowing(sowing);
}

TEST(RecordsInGarden, AreEmptyWithoutAJournalAndNoneIsMade) {
  const TemporaryFolder folder;
  support::write_garden(folder);
  const LoadedGarden garden = as_of(load_garden(folder.path()), day("2026-02-20"));
  EXPECT_TRUE(garden.records.sowings.empty());
  EXPECT_FALSE(std::filesystem::exists(folder.path() / "journal.db"));
}

TEST(RecordsInGarden, AreKnownUpToTodayAndPacketsAreLessBySoMuch) {
  const TemporaryFolder folder;
  support::write_garden(folder);
  sow(folder, "2026-01-10", 10);
  sow(folder, "2026-02-10", 5);
  const GardenFolder loaded = load_garden(folder.path());
  const LoadedGarden before = as_of(loaded, day("2026-01-09"));
  EXPECT_TRUE(before.records.sowings.empty());
  EXPECT_EQ(before.packets.at(0).seeds.low, 40);
  const LoadedGarden between = as_of(loaded, day("2026-01-10"));
  EXPECT_EQ(between.records.sowings.size(), 1U);
  EXPECT_EQ(between.packets.at(0).seeds.low, 30);
  EXPECT_EQ(as_of(loaded, day("2026-02-20")).packets.at(0).seeds.low, 25);
}

TEST(RecordsInGarden, ThatCannotBeReadStopTheAnswer) {
  const TemporaryFolder folder;
  support::write_garden(folder);
  folder.write("journal.db", "no journal, but long enough to be taken for the file of something");
  EXPECT_THROW(static_cast<void>(load_garden(folder.path())), InputError);
}

TEST(RecordsInGarden, NeedNoReadings) {
  const TemporaryFolder folder;
  support::write_garden(folder, support::smallest_garden, "no readings");
  sow(folder, "2026-01-10", 10);
  EXPECT_EQ(load_seed_and_records(folder.path()).records.sowings.size(), 1U);
}

} // namespace
} // namespace nightsow::planner
