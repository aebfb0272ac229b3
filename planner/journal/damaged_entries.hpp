#pragma once

#include "planner/journal/entry.hpp"

#include <optional>
#include <string>
#include <vector>

namespace SQLite {
class Database;
}

namespace nightsow::planner {

/// An entry of a damaged journal, or why it cannot be read.
struct EntryFound {
  std::optional<Entry> entry;
  std::string fault;
};

/// The entries of a damaged journal, of any version, one by one. The journal must outlive it.
class DamagedEntries {
public:
  explicit DamagedEntries(SQLite::Database& journal);

  /// The highest number of which any part of the file still tells; 0: none does.
  [[nodiscard]] EntryId last() const;

  [[nodiscard]] EntryFound find(EntryId id) const;

private:
  SQLite::Database& journal_;
  std::vector<EntryKind> kinds_; ///< those that its version has
};

} // namespace nightsow::planner
