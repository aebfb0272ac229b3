#pragma once

#include "planner/journal/quick_entry.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace nightsow::planner {

// The commands that keep the record.

struct SowCommand {
  QuickSowing typed;
};

struct CountCommand {
  QuickCount typed;
};

/// Where the seeds of a sowing are.
struct AccountCommand {
  std::vector<std::string> sowing; ///< as typed; empty: all open ones
  bool all = false;                ///< closed ones, too
};

struct JournalListCommand {};

struct JournalUndoCommand {
  EntryId entry = 0;
};

struct JournalSalvageCommand {
  std::filesystem::path into; ///< a new file
};

} // namespace nightsow::planner
