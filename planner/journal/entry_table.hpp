#pragma once

#include "climate/base/problem.hpp"
#include "planner/journal/entry.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// A row of the table as it was understood. What it belongs to is still as written.
struct WrittenEntry {
  std::size_t line = 0;
  std::string key;        ///< its number, or any other word that rows may name it by; may be empty
  EntryValue value;       ///< its own id, and that of its sowing or of what it undoes, are 0
  std::string belongs_to; ///< key, number, packet or taxon of its sowing; what an undo undoes
  std::size_t belongs_at = 0; ///< column of that cell in its line, in bytes from 1
  std::string packet;         ///< of what belongs to a sowing: as told for people; may be empty
  std::string taxon;          ///< the same
  bool undone = false;        ///< said to be so
  std::string entered_at;     ///< 2026-03-01T07:30:00Z; empty: not told
  bool has_copy = false;      ///< of a sowing: the copy of the packet's row was there
};

struct EntryTable {
  std::vector<WrittenEntry> entries; ///< in the order of the file
  std::vector<Problem> faults;       ///< cells that cannot be taken; their rows are not in entries
  std::vector<std::size_t> faulty_lines; ///< by line, each once
  std::vector<std::string> faulty_keys;  ///< of those rows, where they have one
  std::vector<Problem> notes;            ///< guesses, columns that are not used
};

/// Reads the journal as entries_csv writes it, and as spreadsheets leave it: comma, semicolon or
/// tab, any line ends, columns in any order and loosely named (entry_columns.hpp), blank rows, days
/// as in packets.csv, words with blanks or hyphens. Only what an entry of its kind needs must be
/// there; a row without `what` is of the kind whose own columns are filled. Every cell that cannot
/// be taken is listed with line, column and what is expected. Throws InputError when it is no such
/// table.
[[nodiscard]] EntryTable read_entry_table(std::string_view text, std::string_view where);

} // namespace nightsow::planner
