#pragma once

#include "planner/journal/entry_table.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// The number that a cell holds, from 1; empty where it holds something else.
[[nodiscard]] std::optional<EntryId> number_in(std::string_view text);

/// Whether every row has a number of its own.
[[nodiscard]] bool all_numbered(const std::vector<WrittenEntry>& rows);

/// The rows as an import takes them: by number, else sowings first, undos last, by day, by line.
/// Requires: with `numbered` all are numbered. The rows must outlive what comes back.
[[nodiscard]] std::vector<const WrittenEntry*> in_order(const std::vector<WrittenEntry>& rows,
                                                        bool numbered);

} // namespace nightsow::planner
