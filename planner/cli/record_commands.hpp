#pragma once

#include "planner/answers/packet_list.hpp"
#include "planner/journal/filter_entries.hpp"
#include "planner/journal/quick_care.hpp"
#include "planner/journal/quick_entry.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace nightsow::planner {

// The commands that keep the record.

struct PacketListCommand {
  PacketListRequest request;
};

/// What was typed into one column of packets.csv.
struct TypedCell {
  std::string column;
  std::string typed; ///< the option
  std::string cell;
};

struct PacketAddCommand {
  std::string taxon; ///< empty: that of `from`
  std::vector<TypedCell> cells;
  std::string from; ///< the sowing of whose plants it was harvested; empty: bought or given
};

/// Takes back what `packet add` wrote.
struct PacketUndoCommand {
  std::string what; ///< the packet's id
};

struct PacketUseCommand {
  QuickPacketUse typed;
};

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

/// Prints the sheet, or enters one from standard input where that is no terminal and not empty.
struct CountSheetCommand {
  std::optional<Date> on;
  bool dry_run = false;
};

struct CheckCommand {
  std::variant<QuickPressTest, QuickGerminationTest> typed;
};

struct WaterCommand {
  QuickWatering typed;
};

/// Seedlings pricked out, or plants potted on.
struct PotCommand {
  QuickPotting typed;
};

/// A sowing is looked after no longer.
struct CloseCommand {
  QuickClosing typed;
};

struct NoteCommand {
  QuickNote typed;
};

struct MoveCommand {
  QuickMove typed;
};

struct JournalListCommand {
  EntryFilter filter;
};

struct JournalShowCommand {
  std::string what; ///< the number of an entry, or what a sowing is called
};

/// All of them that count, from the last back.
struct JournalUndoCommand {
  EntryId first = 0;
  EntryId last = 0;
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
