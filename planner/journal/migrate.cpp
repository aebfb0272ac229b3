#include "planner/journal/migrate.hpp"

#include "climate/base/file.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Transaction.h>
#include <sqlite3.h>

#include <memory>
#include <string>
#include <string_view>

namespace nightsow::planner {

namespace fs = std::filesystem;

namespace {

fs::path free_name(const fs::path& file, int version) {
  const std::string first = file.string() + ".version-" + std::to_string(version);
  std::string name = first;
  for (int i = 2; fs::exists(name); ++i) {
    name = first + '-' + std::to_string(i);
  }
  return name;
}

// What a reader would see now, also what is not yet in the file itself but in the log beside it.
fs::path back_up(SQLite::Database& journal, const fs::path& file, int version) {
  sqlite3_int64 size = 0;
  const std::unique_ptr<unsigned char, decltype(&sqlite3_free)> bytes{
      sqlite3_serialize(journal.getHandle(), "main", &size, 0), &sqlite3_free};
  if (!bytes) {
    throw SQLite::Exception(journal.getHandle());
  }
  const std::string content(bytes.get(), bytes.get() + size);
  fs::path copy = free_name(file, version);
  write_atomically(copy, content);
  return copy;
}

} // namespace

int version_of(SQLite::Database& journal) {
  return journal.execAndGet("PRAGMA user_version").getInt();
}

void run_steps(SQLite::Database& journal, std::span<const Migration> steps) {
  const int version = version_of(journal);
  for (const Migration& step : steps) {
    if (step.to > version) {
      journal.exec(std::string(step.sql));
      journal.exec("PRAGMA user_version = " + std::to_string(step.to));
    }
  }
}

std::optional<fs::path> migrate(SQLite::Database& journal,
                                const fs::path& file,
                                std::span<const Migration> steps) {
  if (version_of(journal) >= steps.back().to) {
    return std::nullopt;
  }
  SQLite::Transaction transaction(journal, SQLite::TransactionBehavior::IMMEDIATE);
  const int version = version_of(journal); // another program may have been first
  std::optional<fs::path> copy;
  if (version >= steps.back().to) {
    return copy;
  }
  if (version > 0) {
    copy = back_up(journal, file, version);
  }
  run_steps(journal, steps);
  transaction.commit();
  return copy;
}

} // namespace nightsow::planner
