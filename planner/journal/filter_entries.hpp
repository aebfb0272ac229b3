#pragma once

#include "planner/journal/entry.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// Which entries are wanted; all that is given must hold. An undo goes with what it undoes.
struct EntryFilter {
  std::string packet;            ///< id, or the first letters of a taxon; of it and of its sowings
  std::optional<Date> since;     ///< of that day or later
  std::optional<EntryId> sowing; ///< it and what belongs to it
  std::optional<EntryId> entry;  ///< that one alone, without its undoing
};

[[nodiscard]] std::vector<Entry> filtered(const std::vector<Entry>& entries,
                                          const EntryFilter& filter);

} // namespace nightsow::planner
