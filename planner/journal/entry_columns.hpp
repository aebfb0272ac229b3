#pragma once

#include "planner/garden/loose_header.hpp"
#include "planner/journal/entry.hpp"

#include <cstddef>
#include <span>
#include <string_view>

namespace nightsow::planner {

/// The columns of the journal as a table for spreadsheets, one row an entry, in the order in which
/// they are written. README.md of this folder says what stands in each.
enum class EntryColumn {
  entry,
  what,
  day,
  sowing,
  packet,
  taxon,
  seeds,
  pots,
  first_water,
  bench,
  mat,
  cover,
  mix,
  treatment,
  trial,
  arm,
  seen,
  dead,
  cause,
  phase,
  firm,
  soft,
  sprouted,
  tried,
  at_c,
  water,
  move,
  to,
  potting,
  plants,
  closed,
  used_for,
  text,
  photo,
  undoes,
  undone,
  entered_at,
  harvested,
  stored,
  packet_copy,
};

inline constexpr std::size_t entry_column_count =
    static_cast<std::size_t>(EntryColumn::packet_copy) + 1;

/// Their names, in that order.
[[nodiscard]] std::span<const ColumnName> entry_column_names();

[[nodiscard]] std::string_view name_of(EntryColumn column);

/// Whether an entry of that kind may have something in that column. `packet` and `taxon` may stand
/// with everything that belongs to a sowing, for people who read the table.
[[nodiscard]] bool goes_with(EntryColumn column, EntryKind kind);

/// The kind that has this column to itself, of which a row without `what` is then one.
[[nodiscard]] bool tells(EntryColumn column, EntryKind kind);

} // namespace nightsow::planner
