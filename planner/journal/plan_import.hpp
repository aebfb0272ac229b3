#pragma once

#include "climate/base/date.hpp"
#include "climate/base/problem.hpp"
#include "planner/garden/packet.hpp"
#include "planner/journal/entry.hpp"
#include "planner/journal/entry_table.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// A row that says what the journal has already.
struct KnownRow {
  std::size_t line = 0;
  EntryId entry = 0;
  bool undone = false; ///< it was taken out since, and stays out
};

/// What an import would do.
struct PlannedImport {
  std::vector<Entry> entries;  ///< to be written, by number; earlier ones than what belongs to them
  std::vector<KnownRow> known; ///< by line
  /// Of all rows that cannot be taken, by line: those of the table, and what does not fit together.
  std::vector<Problem> faults;
  std::size_t faulty_rows = 0;
};

/// Fits a table to a journal. Into a journal without entries rows keep their numbers when all have
/// one, else they are numbered on, by number, or by day with sowings first. `sowing` and `undoes`
/// name a row of the table, else an entry of the journal; `sowing` also a packet or taxon of which
/// one sowing is there. A sowing without a copy of its packet's row gets it from `packets`. Entries
/// that say the same as one of the journal are known, each for one row. A new row that is said to
/// be undone, and that no row undoes, gets an undo of today. Days after `today` are faults; so is
/// what stands before its sowing, what is told of a sowing (a note excepted) after the day of its
/// closing, a second closing, and a closing before what is told of its sowing already.
[[nodiscard]] PlannedImport plan_import(const EntryTable& table,
                                        std::string_view where,
                                        const std::vector<Entry>& there,
                                        const std::vector<Packet>& packets,
                                        Date today);

} // namespace nightsow::planner
