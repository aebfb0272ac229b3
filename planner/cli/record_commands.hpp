#pragma once

#include "planner/journal/quick_entry.hpp"

#include <filesystem>

namespace nightsow::planner {

// The commands that keep the record.

struct SowCommand {
  QuickSowing typed;
};

struct CountCommand {
  QuickCount typed;
};

struct JournalListCommand {};

struct JournalUndoCommand {
  EntryId entry = 0;
};

struct JournalSalvageCommand {
  std::filesystem::path into; ///< a new file
};

} // namespace nightsow::planner
