#pragma once

#include "planner/journal/entry.hpp"
#include "planner/journal/entry_columns.hpp"

#include <array>
#include <string>
#include <vector>

namespace nightsow::planner {

/// The cells of one row, empty where there is nothing.
using EntryCells = std::array<std::string, entry_column_count>;

/// What the entry itself says: its number and when it was entered left out, and what its sowing is.
/// Of a sowing without the copy of its packet's row. Two entries that say the same have equal
/// cells.
[[nodiscard]] EntryCells told_cells(const EntryValue& value);

/// The whole journal as a table (RFC 4180, UTF-8, a header, comma, CRLF), undone entries and undos
/// too, by number: what read_entry_table reads back without loss.
[[nodiscard]] std::string entries_csv(const std::vector<Entry>& entries);

} // namespace nightsow::planner
