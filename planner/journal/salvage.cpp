#include "planner/journal/salvage.hpp"

#include "climate/base/file.hpp"
#include "climate/base/problem.hpp"
#include "planner/journal/damaged_entries.hpp"
#include "planner/journal/entry_rows.hpp"
#include "planner/journal/entry_words.hpp"
#include "planner/journal/mend_schema.hpp"
#include "planner/journal/open_database.hpp"
#include "planner/journal/sqlite_failure.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <fmt/format.h>
#include <sqlite3.h>

namespace nightsow::planner {

namespace fs = std::filesystem;

namespace {

// By number: what an entry belongs to has been tried before.
Salvaged copy(SQLite::Database& damaged, SQLite::Database& whole) {
  Salvaged result;
  const DamagedEntries entries(damaged);
  const EntryId last = entries.last();
  SQLite::Transaction transaction(whole);
  EntryWriter writer(whole);
  for (EntryId id = 1; id <= last; ++id) {
    const EntryFound found = entries.find(id);
    if (!found.entry) {
      result.lost.push_back(fmt::format("entry {}: {}", id, found.fault));
      continue;
    }
    SQLite::Statement(whole, "SAVEPOINT entry").exec();
    try {
      writer.insert(found.entry->value, id, found.entry->entered_at);
      result.kept.push_back(id);
    } catch (const SQLite::Exception& error) {
      if ((error.getErrorCode() & 0xff) != SQLITE_CONSTRAINT) {
        throw;
      }
      SQLite::Statement(whole, "ROLLBACK TO entry").exec();
      const auto kind = journal_word(kind_of(found.entry->value));
      result.lost.push_back(fmt::format(
          "entry {}, {}: it belongs to a lost entry, or holds a value that cannot be", id, kind));
    }
    SQLite::Statement(whole, "RELEASE entry").exec();
  }
  transaction.commit();
  return result;
}

void refuse_taken(const fs::path& into) {
  if (fs::exists(into)) {
    throw UsageError({Severity::error,
                      into.string(),
                      0,
                      0,
                      "this file is there already",
                      "the name of a new file",
                      "name another one; nothing was written"});
  }
}

/// A copy of the damaged file and of the log beside it, so that SQLite mends and clears up nothing
/// in the original. Taken away at the end.
class Copied {
public:
  Copied(const fs::path& damaged, const fs::path& into) : name_(into.string() + ".damaged") {
    write_atomically(name_, read_whole_file(damaged, "the command"));
    if (const std::string log = damaged.string() + "-wal"; fs::exists(log)) {
      write_atomically(name_ + "-wal", read_whole_file(log, "the command"));
    }
  }

  Copied(const Copied&) = delete;
  Copied& operator=(const Copied&) = delete;
  Copied(Copied&&) = delete;
  Copied& operator=(Copied&&) = delete;

  ~Copied() {
    for (const char* part : {"", "-wal", "-shm"}) {
      std::error_code ignored;
      fs::remove(name_ + part, ignored);
    }
  }

  [[nodiscard]] const std::string& name() const { return name_; }

private:
  std::string name_;
};

[[noreturn]] void refuse_unreadable(const fs::path& damaged) {
  throw InputError({Severity::error,
                    damaged.string(),
                    0,
                    0,
                    "no entry can be read out of this file",
                    "",
                    "bring back your last copy"});
}

} // namespace

Salvaged salvage(const fs::path& damaged, const fs::path& into) {
  refuse_taken(into);
  const Copied copied(damaged, into);
  Salvaged result;
  bool mended = false;
  telling_failures(into, [&] {
    const auto whole = open_for_writing(into);
    mended = mend_schema(copied.name(), into.string() + ".fresh");
    SQLite::Database from(copied.name(), SQLite::OPEN_READWRITE);
    result = copy(from, *whole);
  });
  if (mended && result.kept.empty()) {
    fs::remove(into);
    refuse_unreadable(damaged);
  }
  return result;
}

} // namespace nightsow::planner
