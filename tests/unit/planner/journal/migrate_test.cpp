#include "planner/journal/migrate.hpp"

#include "planner/journal/entry_rows.hpp"
#include "planner/journal/journal.hpp"
#include "planner/journal/read_records.hpp"
#include "planner/journal/schema.hpp"
#include "tests/support/invented_journal.hpp"
#include "tests/support/temporary_folder.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>
#include <gtest/gtest.h>

#include <array>
#include <cstddef>
#include <filesystem>
#include <string>

namespace nightsow::planner {
namespace {

namespace fs = std::filesystem;

class AnOlderJournal : public testing::Test {
protected:
  AnOlderJournal() { Journal(file()).add_sowing(support::invented_sowing()); }

  [[nodiscard]] fs::path file() const { return folder_.path() / "journal.db"; }

  [[nodiscard]] fs::path backup(std::string_view ending = "") const {
    return file().string() + ".version-" + std::to_string(journal_version()) + std::string(ending);
  }

  /// A program that knows one step more.
  void open_with_next(std::string_view sql) const {
    const std::array<Migration, 1> next{{{journal_version() + 1, sql}}};
    SQLite::Database journal(file().string(), SQLite::OPEN_READWRITE);
    migrate(journal, file(), next);
  }

  [[nodiscard]] int version() const {
    SQLite::Database journal(file().string(), SQLite::OPEN_READWRITE);
    return version_of(journal);
  }

private:
  support::TemporaryFolder folder_;
};

constexpr std::string_view new_column = "ALTER TABLE notes ADD COLUMN mood TEXT";
constexpr std::string_view half_a_step = "CREATE TABLE moods (id INTEGER); SELECT no_such_thing";

TEST_F(AnOlderJournal, IsBroughtUpToDateAfterACopy) {
  open_with_next(new_column);
  EXPECT_EQ(version(), journal_version() + 1);
  ASSERT_TRUE(fs::exists(backup()));
  EXPECT_EQ(read_records(backup()).sowings.size(), 1U);
}

TEST_F(AnOlderJournal, KeepsEarlierCopies) {
  fs::copy_file(file(), backup());
  open_with_next(new_column);
  EXPECT_EQ(read_records(backup("-2")).sowings.size(), 1U);
}

TEST_F(AnOlderJournal, StaysAsItWasWhenAStepFails) {
  EXPECT_THROW(open_with_next(half_a_step), SQLite::Exception);
  EXPECT_EQ(version(), journal_version());
  EXPECT_EQ(read_records(file()).sowings.size(), 1U);
  SQLite::Database journal(file().string());
  EXPECT_FALSE(journal.tableExists("moods"));
}

TEST_F(AnOlderJournal, IsLeftAloneWhenItIsUpToDate) {
  SQLite::Database journal(file().string(), SQLite::OPEN_READWRITE);
  EXPECT_FALSE(migrate(journal, file(), journal_migrations()));
  EXPECT_FALSE(fs::exists(backup()));
}

/// A journal of that version, as the program of its time wrote it: a sowing of 25 and a count.
void write_old(const fs::path& file, int version) {
  SQLite::Database journal(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  migrate(journal, file, journal_migrations().first(static_cast<std::size_t>(version)));
  EntryWriter writer(journal);
  writer.insert(support::invented_sowing());
  writer.insert(support::invented_count(1, "2026-03-20", 7));
}

TEST(AnOldJournal, OfEachVersionIsReadAndTakesWhatCameSince) {
  for (int version = 1; version < journal_version(); ++version) {
    SCOPED_TRACE(version);
    const support::TemporaryFolder folder;
    const fs::path file = folder.path() / "journal.db";
    write_old(file, version);
    EXPECT_EQ(read_records(file).counts.at(0).seen, 7);
    {
      Journal journal(file);
      journal.add(Potting{0, 1, support::on("2026-08-01"), PottingKind::pricked_out, 5});
      journal.add(Closing{0, 1, support::on("2026-09-01"), ClosingReason::moved_on});
    }
    const Records records = read_records(file);
    EXPECT_EQ(records.pottings.at(0).plants, 5);
    EXPECT_EQ(records.closings.at(0).why, ClosingReason::moved_on);
    EXPECT_EQ(records.counts.size(), 1U);
    const Records before = read_records(file.string() + ".version-" + std::to_string(version));
    EXPECT_EQ(before.counts.size(), 1U);
    EXPECT_TRUE(before.closings.empty());
  }
}

TEST_F(AnOlderJournal, RefusesToDeleteOrChangeAnEntry) {
  SQLite::Database journal(file().string(), SQLite::OPEN_READWRITE);
  EXPECT_THROW(journal.exec("DELETE FROM sowings"), SQLite::Exception);
  EXPECT_THROW(journal.exec("UPDATE sowings SET seeds = 3"), SQLite::Exception);
  EXPECT_EQ(read_records(file()).sowings.at(0).seeds, 25);
}

} // namespace
} // namespace nightsow::planner
