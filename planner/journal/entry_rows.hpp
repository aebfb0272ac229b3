#pragma once

#include "planner/journal/entry.hpp"

#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace SQLite {
class Database;
class Statement;
} // namespace SQLite

namespace nightsow::planner {

// Entries to rows and back. All throw SQLite::Exception.

/// Writes entries, each kind with statements that are prepared when it first comes. The journal
/// must outlive it.
class EntryWriter {
public:
  explicit EntryWriter(SQLite::Database& journal);
  ~EntryWriter();

  EntryWriter(const EntryWriter&) = delete;
  EntryWriter& operator=(const EntryWriter&) = delete;
  EntryWriter(EntryWriter&&) = delete;
  EntryWriter& operator=(EntryWriter&&) = delete;

  /// Writes one entry within the transaction that is open, and gives its number. The id within
  /// `value` does not matter. `id` and `entered_at` are for entries that were numbered before.
  EntryId insert(const EntryValue& value,
                 std::optional<EntryId> id = {},
                 const std::string& entered_at = {});

private:
  SQLite::Statement& prepared(std::size_t which);

  SQLite::Database& journal_;
  std::vector<std::unique_ptr<SQLite::Statement>> statements_; ///< null: not come yet
};

/// All entries by number, undone ones marked.
[[nodiscard]] std::vector<Entry> select_entries(SQLite::Database& journal);

/// One entry of a kind, not marked; empty when there is none with that number. For a damaged
/// journal, of which some entries cannot be read.
[[nodiscard]] std::optional<Entry> select_entry(SQLite::Database& journal,
                                                EntryKind kind,
                                                EntryId id);

/// The table that holds the entries of a kind.
[[nodiscard]] std::string_view table_of(EntryKind kind);

/// Marks what was undone. Requires: by number.
void mark_undone(std::vector<Entry>& entries);

} // namespace nightsow::planner
