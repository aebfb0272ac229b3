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

struct JournalExportCommand {
  std::filesystem::path csv; ///< empty: the table goes to standard output
};

struct JournalImportCommand {
  std::filesystem::path file;
  bool partial = false; ///< sound rows although others are faulty
  bool dry_run = false; ///< only tell what would be written down
};

struct JournalSalvageCommand {
  std::filesystem::path into; ///< a new file
};

} // namespace nightsow::planner
