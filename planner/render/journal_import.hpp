#pragma once

#include "climate/base/problem.hpp"
#include "planner/journal/entry.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace nightsow::planner {

/// A row that said what was written down already.
struct EntryKnown {
  std::size_t line = 0;
  EntryId entry = 0;
  bool undone = false; ///< taken out since, and not brought back
};

/// What an import did.
struct ImportSummary {
  std::string file;
  bool tried = false; ///< nothing was written: it was only asked for
  std::vector<Entry> entered;
  std::vector<EntryKnown> known;
  std::size_t left_out = 0; ///< faulty rows
  std::vector<Problem> faults;
};

/// How many entries of which kind, what was known, and how to undo it.
[[nodiscard]] std::string import_text(const ImportSummary& summary);

[[nodiscard]] std::string import_json(const ImportSummary& summary);

} // namespace nightsow::planner
