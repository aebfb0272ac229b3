#pragma once

#include "planner/journal/schema.hpp"

#include <filesystem>
#include <optional>
#include <span>

namespace SQLite {
class Database;
}

namespace nightsow::planner {

/// The version that stands in the file; 0: a file without anything in it.
[[nodiscard]] int version_of(SQLite::Database& journal);

/// Runs the steps that the journal does not have yet, all or none of them. A journal that holds
/// something is copied first: journal.db of version 1 to "journal.db.version-1" (or "…-1-2" where
/// that is taken), which is given back. Two programs may do this at once: one waits.
/// Throws SQLite::Exception, and StorageError when the copy cannot be written; the journal is then
/// as it was.
std::optional<std::filesystem::path> migrate(SQLite::Database& journal,
                                             const std::filesystem::path& file,
                                             std::span<const Migration> steps);

/// The steps alone, for a copy in memory.
void run_steps(SQLite::Database& journal, std::span<const Migration> steps);

} // namespace nightsow::planner
