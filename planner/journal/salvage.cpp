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

#include <array>

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

constexpr std::array parts{"", "-wal", "-shm"};

void remove_all_of(const std::string& journal) {
  for (const char* part : parts) {
    std::error_code ignored;
    fs::remove(journal + part, ignored);
  }
}

std::string damaged_copy(const fs::path& into) {
  return into.string() + ".damaged";
}

std::string fresh_scratch(const fs::path& into) {
  return into.string() + ".fresh";
}

// Those that are written and taken away again may be another's, or left by a try that was cut off.
void refuse_taken(const fs::path& into) {
  for (const std::string& name : {into.string(), damaged_copy(into), fresh_scratch(into)}) {
    for (const char* part : parts) {
      if (fs::exists(name + part)) {
        throw UsageError({Severity::error,
                          name + part,
                          0,
                          0,
                          "this file is there already",
                          fmt::format("nothing beside {} that is needed for it", into.string()),
                          "name another file, or move this one away; nothing was written"});
      }
    }
  }
}

/// Takes away what was begun, unless it is kept.
class Begun {
public:
  explicit Begun(const fs::path& into) : name_(into.string()) {}

  Begun(const Begun&) = delete;
  Begun& operator=(const Begun&) = delete;
  Begun(Begun&&) = delete;
  Begun& operator=(Begun&&) = delete;

  ~Begun() {
    if (!kept_) {
      remove_all_of(name_);
    }
  }

  void keep() { kept_ = true; }

private:
  std::string name_;
  bool kept_ = false;
};

/// A copy of the damaged file and of the log beside it, so that SQLite mends and clears up nothing
/// in the original. Taken away at the end.
class Copied {
public:
  Copied(const fs::path& damaged, const fs::path& into) : name_(damaged_copy(into)) {
    write_atomically(name_, read_whole_file(damaged, "the command"));
    if (const std::string log = damaged.string() + "-wal"; fs::exists(log)) {
      write_atomically(name_ + "-wal", read_whole_file(log, "the command"));
    }
  }

  Copied(const Copied&) = delete;
  Copied& operator=(const Copied&) = delete;
  Copied(Copied&&) = delete;
  Copied& operator=(Copied&&) = delete;

  ~Copied() { remove_all_of(name_); }

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
  Begun begun(into);
  Salvaged result;
  bool mended = false;
  telling_failures(into, [&] {
    const auto whole = open_for_writing(into);
    mended = mend_schema(copied.name(), fresh_scratch(into));
    SQLite::Database from(copied.name(), SQLite::OPEN_READWRITE);
    result = copy(from, *whole);
  });
  if (mended && result.kept.empty()) {
    refuse_unreadable(damaged);
  }
  begun.keep();
  return result;
}

} // namespace nightsow::planner
