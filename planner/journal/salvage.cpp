#include "planner/journal/salvage.hpp"

#include "climate/base/file.hpp"
#include "climate/base/problem.hpp"
#include "planner/journal/entry_rows.hpp"
#include "planner/journal/entry_words.hpp"
#include "planner/journal/open_database.hpp"
#include "planner/journal/schema.hpp"
#include "planner/journal/sqlite_failure.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <optional>
#include <unordered_set>

namespace nightsow::planner {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t page_bytes = 4096; // SQLite's own choice, which the journal leaves as it is

constexpr auto kinds = std::to_array<EntryKind>({EntryKind::sowing,
                                                 EntryKind::count,
                                                 EntryKind::press_test,
                                                 EntryKind::germination_test,
                                                 EntryKind::watering,
                                                 EntryKind::move,
                                                 EntryKind::note,
                                                 EntryKind::undo,
                                                 EntryKind::packet_use});

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
  EntryWriter writer(whole);
  for (EntryId id = 1; id <= last; ++id) {
    const Found found = find(damaged, id);
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

bool can_be_opened(const std::string& name) {
  try {
    SQLite::Database journal(name, SQLite::OPEN_READWRITE);
    return journal.execAndGet("PRAGMA application_id").getInt() == journal_application_id &&
           journal.execAndGet("SELECT count(sql) FROM sqlite_master").getInt() > 0;
  } catch (const SQLite::Exception&) {
    return false;
  }
}

// The pages of the journal that hold the root of a table or an index.
std::unordered_set<std::size_t> root_pages(const fs::path& file) {
  SQLite::Database journal(file.string(), SQLite::OPEN_READONLY);
  SQLite::Statement row(journal, "SELECT rootpage FROM sqlite_master WHERE rootpage > 0");
  std::unordered_set<std::size_t> pages;
  while (row.executeStep()) {
    pages.insert(static_cast<std::size_t>(row.getColumn(0).getInt64()));
  }
  return pages;
}

// Every new journal has its schema on the same pages, written before any entry: where the schema is
// what is damaged, that of a new one tells where the entries
// lie. Gives whether it was.
bool mend_schema(const std::string& damaged, const fs::path& fresh) {
  if (can_be_opened(damaged)) {
    return false;
  }
  SQLite::Database(fresh.string(), SQLite::OPEN_READWRITE)
      .execAndGet("PRAGMA wal_checkpoint(TRUNCATE)");
  const auto roots = root_pages(fresh);
  const std::string whole = read_whole_file(fresh, "the command");
  std::string content = read_whole_file(damaged, "the command");
  content.resize(std::max(content.size(), whole.size()) / page_bytes * page_bytes);
  for (std::size_t page = 1; page <= whole.size() / page_bytes; ++page) {
    if (!roots.contains(page)) {
      const std::size_t at = (page - 1) * page_bytes;
      content.replace(at, page_bytes, whole, at, page_bytes);
    }
  }
  // The size in pages, at byte 28, highest byte first.
  const std::size_t pages = content.size() / page_bytes;
  for (std::size_t i = 0; i < 4; ++i) {
    content.at(28 + i) = static_cast<char>(pages >> (8U * (3U - i)) & 0xffU);
  }
  write_atomically(damaged, content);
  return true;
}

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
    mended = mend_schema(copied.name(), into);
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
