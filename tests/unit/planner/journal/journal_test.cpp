#include "planner/journal/journal.hpp"

#include "climate/base/problem.hpp"
#include "planner/journal/packet_copy.hpp"
#include "planner/journal/read_records.hpp"
#include "tests/support/invented_journal.hpp"
#include "tests/support/temporary_folder.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

namespace nightsow::planner {
namespace {

namespace fs = std::filesystem;
using support::invented_count;
using support::invented_sowing;
using support::on;

class AJournal : public testing::Test {
protected:
  [[nodiscard]] fs::path file() const { return folder_.path() / "journal.db"; }

  [[nodiscard]] Records read() const { return read_records(file()); }

private:
  support::TemporaryFolder folder_;
};

/// What an entry is refused for.
template <typename Work> Problem refusal(Work work) {
  try {
    work();
  } catch (const UsageError& error) {
    return error.problem();
  }
  ADD_FAILURE() << "nothing was refused";
  return {};
}

Packet full_packet() {
  Packet packet;
  packet.id = "a1";
  packet.taxon = "Albuca spiralis \"Frizzle\"";
  packet.seeds = {30, 60, 0.25};
  packet.harvested = DateRange{on("2025-11-01"), on("2025-11-30")};
  packet.harvest_guessed = true;
  packet.received = DateRange{on("2026-01-07"), on("2026-01-07")};
  packet.stored = {{"shelf", 22.5, on("2026-02-01"), 0.6, true}, {"fridge", 5, {}, 0.45, false}};
  packet.tested = GerminationTest{14, 20, on("2026-01-10"), 15.5};
  packet.bench = "cold frame";
  packet.wanted_plants = 6;
  packet.grown_in = "Nürnberg";
  packet.number = "X 12";
  packet.provenance = "dry slope; 300 m";
  packet.irreplaceable = true;
  packet.source = "own";
  packet.notes = "two\nlines";
  packet.line = 7;
  return packet;
}

TEST_F(AJournal, GivesASowingBackAsItWasEntered) {
  RecordedSowing told = invented_sowing();
  told.first_water = on("2026-03-05");
  told.pots = 2;
  told.bench = "open bench";
  told.mat = "mat 1";
  told.cover = "grit";
  told.mix = "2 pumice, 1 leaf mould";
  told.treatment = "smoked";
  told.trial = "cover";
  told.arm = "with grit";
  told.packet = full_packet();
  const EntryId id = Journal(file()).add_sowing(told);
  const Records records = read();
  ASSERT_EQ(records.sowings.size(), 1U);
  const RecordedSowing& sowing = records.sowings.front();
  EXPECT_EQ(sowing.id, id);
  EXPECT_EQ(sowing.packet_id, told.packet_id);
  EXPECT_EQ(sowing.taxon, told.taxon);
  EXPECT_EQ(sowing.on, told.on);
  EXPECT_EQ(sowing.first_water, told.first_water);
  EXPECT_EQ(sowing.seeds, told.seeds);
  EXPECT_EQ(sowing.pots, told.pots);
  EXPECT_EQ(sowing.bench, told.bench);
  EXPECT_EQ(sowing.mat, told.mat);
  EXPECT_EQ(sowing.cover, told.cover);
  EXPECT_EQ(sowing.mix, told.mix);
  EXPECT_EQ(sowing.treatment, told.treatment);
  EXPECT_EQ(sowing.trial, told.trial);
  EXPECT_EQ(sowing.arm, told.arm);
}

TEST_F(AJournal, KeepsACopyOfThePacketAsItWas) {
  RecordedSowing told = invented_sowing();
  told.packet = full_packet();
  Journal(file()).add_sowing(told);
  const Packet packet = read().sowings.at(0).packet;
  EXPECT_EQ(packet.taxon, told.packet.taxon);
  EXPECT_EQ(packet.seeds.low, 30);
  EXPECT_EQ(packet.seeds.high, 60);
  EXPECT_EQ(packet.seeds.grams, 0.25);
  EXPECT_EQ(packet.harvested->first, on("2025-11-01"));
  EXPECT_EQ(packet.harvested->last, on("2025-11-30"));
  EXPECT_TRUE(packet.harvest_guessed);
  EXPECT_EQ(packet.received->first, on("2026-01-07"));
  ASSERT_EQ(packet.stored.size(), 2U);
  EXPECT_EQ(packet.stored[0].place, "shelf");
  EXPECT_EQ(packet.stored[0].store_c, 22.5);
  EXPECT_EQ(packet.stored[0].until, on("2026-02-01"));
  EXPECT_EQ(packet.stored[0].humidity, 0.6);
  EXPECT_FALSE(packet.stored[1].until);
  EXPECT_FALSE(packet.stored[1].known);
  EXPECT_EQ(packet.tested->sprouted, 14);
  EXPECT_EQ(packet.tested->of, 20);
  EXPECT_EQ(packet.tested->on, on("2026-01-10"));
  EXPECT_EQ(packet.tested->at_c, 15.5);
  EXPECT_EQ(packet.wanted_plants, 6);
  EXPECT_EQ(packet.grown_in, "Nürnberg");
  EXPECT_TRUE(packet.irreplaceable);
  EXPECT_EQ(packet.notes, "two\nlines");
  EXPECT_EQ(packet.line, 7U);
  // All of it, and what is not named above.
  EXPECT_EQ(packet_copy(packet), packet_copy(told.packet));
}

TEST_F(AJournal, GivesCountsAndPressTestsBackAsTheyWereEntered) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  SeedlingCount count = invented_count(sowing, "2026-04-01", 7);
  count.dead = 2;
  count.why = DeathCause::damping_off;
  count.phase = CountPhase::back_after_rest;
  journal.add_count(count);
  journal.add_press_test({0, sowing, on("2026-05-01"), 3, 2});
  const Records records = read();
  ASSERT_EQ(records.counts.size(), 1U);
  EXPECT_EQ(records.counts[0].sowing, sowing);
  EXPECT_EQ(records.counts[0].on, on("2026-04-01"));
  EXPECT_EQ(records.counts[0].seen, 7);
  EXPECT_EQ(records.counts[0].dead, 2);
  EXPECT_EQ(records.counts[0].why, DeathCause::damping_off);
  EXPECT_EQ(records.counts[0].phase, CountPhase::back_after_rest);
  ASSERT_EQ(records.press_tests.size(), 1U);
  EXPECT_EQ(records.press_tests[0].sowing, sowing);
  EXPECT_EQ(records.press_tests[0].on, on("2026-05-01"));
  EXPECT_EQ(records.press_tests[0].firm, 3);
  EXPECT_EQ(records.press_tests[0].soft, 2);
}

TEST_F(AJournal, GivesGerminationTestsBackAsTheyWereEntered) {
  Journal journal(file());
  journal.add_germination_test({0, "a1", {14, 20, on("2026-01-10"), 15.5}});
  journal.add_germination_test({0, "a1", {0, 5, on("2026-01-11"), {}}});
  const Records records = read();
  ASSERT_EQ(records.germination_tests.size(), 2U);
  EXPECT_EQ(records.germination_tests[0].packet_id, "a1");
  EXPECT_EQ(records.germination_tests[0].test.sprouted, 14);
  EXPECT_EQ(records.germination_tests[0].test.of, 20);
  EXPECT_EQ(records.germination_tests[0].test.on, on("2026-01-10"));
  EXPECT_EQ(records.germination_tests[0].test.at_c, 15.5);
  EXPECT_FALSE(records.germination_tests[1].test.at_c);
}

TEST_F(AJournal, GivesWateringsMovesAndNotesBackAsTheyWereEntered) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  journal.add_watering({0, sowing, on("2026-03-05"), WateringKind::dry_rest});
  journal.add_move({0, sowing, on("2026-03-06"), MoveKind::shade, "0.5"});
  journal.add_move({0, sowing, on("2026-03-07"), MoveKind::bag, "off"});
  journal.add_note({0, sowing, "", on("2026-03-08"), "first loop\nseen", "photos/1.jpg"});
  journal.add_note({0, {}, "a1", on("2026-03-09"), "smells", ""});
  const Records records = read();
  ASSERT_EQ(records.waterings.size(), 1U);
  EXPECT_EQ(records.waterings[0].sowing, sowing);
  EXPECT_EQ(records.waterings[0].on, on("2026-03-05"));
  EXPECT_EQ(records.waterings[0].kind, WateringKind::dry_rest);
  ASSERT_EQ(records.moves.size(), 2U);
  EXPECT_EQ(records.moves[0].kind, MoveKind::shade);
  EXPECT_EQ(records.moves[0].to, "0.5");
  EXPECT_EQ(records.moves[1].kind, MoveKind::bag);
  EXPECT_EQ(records.moves[1].on, on("2026-03-07"));
  ASSERT_EQ(records.notes.size(), 2U);
  EXPECT_EQ(records.notes[0].sowing, sowing);
  EXPECT_EQ(records.notes[0].text, "first loop\nseen");
  EXPECT_EQ(records.notes[0].photo, "photos/1.jpg");
  EXPECT_FALSE(records.notes[1].sowing);
  EXPECT_EQ(records.notes[1].packet_id, "a1");
}

TEST_F(AJournal, GivesEachListByDateThenNumber) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  journal.add_count(invented_count(sowing, "2026-04-09", 3));
  journal.add_count(invented_count(sowing, "2026-04-01", 1));
  journal.add_count(invented_count(sowing, "2026-04-01", 2));
  const Records records = read();
  ASSERT_EQ(records.counts.size(), 3U);
  EXPECT_EQ(records.counts[0].seen, 1);
  EXPECT_EQ(records.counts[1].seen, 2);
  EXPECT_EQ(records.counts[2].seen, 3);
}

TEST_F(AJournal, LeavesOutWhatWasUndoneAndStillListsIt) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  const EntryId count = journal.add_count(invented_count(sowing, "2026-04-01", 7));
  const EntryId undo = journal.undo(count, on("2026-04-02"));
  EXPECT_TRUE(read().counts.empty());
  EXPECT_EQ(read().sowings.size(), 1U);
  const auto entries = journal.entries();
  ASSERT_EQ(entries.size(), 3U);
  EXPECT_FALSE(entries[0].undone);
  EXPECT_TRUE(entries[1].undone);
  EXPECT_EQ(std::get<SeedlingCount>(entries[1].value).seen, 7);
  EXPECT_EQ(entries[2].id, undo);
  EXPECT_EQ(std::get<Undo>(entries[2].value).undone, count);
}

TEST_F(AJournal, BringsBackWhatWasUndoneWhenTheUndoIsUndone) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  const EntryId count = journal.add_count(invented_count(sowing, "2026-04-01", 7));
  const EntryId undo = journal.undo(count, on("2026-04-02"));
  journal.undo(undo, on("2026-04-03"));
  EXPECT_EQ(read().counts.size(), 1U);
  journal.undo(count, on("2026-04-04"));
  EXPECT_TRUE(read().counts.empty());
}

TEST_F(AJournal, TakesWhatBelongsToASowingOutWithIt) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  journal.add_count(invented_count(sowing, "2026-04-01", 7));
  const EntryId undo = journal.undo(sowing, on("2026-04-02"));
  EXPECT_TRUE(read().sowings.empty());
  EXPECT_TRUE(read().counts.empty());
  EXPECT_EQ(refusal([&] { journal.add_count(invented_count(sowing, "2026-04-03", 8)); }).found,
            "there is no sowing 1");
  journal.undo(undo, on("2026-04-05"));
  EXPECT_EQ(read().counts.size(), 1U);
}

TEST_F(AJournal, RefusesToUndoTwiceOrWhatIsNotThere) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  journal.undo(sowing, on("2026-04-02"));
  EXPECT_EQ(refusal([&] { journal.undo(sowing, on("2026-04-02")); }).found,
            "entry 1 is undone already");
  EXPECT_EQ(refusal([&] { journal.undo(99, on("2026-04-02")); }).found, "there is no entry 99");
  EXPECT_EQ(journal.entries().size(), 2U);
}

TEST_F(AJournal, RefusesWhatCannotBeAndSaysTheRule) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  RecordedSowing none = invented_sowing();
  none.seeds = 0;
  EXPECT_EQ(refusal([&] { journal.add_sowing(none); }).expected, "seeds are 1 or more");
  EXPECT_EQ(refusal([&] { journal.add_count(invented_count(sowing, "2026-04-01", -1)); }).expected,
            "seedlings seen are 0 or more");
  EXPECT_EQ(refusal([&] {
              journal.add_press_test({0, sowing, on("2026-04-01"), 0, 0});
            }).expected,
            "firm and soft together are 1 or more");
  EXPECT_EQ(refusal([&] {
              journal.add_germination_test({0, "a1", {6, 5, on("2026-01-11"), {}}});
            }).expected,
            "seeds up are 0 to those tried");
  EXPECT_EQ(refusal([&] {
              journal.add_move({0, sowing, on("2026-04-01"), MoveKind::shade, "1.5"});
            }).expected,
            "shade is 0 to 1");
  EXPECT_EQ(refusal([&] {
              journal.add_note({0, {}, "", on("2026-04-01"), "", ""});
            }).expected,
            "a note has a text or a photo");
  EXPECT_EQ(journal.entries().size(), 1U);
}

TEST_F(AJournal, RefusesACountBeforeTheSowingAndOneOfNoSowing) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  EXPECT_EQ(refusal([&] { journal.add_count(invented_count(sowing, "2026-03-01", 1)); }).expected,
            "2026-03-02 or later");
  const EntryId count = journal.add_count(invented_count(sowing, "2026-03-02", 1));
  EXPECT_EQ(refusal([&] { journal.add_count(invented_count(count, "2026-04-01", 1)); }).found,
            "there is no sowing 2");
}

TEST_F(AJournal, RefusesASecondClosingUntilTheFirstIsUndone) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  const Closing closing{0, sowing, on("2026-05-01"), ClosingReason::emptied};
  const EntryId first = journal.add(closing);
  EXPECT_THROW(journal.add(closing), UsageError);
  journal.undo(first, on("2026-05-02"));
  EXPECT_GT(journal.add(closing), first);
  EXPECT_EQ(read_records(file()).closings.size(), 1U);
}

TEST_F(AJournal, WritesTogetherAllOrNothing) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  EXPECT_THROW(journal.together([&] {
    journal.add_count(invented_count(sowing, "2026-04-01", 1));
    journal.add_count(invented_count(sowing, "2026-04-02", -1));
  }),
               UsageError);
  EXPECT_TRUE(read().counts.empty());
  journal.together([&] {
    journal.add_count(invented_count(sowing, "2026-04-01", 1));
    journal.add_count(invented_count(sowing, "2026-04-02", 2));
  });
  EXPECT_EQ(read().counts.size(), 2U);
}

TEST_F(AJournal, ThatIsNotThereIsReadAsEmptyAndNotMade) {
  const Records records = read();
  EXPECT_TRUE(records.sowings.empty());
  EXPECT_TRUE(fs::is_empty(file().parent_path()));
}

TEST_F(AJournal, ThatWasReadLeavesNothingBesideIt) {
  Journal(file()).add_sowing(invented_sowing());
  EXPECT_EQ(read().sowings.size(), 1U);
  std::size_t files = 0;
  for (const auto& entry : fs::directory_iterator(file().parent_path())) {
    files += entry.path() == file() ? 1U : 100U;
  }
  EXPECT_EQ(files, 1U);
}

TEST_F(AJournal, IsReadWhileItIsWritten) {
  Journal journal(file());
  const EntryId sowing = journal.add_sowing(invented_sowing());
  journal.together([&] {
    journal.add_count(invented_count(sowing, "2026-04-01", 1));
    EXPECT_TRUE(read().counts.empty());
  });
  EXPECT_EQ(read().counts.size(), 1U);
}

TEST_F(AJournal, UpToADayKnowsNothingOfLaterOnes) {
  Journal journal(file());
  RecordedSowing told = invented_sowing();
  told.first_water = on("2026-03-20");
  const EntryId sowing = journal.add_sowing(told);
  journal.add_count(invented_count(sowing, "2026-04-01", 1));
  journal.add_count(invented_count(sowing, "2026-04-02", 2));
  const Records known = up_to(read(), on("2026-04-01"));
  EXPECT_EQ(known.sowings.at(0).first_water, on("2026-03-20"));
  ASSERT_EQ(known.counts.size(), 1U);
  EXPECT_EQ(known.counts[0].seen, 1);
  EXPECT_FALSE(up_to(read(), on("2026-03-19")).sowings.at(0).first_water);
  EXPECT_TRUE(up_to(read(), on("2026-03-01")).sowings.empty());
}

} // namespace
} // namespace nightsow::planner
