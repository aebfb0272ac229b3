#include "climate/base/file.hpp"
#include "climate/base/problem.hpp"
#include "planner/journal/entry_rows.hpp"
#include "planner/journal/journal.hpp"
#include "planner/journal/migrate.hpp"
#include "planner/journal/read_records.hpp"
#include "planner/journal/salvage.hpp"
#include "planner/journal/schema.hpp"
#include "tests/support/invented_journal.hpp"
#include "tests/support/killed_writer.hpp"
#include "tests/support/temporary_folder.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Transaction.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace nightsow::planner {
namespace {

namespace fs = std::filesystem;
using support::invented_count;
using support::invented_sowing;

class AFaultyJournal : public testing::Test {
protected:
  [[nodiscard]] fs::path file() const { return folder_.path() / "journal.db"; }

  [[nodiscard]] std::string bytes() const { return read_whole_file(file(), "the test"); }

  void write(std::string_view content) const { write_atomically(file(), content); }

  /// A sowing and so many counts.
  void fill(int counts) const {
    Journal journal(file());
    journal.together([&] {
      const EntryId sowing = journal.add_sowing(invented_sowing());
      for (int i = 0; i < counts; ++i) {
        journal.add_count(invented_count(sowing, "2026-04-01", i));
      }
    });
  }

  [[nodiscard]] std::size_t files() const {
    return static_cast<std::size_t>(
        std::distance(fs::directory_iterator(folder_.path()), fs::directory_iterator()));
  }

private:
  support::TemporaryFolder folder_;
};

template <typename Error, typename Work> Problem refusal(Work work) {
  try {
    work();
  } catch (const Error& error) {
    return error.problem();
  }
  ADD_FAILURE() << "nothing was refused";
  return {};
}

constexpr int cannot_become_another = 77;
constexpr std::size_t page_bytes = 4096;    // SQLite's own choice
constexpr std::size_t user_version_at = 60; // https://www.sqlite.org/fileformat2.html, 1.3

TEST_F(AFaultyJournal, OfANewerVersionIsRefusedUntouched) {
  fill(3);
  std::string content = bytes();
  content.at(user_version_at + 3) = static_cast<char>(journal_version() + 1);
  write(content);
  const auto refuse = [&](auto work) {
    const Problem problem = refusal<InputError>(work);
    EXPECT_EQ(problem.where, file().string());
    EXPECT_EQ(problem.found, "the journal is of version " + std::to_string(journal_version() + 1));
  };
  refuse([&] { static_cast<void>(read_records(file())); });
  refuse([&] { const Journal journal(file()); });
  EXPECT_EQ(bytes(), content);
  EXPECT_EQ(files(), 1U);
}

TEST_F(AFaultyJournal, ThatIsNoJournalIsRefusedUntouched) {
  for (const std::string_view content : {"short", "taxon,seeds\nAlbuca spiralis,40\n"}) {
    write(std::string(content) + std::string(200, ' '));
    const std::string before = bytes();
    EXPECT_THROW(static_cast<void>(read_records(file())), InputError);
    EXPECT_THROW(const Journal journal(file()), InputError);
    EXPECT_EQ(bytes(), before);
    EXPECT_EQ(files(), 1U);
  }
}

TEST_F(AFaultyJournal, OfAnotherProgramIsRefusedUntouched) {
  fill(3);
  std::string content = bytes();
  constexpr std::size_t application_id_at = 68;
  content.at(application_id_at) = 'x';
  write(content);
  EXPECT_EQ(refusal<InputError>([&] { const Journal journal(file()); }).found,
            "this is a file of another program");
  EXPECT_EQ(bytes(), content);
}

TEST_F(AFaultyJournal, ThatIsEmptyIsTakenAsNew) {
  write("");
  EXPECT_TRUE(read_records(file()).sowings.empty());
  EXPECT_EQ(bytes(), "");
  fill(1);
  EXPECT_EQ(read_records(file()).counts.size(), 1U);
}

TEST_F(AFaultyJournal, ThatIsDamagedIsRefusedWithTheWayOut) {
  fill(2000);
  std::string content = bytes();
  content.replace(content.size() - 2 * page_bytes, page_bytes, page_bytes, '\x5a');
  write(content);
  const Problem problem = refusal<InputError>([&] { static_cast<void>(read_records(file())); });
  EXPECT_EQ(problem.where, file().string());
  EXPECT_EQ(problem.found.substr(0, 24), "the journal is damaged: ");
  EXPECT_NE(problem.remedy.find("salvage"), std::string::npos);
  EXPECT_THROW(const Journal journal(file()), InputError);
  EXPECT_EQ(bytes(), content);
}

TEST_F(AFaultyJournal, WithAnyOnePageSpoiltIsRefusedAndSalvagedButForThatPage) {
  constexpr int counts = 600;
  fill(counts);
  const std::string whole = bytes();
  const std::size_t pages = whole.size() / page_bytes;
  const fs::path saved = file().string() + ".saved";
  std::size_t most_kept = 0;
  for (std::size_t page = 0; page < pages; ++page) {
    std::string content = whole;
    content.replace(page * page_bytes, page_bytes, page_bytes, '\x5a');
    write(content);
    EXPECT_THROW(static_cast<void>(read_records(file())), InputError) << page;
    fs::remove(saved);
    const Salvaged salvaged = salvage(file(), saved);
    EXPECT_EQ(bytes(), content);
    EXPECT_EQ(salvaged.kept.size() + salvaged.lost.size(), counts + 1U) << page;
    const Records records = read_records(saved);
    EXPECT_EQ(records.counts.size() + records.sowings.size(), salvaged.kept.size());
    for (const SeedlingCount& count : records.counts) {
      EXPECT_EQ(count.seen, count.id - 2);
    }
    most_kept = std::max(most_kept, salvaged.kept.size());
  }
  EXPECT_GT(most_kept, counts * 9U / 10U);
  EXPECT_EQ(files(), 2U);
}

// Its first entries as a program of that version wrote them, the others by the present one.
void write_since(const fs::path& file, int version, int counts) {
  {
    SQLite::Database journal(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    journal.execAndGet("PRAGMA journal_mode = WAL");
    migrate(journal, file, journal_migrations().first(static_cast<std::size_t>(version)));
    SQLite::Transaction transaction(journal);
    EntryWriter writer(journal);
    writer.insert(invented_sowing());
    for (int i = 0; i < counts; ++i) {
      writer.insert(invented_count(1, "2026-04-01", i));
    }
    transaction.commit();
  }
  Journal journal(file);
  journal.together([&] {
    for (int i = 0; i < counts / 10; ++i) {
      journal.add_packet_use({0, "a1", support::on("2026-04-02"), 1, PacketUseKind::given});
      journal.add(Potting{0, 1, support::on("2026-04-02"), PottingKind::pricked_out, {}});
      const EntryId other = journal.add_sowing(invented_sowing());
      journal.add(Closing{0, other, support::on("2026-04-03"), ClosingReason::emptied});
    }
  });
}

TEST_F(AFaultyJournal, ThatBeganWithAnyVersionIsSalvagedWholeThoughItsSchemaIsSpoilt) {
  constexpr int counts = 300;
  constexpr std::size_t entries = 1 + counts + 4 * (counts / 10);
  for (int version = 1; version <= journal_version(); ++version) {
    SCOPED_TRACE(version);
    for (const char* part : {"", "-wal", "-shm", ".saved"}) {
      fs::remove(file().string() + part);
    }
    write_since(file(), version, counts);
    std::string content = bytes();
    content.replace(0, page_bytes, page_bytes, '\x5a');
    write(content);
    const fs::path saved = file().string() + ".saved";
    const Salvaged salvaged = salvage(file(), saved);
    EXPECT_EQ(salvaged.kept.size(), entries);
    EXPECT_TRUE(salvaged.lost.empty()) << salvaged.lost.size();
    const Records records = read_records(saved);
    EXPECT_EQ(records.uses.size(), counts / 10U);
    EXPECT_EQ(records.pottings.size(), counts / 10U);
    EXPECT_EQ(records.closings.size(), counts / 10U);
  }
}

TEST_F(AFaultyJournal, OfAnOlderVersionSaysOfALostEntryWhatIsWrongWithIt) {
  {
    SQLite::Database journal(file().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    migrate(journal, file(), journal_migrations().first(1));
    EntryWriter(journal).insert(invented_sowing());
    journal.exec("INSERT INTO entries (kind, on_day) VALUES ('count', '2026-04-01')");
  }
  const Salvaged salvaged = salvage(file(), file().string() + ".saved");
  EXPECT_EQ(salvaged.kept.size(), 1U);
  EXPECT_EQ(salvaged.lost, (std::vector<std::string>{"entry 2: it is not there"}));
}

TEST_F(AFaultyJournal, IsSalvagedWholeWhenNothingIsWrong) {
  fill(10);
  const fs::path saved = file().string() + ".saved";
  const Salvaged salvaged = salvage(file(), saved);
  EXPECT_EQ(salvaged.kept.size(), 11U);
  EXPECT_TRUE(salvaged.lost.empty());
  EXPECT_EQ(read_records(saved).counts.at(9).seen, 9);
  EXPECT_THROW(salvage(file(), saved), UsageError);
}

TEST_F(AFaultyJournal, ThatHoldsNothingReadableIsSaidToBeSo) {
  write(std::string(10 * page_bytes, 'x'));
  const fs::path saved = file().string() + ".saved";
  EXPECT_EQ(refusal<InputError>([&] { salvage(file(), saved); }).found,
            "no entry can be read out of this file");
  EXPECT_EQ(files(), 1U);
}

TEST_F(AFaultyJournal, IsNotSalvagedOverAFileOfANameThatIsNeeded) {
  fill(10);
  std::string content = bytes();
  content.replace(0, page_bytes, page_bytes, '\x5a');
  write(content);
  const fs::path saved = file().string() + ".saved";
  for (const char* taken : {"", "-wal", ".fresh", ".fresh-wal", ".damaged"}) {
    const fs::path other = saved.string() + taken;
    write_atomically(other, "another's");
    const std::size_t before = files();
    EXPECT_EQ(refusal<UsageError>([&] { salvage(file(), saved); }).where, other.string());
    EXPECT_EQ(read_whole_file(other, "the test"), "another's");
    EXPECT_EQ(files(), before) << taken;
    fs::remove(other);
  }
  EXPECT_EQ(salvage(file(), saved).kept.size(), 11U);
}

TEST_F(AFaultyJournal, LeavesNothingBehindWhereSalvagingItFails) {
  write("no journal, and no page of one");
  const fs::path saved = file().string() + ".saved";
  EXPECT_ANY_THROW(salvage(file(), saved));
  EXPECT_FALSE(fs::exists(saved));
  EXPECT_EQ(files(), 1U);
}

TEST_F(AFaultyJournal, InAFolderThatIsNotThereOrTakesNoFilesIsAStorageError) {
  for (const fs::path& name : {file() / "journal.db", fs::path("/proc/journal.db")}) {
    const Problem problem = refusal<StorageError>([&] { const Journal journal(name); });
    EXPECT_EQ(problem.where, name.string());
    EXPECT_FALSE(problem.remedy.empty());
  }
}

TEST_F(AFaultyJournal, ThatAnotherProgramKeepsLockedIsAStorageError) {
  Journal one(file());
  Journal other(file());
  one.together([&] {
    const Problem problem = refusal<StorageError>([&] { other.add_sowing(invented_sowing()); });
    EXPECT_EQ(problem.found, "another program has kept the journal locked for 5 s");
  });
  other.add_sowing(invented_sowing());
  EXPECT_EQ(one.entries().size(), 1U);
}

/// Runs in a program of its own; gives how it ended.
template <typename Work> int in_another_program(Work work) {
  const pid_t child = ::fork();
  if (child == 0) {
    int code = 1;
    try {
      code = work();
    } catch (...) {
      code = 2;
    }
    ::_exit(code);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

// A limit on the size of files stands in for the full disk: the kernel refuses the write.
TEST_F(AFaultyJournal, OnADiskThatTakesNoMoreKeepsWhatItHad) {
  fill(10);
  const int told = in_another_program([&] {
    std::signal(SIGXFSZ, SIG_IGN);
    Journal journal(file());
    const rlimit limit{8 * page_bytes, 8 * page_bytes};
    ::setrlimit(RLIMIT_FSIZE, &limit);
    try {
      journal.together([&] {
        for (int i = 0; i < 20'000; ++i) {
          journal.add_count(invented_count(1, "2026-04-02", i));
        }
      });
    } catch (const StorageError&) {
      return 42;
    }
    return 0;
  });
  EXPECT_EQ(told, 42);
  EXPECT_EQ(read_records(file()).counts.size(), 10U);
  Journal(file()).add_count(invented_count(1, "2026-04-02", 1));
  EXPECT_EQ(read_records(file()).counts.size(), 11U);
}

TEST_F(AFaultyJournal, WrittenByTwoProgramsAtOnceLosesNothing) {
  constexpr int each = 40;
  const auto write_counts = [&](int first) {
    Journal journal(file());
    for (int i = 0; i < each; ++i) {
      const EntryId sowing = journal.add_sowing(invented_sowing());
      journal.add_count(invented_count(sowing, "2026-04-01", first + i));
    }
    return 0;
  };
  const pid_t child = ::fork();
  if (child == 0) {
    int code = 1;
    try {
      code = write_counts(0);
    } catch (...) {
      code = 2;
    }
    ::_exit(code);
  }
  write_counts(1000);
  int status = 0;
  ::waitpid(child, &status, 0);
  EXPECT_EQ(status, 0);
  const Records records = read_records(file());
  EXPECT_EQ(records.sowings.size(), 2U * each);
  ASSERT_EQ(records.counts.size(), 2U * each);
  int below = 0;
  for (const SeedlingCount& count : records.counts) {
    below += count.seen < 1000 ? 1 : 0;
  }
  EXPECT_EQ(below, each);
}

// tests/bench does so 1,000 times.
TEST_F(AFaultyJournal, KilledWhileWritingLosesNoAcknowledgedEntry) {
  constexpr int rounds = 100;
  fill(0);
  const support::KillReport report = support::kill_while_writing(file(), rounds);
  EXPECT_FALSE(report.lost) << "round " << report.rounds;
  EXPECT_FALSE(report.invented) << "round " << report.rounds;
  EXPECT_EQ(report.rounds, rounds);
  EXPECT_GT(report.acknowledged, 0);
}

/// As somebody whom the permissions of files bind: the administrator's go past them.
template <typename Work> int as_an_ordinary_user(Work work) {
  return in_another_program([&] {
    constexpr uid_t nobody = 65534;
    if (::geteuid() == 0 && (::setgid(nobody) != 0 || ::setuid(nobody) != 0)) {
      return cannot_become_another;
    }
    return work();
  });
}

/// Made writable again whatever the test finds, or nobody could clear it up.
class ReadOnly {
public:
  explicit ReadOnly(fs::path folder) : folder_(std::move(folder)) {
    set(fs::perms::owner_read | fs::perms::group_read | fs::perms::others_read);
    fs::permissions(folder_,
                    fs::perms::owner_read | fs::perms::owner_exec | fs::perms::group_read |
                        fs::perms::group_exec | fs::perms::others_read | fs::perms::others_exec);
  }

  ReadOnly(const ReadOnly&) = delete;
  ReadOnly& operator=(const ReadOnly&) = delete;
  ReadOnly(ReadOnly&&) = delete;
  ReadOnly& operator=(ReadOnly&&) = delete;

  ~ReadOnly() {
    fs::permissions(folder_, fs::perms::owner_all);
    set(fs::perms::owner_read | fs::perms::owner_write);
  }

private:
  void set(fs::perms of_files) {
    for (const auto& file : fs::directory_iterator(folder_)) {
      fs::permissions(file.path(), of_files);
    }
  }

  fs::path folder_;
};

TEST_F(AFaultyJournal, InAFolderThatMayOnlyBeReadIsReadAndTakesNoEntry) {
  fill(3);
  const std::string before = bytes();
  int told = 0;
  {
    const ReadOnly closed(file().parent_path());
    told = as_an_ordinary_user([&] {
      if (read_records(file()).counts.size() != 3U) {
        return 3;
      }
      try {
        Journal(file()).add_count(invented_count(1, "2026-04-02", 1));
      } catch (const StorageError& error) {
        const Problem& problem = error.problem();
        return problem.where == file().string() && !problem.remedy.empty() ? 42 : 4;
      }
      return 5;
    });
  }
  if (told == cannot_become_another) {
    GTEST_SKIP() << "this user may neither be bound by permissions nor become another";
  }
  EXPECT_EQ(told, 42);
  EXPECT_EQ(bytes(), before);
  EXPECT_EQ(files(), 1U);
}

} // namespace
} // namespace nightsow::planner
