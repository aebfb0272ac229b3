#include "planner/journal/entry_csv.hpp"

#include "climate/base/problem.hpp"
#include "planner/journal/entry_table.hpp"
#include "planner/journal/journal.hpp"
#include "planner/journal/plan_import.hpp"
#include "planner/journal/read_records.hpp"
#include "tests/support/invented_journal.hpp"
#include "tests/support/temporary_folder.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <string>
#include <string_view>

namespace nightsow::planner {
namespace {

using support::invented_count;
using support::invented_sowing;
using support::on;

const Date today = on("2026-06-01");

PlannedImport planned(std::string_view text, const std::vector<Entry>& there = {}) {
  return plan_import(read_entry_table(text, "sheet.csv"), "sheet.csv", there, {}, today);
}

/// "2:4 found; expected …"
std::string first_fault(const PlannedImport& plan) {
  if (plan.faults.empty()) {
    return "";
  }
  const Problem& fault = plan.faults.front();
  return std::to_string(fault.line) + ':' + std::to_string(fault.column) + ' ' + fault.found;
}

class AJournalAsATable : public testing::Test {
protected:
  [[nodiscard]] std::filesystem::path file(std::string_view name) const {
    return folder_.path() / name;
  }

  /// One of every kind, and awkward text.
  void fill(const std::filesystem::path& name) const {
    Journal journal(name);
    RecordedSowing sowing = invented_sowing();
    sowing.first_water = on("2026-03-05");
    sowing.bench = "cold frame, left";
    sowing.trial = "cover";
    sowing.arm = "\"bag\"";
    sowing.packet.harvested = DateRange{on("2025-11-01"), on("2025-11-30")};
    sowing.packet.stored = {{"shelf", 21.5, on("2026-01-01"), 0.6, true}};
    const EntryId sown = journal.add_sowing(sowing);
    SeedlingCount count = invented_count(sown, "2026-03-20", 7);
    count.dead = 2;
    count.why = DeathCause::damping_off;
    count.phase = CountPhase::before_rest;
    const EntryId counted = journal.add_count(count);
    journal.add_press_test({0, sown, on("2026-04-01"), 3, 2});
    journal.add_germination_test({0, "a1", {14, 20, on("2026-02-01"), 15.3}});
    journal.add_watering({0, sown, on("2026-03-05"), WateringKind::first_water});
    journal.add_move({0, sown, on("2026-03-06"), MoveKind::shade, "0.4"});
    journal.add_note({0, sown, "", on("2026-03-07"), " two lines;\n=1+1 \"ü\"", "photos/a 1.jpg"});
    journal.add_note({0, {}, "a1", on("2026-03-07"), "of the packet", ""});
    journal.add_packet_use({0, "a1", on("2026-03-08"), 5, PacketUseKind::given});
    journal.add(Potting{0, sown, on("2026-05-08"), PottingKind::pricked_out, 5});
    journal.add(Potting{0, sown, on("2026-05-09"), PottingKind::potted_on, {}});
    journal.add(Closing{0, sown, on("2026-05-10"), ClosingReason::given_away});
    const EntryId undo = journal.undo(counted, on("2026-03-21"));
    journal.undo(undo, on("2026-03-22"));
    journal.undo(counted, on("2026-03-23"));
  }

  /// Gives what was not taken.
  [[nodiscard]] PlannedImport import(const std::filesystem::path& into,
                                     std::string_view text) const {
    PlannedImport plan;
    Journal(into).take_in([&](const std::vector<Entry>& there) {
      plan = planned(text, there);
      return plan.entries;
    });
    return plan;
  }

private:
  support::TemporaryFolder folder_;
};

TEST_F(AJournalAsATable, ComesBackWholeIntoAnEmptyOne) {
  fill(file("one.db"));
  const std::string table = entries_csv(read_entries(file("one.db")));
  const PlannedImport plan = import(file("other.db"), table);
  EXPECT_EQ(first_fault(plan), "");
  EXPECT_EQ(plan.entries.size(), 15U);
  EXPECT_EQ(entries_csv(read_entries(file("other.db"))), table);
}

TEST_F(AJournalAsATable, IsTakenOnceHoweverOftenItIsImported) {
  fill(file("one.db"));
  const std::string table = entries_csv(read_entries(file("one.db")));
  const PlannedImport again = import(file("one.db"), table);
  EXPECT_TRUE(again.entries.empty());
  EXPECT_EQ(again.known.size(), 15U);
  EXPECT_EQ(entries_csv(read_entries(file("one.db"))), table);
}

TEST_F(AJournalAsATable, IsNumberedOnBehindEntriesThatAreThere) {
  fill(file("one.db"));
  const std::string table = entries_csv(read_entries(file("one.db")));
  RecordedSowing other = invented_sowing();
  other.taxon = "Bulbine annua";
  Journal(file("other.db")).add_sowing(other);
  EXPECT_EQ(first_fault(import(file("other.db"), table)), "");
  const Records records = read_records(file("other.db"));
  ASSERT_EQ(records.sowings.size(), 2U);
  EXPECT_EQ(records.sowings.back().id, 2);
  EXPECT_EQ(records.press_tests.front().sowing, 2);
  EXPECT_TRUE(records.counts.empty());
  EXPECT_TRUE(import(file("other.db"), table).entries.empty());
}

TEST_F(AJournalAsATable, MayBeSortedByASpreadsheet) {
  fill(file("one.db"));
  std::string table = entries_csv(read_entries(file("one.db")));
  const std::size_t header = table.find("\r\n") + 2;
  const std::size_t first = table.find("\r\n", header) + 2;
  table += table.substr(header, first - header);
  table.erase(header, first - header);
  EXPECT_EQ(first_fault(import(file("other.db"), table)), "");
  EXPECT_EQ(entries_csv(read_entries(file("other.db"))), entries_csv(read_entries(file("one.db"))));
}

TEST(ASheetOfOnesOwn, NeedsOnlyWhatAnEntryOfItsKindNeeds) {
  const PlannedImport plan = planned("\xEF\xBB\xBF"
                                     "Date;Species;Seeds;Sowing;Alive;Died;Died of\r\n"
                                     "\r\n"
                                     "20.3.2026;;;albuca spiralis;7;2;Damping off\r\n"
                                     ";;;;;;\r\n"
                                     "2026-03-02;Albuca spiralis;25,0;;;;\r\n");
  EXPECT_EQ(first_fault(plan), "");
  ASSERT_EQ(plan.entries.size(), 2U);
  EXPECT_EQ(std::get<RecordedSowing>(plan.entries.front().value).seeds, 25);
  const auto count = std::get<SeedlingCount>(plan.entries.back().value);
  EXPECT_EQ(count.sowing, plan.entries.front().id);
  EXPECT_EQ(count.on, on("2026-03-20"));
  EXPECT_EQ(count.why, DeathCause::damping_off);
}

TEST(ASheetOfOnesOwn, MayNameItsSowingsByAnyWord) {
  const PlannedImport plan = planned("entry,what,day,taxon,seeds,sowing,seen\n"
                                     "pot A,sowing,2026-03-02,Albuca spiralis,25,,\n"
                                     "pot B,sowing,2026-03-02,Albuca spiralis,25,,\n"
                                     ",count,2026-03-20,,,pot B,7\n");
  EXPECT_EQ(first_fault(plan), "");
  EXPECT_EQ(std::get<SeedlingCount>(plan.entries.back().value).sowing, 2);
}

TEST(ASheetOfOnesOwn, ClosesASowingAndTellsOfPricking) {
  const PlannedImport plan = planned("day,taxon,seeds,sowing,potted,plants,closed\n"
                                     "2026-03-02,Albuca spiralis,25,,,,\n"
                                     "2026-05-01,,,Albuca spiralis,pricked out,9,\n"
                                     "2026-05-20,,,Albuca spiralis,,,thrown out\n");
  EXPECT_EQ(first_fault(plan), "");
  ASSERT_EQ(plan.entries.size(), 3U);
  EXPECT_EQ(std::get<Potting>(plan.entries[1].value).plants, 9);
  EXPECT_EQ(std::get<Closing>(plan.entries[2].value).why, ClosingReason::thrown_out);
}

struct AfterAClosing {
  std::string_view rows;
  std::string_view fault; ///< of the first that cannot be taken; empty: all are taken
};

TEST(ASheetOfOnesOwn, TellsOfAClosedSowingOnlyWhatWasBeforeItsClosing) {
  constexpr std::string_view header = "entry,what,day,sowing,taxon,seeds,seen,closed,text,undone\n"
                                      "1,sowing,2026-03-02,,Albuca spiralis,25,,,,\n";
  constexpr std::string_view after = "4:0 2026-05-19 is after its sowing was closed, 2026-05-01";
  for (const AfterAClosing& of :
       {AfterAClosing{"2,closing,2026-05-01,1,,,,emptied,,\n3,count,2026-04-20,1,,,9,,,\n", ""},
        AfterAClosing{"2,closing,2026-05-01,1,,,,emptied,,\n3,count,2026-05-01,1,,,9,,,\n", ""},
        AfterAClosing{"2,closing,2026-05-01,1,,,,emptied,,\n3,count,2026-05-19,1,,,9,,,\n", after},
        AfterAClosing{"2,closing,2026-05-01,1,,,,emptied,,\n3,note,2026-05-19,1,,,,,a word,\n", ""},
        AfterAClosing{"2,closing,2026-05-01,1,,,,emptied,,yes\n3,count,2026-05-19,1,,,9,,,\n", ""},
        AfterAClosing{"2,closing,2026-05-01,1,,,,emptied,,\n3,count,2026-05-19,1,,,9,,,yes\n", ""},
        AfterAClosing{"2,count,2026-05-19,1,,,9,,,\n3,closing,2026-05-01,1,,,,emptied,,\n",
                      "4:0 something is told of its sowing on 2026-05-19, after 2026-05-01"},
        AfterAClosing{"2,count,2026-05-19,1,,,9,,,yes\n3,closing,2026-05-01,1,,,,emptied,,\n", ""},
        AfterAClosing{"2,closing,2026-05-01,1,,,,emptied,,\n3,closing,2026-05-19,1,,,,other,,\n",
                      "4:0 its sowing is closed already, since 2026-05-01"},
        AfterAClosing{"2,closing,2026-05-01,1,,,,emptied,,yes\n3,closing,2026-05-19,1,,,,other,,\n",
                      ""}}) {
    const PlannedImport plan = planned(std::string(header) + std::string(of.rows));
    EXPECT_EQ(first_fault(plan), of.fault) << of.rows;
    EXPECT_EQ(plan.faulty_rows, of.fault.empty() ? 0U : 1U) << of.rows;
    EXPECT_TRUE(plan.faults.empty() || !plan.faults.front().remedy.empty()) << of.rows;
  }
}

TEST_F(AJournalAsATable, ClosesNoSowingThatTheJournalHasClosed) {
  {
    Journal journal(file("one.db"));
    const EntryId sown = journal.add_sowing(invented_sowing());
    journal.add(Closing{0, sown, on("2026-05-10"), ClosingReason::given_away});
  }
  constexpr std::string_view header = "what,day,sowing,seen,closed\n";
  const std::string again = std::string(header) + "closing,2026-05-20,1,,other\n";
  EXPECT_EQ(first_fault(import(file("one.db"), again)),
            "2:0 its sowing is closed already, since 2026-05-10");
  EXPECT_EQ(first_fault(import(file("one.db"), std::string(header) + "count,2026-05-20,1,3,\n")),
            "2:0 2026-05-20 is after its sowing was closed, 2026-05-10");
  EXPECT_EQ(read_entries(file("one.db")).size(), 2U);
  Journal(file("one.db")).undo(2, on("2026-05-11"));
  EXPECT_EQ(first_fault(import(file("one.db"), again)), "");
  EXPECT_EQ(read_records(file("one.db")).closings.size(), 1U);
}

TEST_F(AJournalAsATable, ComesBackWholeWhereAClosedSowingWasOpenedAgainForACount) {
  {
    Journal journal(file("one.db"));
    const EntryId sown = journal.add_sowing(invented_sowing());
    const EntryId closed = journal.add(Closing{0, sown, on("2026-05-10"), ClosingReason::emptied});
    journal.undo(closed, on("2026-05-11"));
    journal.add_count(invented_count(sown, "2026-05-12", 7));
    journal.add(Closing{0, sown, on("2026-05-20"), ClosingReason::emptied});
  }
  const std::string table = entries_csv(read_entries(file("one.db")));
  EXPECT_EQ(first_fault(import(file("other.db"), table)), "");
  EXPECT_EQ(entries_csv(read_entries(file("other.db"))), table);
}

TEST(ASheetOfOnesOwn, UndoesWhatItSaysIsUndone) {
  const PlannedImport plan = planned("day,taxon,seeds,undone\n2026-03-02,Albuca spiralis,25,yes\n");
  ASSERT_EQ(plan.entries.size(), 2U);
  EXPECT_EQ(std::get<Undo>(plan.entries.back().value).undone, plan.entries.front().id);
}

TEST(ASheetOfOnesOwn, TakesThePacketsRowFromThoseInHand) {
  Packet packet;
  packet.id = "a1";
  packet.provenance = "slope";
  const PlannedImport plan = plan_import(
      read_entry_table("day,packet,taxon,seeds\n2026-03-02,a1,Albuca spiralis,25\n", "sheet.csv"),
      "sheet.csv",
      {},
      {packet},
      today);
  EXPECT_EQ(std::get<RecordedSowing>(plan.entries.front().value).packet.provenance, "slope");
}

struct Faulty {
  std::string_view row;
  std::string_view fault; ///< line, column, what was found
};

TEST(ASheetOfOnesOwn, IsToldOfEveryFaultWithItsPlace) {
  constexpr std::string_view header =
      "entry,what,day,sowing,taxon,seeds,seen,cause,firm,soft,move,to,undoes\n"
      "1,sowing,2026-03-02,,Albuca spiralis,25,,,,,,,\n"
      "2,sowing,2026-03-02,,Albuca spiralis,9,,,,,,,\n";
  for (const Faulty& of : {
           Faulty{"3,sown,2026-03-02,,x,2,,,,,,,", "4:3 what is \"sown\""},
           Faulty{"3,sowing,2026-03-02,,,2,,,,,,,", "4:22 taxon is empty"},
           Faulty{"3,sowing,03/11/2025,,x,2,,,,,,,", "4:10 day is \"03/11/2025\""},
           Faulty{"3,sowing,2026-03,,x,2,,,,,,,", "4:10 day is \"2026-03\""},
           Faulty{"3,sowing,2026-07-01,,x,2,,,,,,,", "4:0 2026-07-01 is after today, 2026-06-01"},
           Faulty{"3,sowing,2026-03-02,,x,2.5,,,,,,,", "4:24 seeds is \"2.5\""},
           Faulty{"3,sowing,2026-03-02,,x,2,7,,,,,,", "4:26 seen is \"7\""},
           Faulty{"3,count,2026-03-20,1,,,many,,,,,,", "4:24 seen is \"many\""},
           Faulty{"3,count,2026-03-20,1,,,7,slugs,,,,,", "4:26 cause is \"slugs\""},
           Faulty{"3,count,2026-03-20,,,,7,,,,,,", "4:20 sowing is empty"},
           Faulty{"3,count,2026-03-20,9,,,7,,,,,,", "4:20 there is no sowing \"9\" before it"},
           Faulty{"3,count,2026-03-01,1,,,7,,,,,,", "4:0 2026-03-01 is before its sowing was sown"},
           Faulty{"3,count,2026-03-20,albuca spiralis,,,7,,,,,,",
                  "4:20 2 sowings are called \"albuca spiralis\""},
           Faulty{"3,count,2026-03-20,1,Bulbine,,7,,,,,,",
                  "4:20 the taxon is \"Bulbine\", that of its sowing \"Albuca spiralis\""},
           Faulty{"3,press_test,2026-03-20,1,,,,,0,0,,,", "4:31 firm is \"0\""},
           Faulty{"3,move,2026-03-20,1,,,,,,,shade,2,", "4:33 to is \"2\""},
           Faulty{"3,undo,2026-03-20,,,,,,,,,,8", "4:28 there is no entry \"8\" before it"},
           Faulty{"2,count,2026-03-20,1,,,7,,,,,,", "4:0 entry \"2\" stands in an earlier row"},
           Faulty{"3,sowing,2026-03-02,,x,2,,,,,,,,more",
                  "4:33 \"more\" stands beyond the last column"},
       }) {
    const PlannedImport plan = planned(std::string(header) + std::string(of.row) + '\n');
    EXPECT_EQ(first_fault(plan), of.fault) << of.row;
    EXPECT_EQ(plan.faulty_rows, 1U) << of.row;
    EXPECT_EQ(plan.entries.size(), 2U) << of.row;
  }
}

TEST(ASheetOfOnesOwn, LosesWithAFaultySowingWhatBelongsToIt) {
  const PlannedImport plan = planned("entry,what,day,taxon,seeds,sowing,seen\n"
                                     "1,sowing,2026-03-02,Albuca spiralis,none,,\n"
                                     "2,count,2026-03-20,,,1,7\n"
                                     "3,sowing,2026-03-02,Bulbine annua,9,,\n");
  EXPECT_EQ(plan.faulty_rows, 2U);
  EXPECT_EQ(plan.faults.back().found, "its sowing \"1\" cannot be taken");
  ASSERT_EQ(plan.entries.size(), 1U);
  EXPECT_EQ(plan.entries.front().id, 3);
}

TEST(ASheetOfOnesOwn, ThatIsNoTableOfEntriesIsRefused) {
  for (const std::string_view text : {"", "taxon,seeds\nx,2\n", "PK\x03\x04"}) {
    EXPECT_THROW(static_cast<void>(read_entry_table(text, "sheet.csv")), InputError) << text;
  }
}

TEST(ASheetOfOnesOwn, IsNotTakenTwiceWhenTwoRowsSayTheSame) {
  constexpr std::string_view twice = "day,taxon,seeds\n"
                                     "2026-03-02,Albuca spiralis,25\n"
                                     "2026-03-02,Albuca spiralis,25\n";
  const PlannedImport first = planned(twice);
  EXPECT_EQ(first.entries.size(), 2U);
  EXPECT_EQ(planned(twice, first.entries).known.size(), 2U);
  EXPECT_TRUE(planned(twice, first.entries).entries.empty());
}

} // namespace
} // namespace nightsow::planner
