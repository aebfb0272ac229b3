#include "planner/journal/open_database.hpp"

#include "climate/base/problem.hpp"
#include "planner/journal/migrate.hpp"
#include "planner/journal/schema.hpp"
#include "planner/journal/sqlite_failure.hpp"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <fstream>
#include <string>
#include <string_view>

namespace nightsow::planner {

namespace fs = std::filesystem;

namespace {

// Of the SQLite file format: https://www.sqlite.org/fileformat2.html, section 1.3.
constexpr std::size_t header_bytes = 100;
constexpr std::string_view header_begins{"SQLite format 3\0", 16};
constexpr std::size_t user_version_at = 60;

[[noreturn]] void refuse_newer(const fs::path& file, unsigned version) {
  throw InputError({Severity::error,
                    file.string(),
                    0,
                    0,
                    fmt::format("the journal is of version {}", version),
                    fmt::format("version {} or older", journal_version()),
                    "use the newer nightsow that wrote it; the file was not touched"});
}

[[noreturn]] void refuse_foreign(const fs::path& file) {
  throw InputError({Severity::error,
                    file.string(),
                    0,
                    0,
                    "this is a file of another program",
                    "a journal as nightsow writes it",
                    "move it elsewhere; the file was not touched"});
}

// By plain reading: SQLite may write beside a file as soon as it opens it.
void look_at_header(const fs::path& file) {
  std::array<char, header_bytes> header{};
  std::ifstream in(file, std::ios::binary);
  in.read(header.data(), header.size());
  if (in.gcount() == 0) {
    return; // nothing was written yet
  }
  if (static_cast<std::size_t>(in.gcount()) < header.size() ||
      !std::equal(header_begins.begin(), header_begins.end(), header.begin())) {
    refuse_damaged(file, "its first 100 bytes are not those of an SQLite file");
  }
  unsigned version = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    version = version << 8U | static_cast<unsigned char>(header.at(user_version_at + i));
  }
  if (version > static_cast<unsigned>(journal_version())) {
    refuse_newer(file, version);
  }
}

void check_whose(SQLite::Database& journal, const fs::path& file) {
  const int version = version_of(journal);
  if (version > journal_version()) {
    refuse_newer(file, static_cast<unsigned>(version));
  }
  const int application = journal.execAndGet("PRAGMA application_id").getInt();
  const bool empty = journal.execAndGet("SELECT count(*) FROM sqlite_master").getInt() == 0;
  if (version < 0 || (!empty && application != journal_application_id)) {
    refuse_foreign(file);
  }
}

// The build of the file, not the rules of its columns: those were checked when it was written,
// words and days are looked at when they are read, and a hundred thousand entries would take a
// second.
void check_whole(SQLite::Database& journal, const fs::path& file) {
  journal.exec("PRAGMA ignore_check_constraints = ON");
  const std::string found = journal.execAndGet("PRAGMA integrity_check(1)").getString();
  journal.exec("PRAGMA ignore_check_constraints = OFF");
  if (found != "ok") {
    refuse_damaged(file, found);
  }
  SQLite::Statement loose(journal, "PRAGMA foreign_key_check");
  if (loose.executeStep()) {
    refuse_damaged(file,
                   fmt::format("row {} of {} belongs to a row of {} that is not there",
                               loose.getColumn(1).getInt64(),
                               loose.getColumn(0).getString(),
                               loose.getColumn(2).getString()));
  }
}

std::unique_ptr<SQLite::Database> open(const std::string& name, int flags) {
  auto journal = std::make_unique<SQLite::Database>(name, flags, patience_ms);
  journal->execAndGet("SELECT count(*) FROM sqlite_master"); // SQLite opens when it first reads
  return journal;
}

// Where nothing can be written beside the file, and no log lies there, nobody else writes either.
std::string unchanging(const fs::path& file) {
  std::string name = "file:";
  for (const char letter : fs::absolute(file).string()) {
    const bool plain = letter != '?' && letter != '#' && letter != '%';
    name +=
        plain ? std::string(1, letter) : fmt::format("%{:02X}", static_cast<unsigned char>(letter));
  }
  return name + "?immutable=1";
}

std::unique_ptr<SQLite::Database> open_as_allowed(const fs::path& file) {
  try {
    // Whoever may write clears up beside the file when it closes.
    return open(file.string(), SQLite::OPEN_READWRITE);
  } catch (const SQLite::Exception&) {
    try {
      return open(file.string(), SQLite::OPEN_READONLY);
    } catch (const SQLite::Exception&) {
      std::error_code ignored;
      if (fs::exists(file.string() + "-wal", ignored)) {
        throw;
      }
      return open(unchanging(file), SQLite::OPEN_READONLY | SQLite::OPEN_URI);
    }
  }
}

} // namespace

std::unique_ptr<SQLite::Database> open_for_writing(const fs::path& file) {
  look_at_header(file);
  auto journal = open(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  check_whose(*journal, file);
  check_whole(*journal, file);
  journal->exec("PRAGMA foreign_keys = ON");
  journal->execAndGet("PRAGMA journal_mode = WAL");
  journal->exec("PRAGMA synchronous = FULL");
  migrate(*journal, file, journal_migrations());
  return journal;
}

std::unique_ptr<SQLite::Database> open_for_reading(const fs::path& file) {
  if (std::error_code ignored; !fs::exists(file, ignored)) {
    return nullptr;
  }
  look_at_header(file);
  auto journal = open_as_allowed(file);
  check_whose(*journal, file);
  check_whole(*journal, file);
  if (version_of(*journal) == journal_version()) {
    return journal;
  }
  auto copy =
      std::make_unique<SQLite::Database>(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  SQLite::Backup(*copy, *journal).executeStep();
  run_steps(*copy, journal_migrations());
  return copy;
}

} // namespace nightsow::planner
