#include "planner/journal/salvage.hpp"

#include "climate/base/file.hpp"
#include "climate/base/problem.hpp"
#include "planner/journal/entry_rows.hpp"
#include "planner/journal/entry_words.hpp"
#include "planner/journal/open_database.hpp"
#include "planner/journal/sqlite_failure.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <optional>

namespace nightsow::planner {

namespace fs = std::filesystem;

namespace {

constexpr auto kinds = std::to_array<EntryKind>({EntryKind::sowing,
                                                 EntryKind::count,
                                                 EntryKind::press_test,
                                                 EntryKind::germination_test,
                                                 EntryKind::watering,
                                                 EntryKind::move,
                                                 EntryKind::note,
                                                 EntryKind::undo});

// The highest number of which any part of the file still tells.
EntryId last_number(SQLite::Database& damaged) {
  std::vector<std::string> questions{"SELECT seq FROM sqlite_sequence WHERE name = 'entries'",
                                     "SELECT max(id) FROM entries"};
  for (const EntryKind kind : kinds) {
    questions.push_back(fmt::format("SELECT max(entry) FROM {}", table_of(kind)));
  }
  EntryId last = 0;
  for (const std::string& question : questions) {
    try {
      SQLite::Statement row(damaged, question);
      last = std::max(last, row.executeStep() ? row.getColumn(0).getInt64() : 0);
    } catch (const SQLite::Exception&) {
      continue; // the other parts may tell
    }
  }
  return last;
}

struct Found {
  std::optional<Entry> entry;
  std::string fault; ///< why it cannot be read
};

Found find(SQLite::Database& damaged, EntryId id) {
  Found found;
  for (const EntryKind kind : kinds) {
    try {
      if ((found.entry = select_entry(damaged, kind, id))) {
        return found;
      }
    } catch (const SQLite::Exception& error) {
      found.fault = error.what();
    }
  }
  if (found.fault.empty()) {
    found.fault = "it is not there";
  }
  return found;
}

// By number: what an entry belongs to has been tried before.
Salvaged copy(SQLite::Database& damaged, SQLite::Database& whole) {
  Salvaged result;
  const EntryId last = last_number(damaged);
  SQLite::Transaction transaction(whole);
  for (EntryId id = 1; id <= last; ++id) {
    const Found found = find(damaged, id);
    if (!found.entry) {
      result.lost.push_back(fmt::format("entry {}: {}", id, found.fault));
      continue;
    }
    SQLite::Statement(whole, "SAVEPOINT entry").exec();
    try {
      insert_entry(whole, found.entry->value, id, found.entry->entered_at);
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

} // namespace

Salvaged salvage(const fs::path& damaged, const fs::path& into) {
  refuse_taken(into);
  const Copied copied(damaged, into);
  Salvaged result;
  std::unique_ptr<SQLite::Database> from;
  telling_failures(damaged, [&] {
    from = std::make_unique<SQLite::Database>(copied.name(), SQLite::OPEN_READWRITE);
    from->execAndGet("SELECT count(*) FROM sqlite_master");
  });
  telling_failures(into, [&] { result = copy(*from, *open_for_writing(into)); });
  return result;
}

} // namespace nightsow::planner
