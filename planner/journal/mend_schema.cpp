#include "planner/journal/mend_schema.hpp"

#include "climate/base/file.hpp"
#include "planner/journal/damaged_entries.hpp"
#include "planner/journal/migrate.hpp"
#include "planner/journal/schema.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>
#include <utility>
#include <vector>

namespace nightsow::planner {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t page_bytes = 4096; // SQLite's own choice, which the journal leaves as it is

// Of the SQLite file format: https://www.sqlite.org/fileformat2.html, sections 1.3 and 1.6.
constexpr std::size_t pages_at = 28;
constexpr char leaf_of_table = 0x0d;
constexpr char inner_of_table = 0x05;

/// A table that came after the first version, and what its rows alone hold.
struct LaterTable {
  int since = 0; ///< version
  std::string_view name;
  std::string_view kind;
  std::string_view rows;
};

constexpr std::array<LaterTable, 3> later_tables{{
    {2, "packet_uses", "packet_use", "what_for IN ('given', 'tested', 'lost', 'other')"},
    {3, "pottings", "potting", "what IN ('pricked_out', 'potted_on')"},
    {3,
     "closings",
     "closing",
     "why IN ('thrown_out', 'emptied', 'given_away', 'moved_on', 'other')"},
}};

/// The bytes of a journal and of the log beside it.
struct Bytes {
  std::string file;
  std::optional<std::string> log;
};

std::string log_of(const fs::path& journal) {
  return journal.string() + "-wal";
}

Bytes bytes_of(const fs::path& journal) {
  Bytes bytes{read_whole_file(journal, "the command"), {}};
  if (fs::exists(log_of(journal))) {
    bytes.log = read_whole_file(log_of(journal), "the command");
  }
  return bytes;
}

void remove_all_of(const fs::path& journal) {
  for (const char* part : {"", "-wal", "-shm"}) {
    std::error_code ignored;
    fs::remove(journal.string() + part, ignored);
  }
}

void write_bytes(const fs::path& journal, const Bytes& bytes) {
  remove_all_of(journal);
  write_atomically(journal, bytes.file);
  if (bytes.log) {
    write_atomically(log_of(journal), *bytes.log);
  }
}

bool can_be_opened(const fs::path& journal) {
  try {
    SQLite::Database opened(journal.string(), SQLite::OPEN_READWRITE);
    return opened.execAndGet("PRAGMA application_id").getInt() == journal_application_id &&
           opened.execAndGet("SELECT count(sql) FROM sqlite_master").getInt() > 0;
  } catch (const SQLite::Exception&) {
    return false;
  }
}

/// A journal without entries, as it began with that version.
struct Fresh {
  std::string content;
  std::unordered_set<std::size_t> roots; ///< pages that hold the root of a table or an index
};

Fresh fresh_journal(const fs::path& scratch, int version) {
  Fresh fresh;
  {
    SQLite::Database journal(scratch.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    journal.execAndGet("PRAGMA journal_mode = WAL");
    migrate(journal, scratch, journal_migrations().first(static_cast<std::size_t>(version)));
    SQLite::Statement row(journal, "SELECT rootpage FROM sqlite_master WHERE rootpage > 0");
    while (row.executeStep()) {
      fresh.roots.insert(static_cast<std::size_t>(row.getColumn(0).getInt64()));
    }
    journal.execAndGet("PRAGMA wal_checkpoint(TRUNCATE)");
  }
  fresh.content = read_whole_file(scratch, "the command");
  remove_all_of(scratch);
  return fresh;
}

// All pages of the schema, and none of those on which entries begin.
std::string with_schema_of(const Fresh& fresh, std::string content) {
  content.resize(std::max(content.size(), fresh.content.size()) / page_bytes * page_bytes);
  for (std::size_t page = 1; page <= fresh.content.size() / page_bytes; ++page) {
    if (!fresh.roots.contains(page)) {
      const std::size_t at = (page - 1) * page_bytes;
      content.replace(at, page_bytes, fresh.content, at, page_bytes);
    }
  }
  // Highest byte first.
  const std::size_t pages = content.size() / page_bytes;
  for (std::size_t i = 0; i < 4; ++i) {
    content.at(pages_at + i) = static_cast<char>(pages >> (8U * (3U - i)) & 0xffU);
  }
  return content;
}

// Pages on which such a table may begin: a leaf that names its kind, or any page above leaves.
std::vector<std::size_t> may_be_roots(const std::string& content,
                                      const Fresh& fresh,
                                      std::string_view kind) {
  std::vector<std::size_t> pages;
  for (std::size_t at = 0; at + page_bytes <= content.size(); at += page_bytes) {
    const std::string_view page = std::string_view(content).substr(at, page_bytes);
    const std::size_t number = at / page_bytes + 1;
    const bool likely =
        page.front() == inner_of_table ||
        (page.front() == leaf_of_table && page.find(kind) != std::string_view::npos);
    if (likely && !fresh.roots.contains(number)) {
      pages.push_back(number);
    }
  }
  return pages;
}

void set_root(SQLite::Database& journal, std::string_view table, std::size_t page) {
  journal.exec("PRAGMA writable_schema = ON");
  journal.exec(fmt::format(
      "UPDATE sqlite_master SET rootpage = {} WHERE type = 'table' AND name = '{}'", page, table));
  journal.exec("PRAGMA writable_schema = RESET");
}

std::int64_t rows_found(SQLite::Database& journal, const LaterTable& table) {
  try {
    return journal
        .execAndGet(fmt::format(
            "SELECT count(*) FROM {} WHERE kind = '{}' AND {}", table.name, table.kind, table.rows))
        .getInt64();
  } catch (const SQLite::Exception&) {
    return 0;
  }
}

// Where it is not found, it stays without rows.
void find_table(SQLite::Database& journal,
                const LaterTable& table,
                const std::vector<std::size_t>& candidates) {
  const auto without_rows = static_cast<std::size_t>(
      journal
          .execAndGet(
              fmt::format("SELECT rootpage FROM sqlite_master WHERE name = '{}'", table.name))
          .getInt64());
  std::pair<std::int64_t, std::size_t> best{0, without_rows};
  for (const std::size_t page : candidates) {
    set_root(journal, table.name, page);
    const std::int64_t found = rows_found(journal, table);
    best = found > best.first ? std::pair{found, page} : best;
  }
  set_root(journal, table.name, best.second);
}

void add_later_tables(const fs::path& mended,
                      const std::string& content,
                      const Fresh& fresh,
                      int version) {
  if (version == journal_version()) {
    return;
  }
  SQLite::Database journal(mended.string(), SQLite::OPEN_READWRITE);
  journal.exec("PRAGMA synchronous = OFF"); // a copy that can be made again
  run_steps(journal, journal_migrations());
  for (const LaterTable& table : later_tables) {
    if (table.since > version) {
      find_table(journal, table, may_be_roots(content, fresh, table.kind));
    }
  }
}

// Of the entries, or of some thousand of them, how many are there with their values.
int entries_found(const fs::path& mended) {
  constexpr EntryId tried = 2000;
  int found = 0;
  try {
    SQLite::Database journal(mended.string(), SQLite::OPEN_READWRITE);
    const DamagedEntries entries(journal);
    const EntryId last = entries.last();
    const EntryId step = std::max<EntryId>(1, last / tried);
    for (EntryId id = 1; id <= last; id += step) {
      found += entries.find(id).entry ? 1 : 0;
    }
  } catch (const SQLite::Exception&) {
    return found;
  }
  return found;
}

} // namespace

bool mend_schema(const fs::path& damaged, const fs::path& scratch) {
  if (can_be_opened(damaged)) {
    return false;
  }
  const Bytes before = bytes_of(damaged);
  std::optional<Bytes> best;
  int most = -1;
  for (int version = journal_version(); version >= 1; --version) {
    const Fresh fresh = fresh_journal(scratch, version);
    write_bytes(damaged, {with_schema_of(fresh, before.file), before.log});
    try {
      add_later_tables(damaged, before.file, fresh, version);
    } catch (const SQLite::Exception&) {
      continue; // it did not begin so
    }
    const int found = entries_found(damaged);
    if (found > most) {
      most = found;
      best = bytes_of(damaged);
    }
  }
  write_bytes(damaged, best ? *best : before);
  return true;
}

} // namespace nightsow::planner
