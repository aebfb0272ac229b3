#pragma once

#include <filesystem>
#include <memory>

namespace SQLite {
class Database;
}

namespace nightsow::planner {

// Both look before they touch: a newer journal, another program's file and a damaged one are
// refused with InputError and stay as they are, byte for byte. The whole file is checked each time.

/// The journal ready for entries: made when it is not there, brought up to date after a copy when
/// it is of an older version, with a write-ahead log, every commit flushed to the disk, foreign
/// keys watched. Throws SQLite::Exception besides.
[[nodiscard]] std::unique_ptr<SQLite::Database> open_for_writing(const std::filesystem::path& file);

/// The journal for reading. Nothing when there is none; nothing is made. One of an older version is
/// brought up to date in memory only. Also works in a folder that cannot be written to. Throws
/// SQLite::Exception besides.
[[nodiscard]] std::unique_ptr<SQLite::Database> open_for_reading(const std::filesystem::path& file);

} // namespace nightsow::planner
