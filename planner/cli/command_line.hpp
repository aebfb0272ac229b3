#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/climate_report.hpp"
#include "planner/answers/nights.hpp"
#include "planner/answers/plan.hpp"
#include "planner/answers/rules_gaps.hpp"
#include "planner/answers/rules_report.hpp"
#include "planner/answers/seed_outlook.hpp"
#include "planner/answers/whatif.hpp"
#include "planner/cli/learn_commands.hpp"
#include "planner/cli/record_commands.hpp"
#include "planner/cli/start_commands.hpp"
#include "planner/garden/other_place.hpp"

#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace nightsow::planner {

// What was typed, as plain values: one struct for each command, with the request it makes.

struct PlanCommand {
  PlanRequest request;
  bool why = false;
  bool work = false;                ///< trays and the season's work, too
  bool save = false;                ///< write plans/<season>.json
  std::vector<std::string> packets; ///< only these, by id or name; empty: all
  // Files to write besides; empty: not asked for.
  std::filesystem::path calendar;
  std::filesystem::path csv;
  std::filesystem::path sheet;
  std::filesystem::path labels;
};

struct TodayCommand {};

struct NightsCommand {
  NightsRequest request;
  bool exit_code = false; ///< tell by the exit code whether all are open
};

struct PastNightsCommand {
  PastNightsRequest request;
};

/// Place and packets are still files; as changes they come before those of the request.
struct WhatIfCommand {
  WhatIfRequest request;
  std::filesystem::path place = {};   ///< a garden's folder or a weather file; empty: our place
  TypedPlace where = {};              ///< of the weather file
  std::filesystem::path packets = {}; ///< empty: those in hand
  std::vector<double> sweep_k = {};   ///< not empty: one plan for each
  std::string csv = {};               ///< a file, or "-" for standard output; empty: no table
};

struct ClimateCommand {
  ClimateRequest request;
};

struct BacktestCommand {};

struct RulesListCommand {
  RulesListRequest request; ///< its in_hand is still empty
  bool in_hand = false;     ///< of the garden's packets only
};

struct RulesShowCommand {
  std::string taxon;
  bool why = false;
};

struct RulesCheckCommand {
  std::vector<std::filesystem::path> files;
};

struct RulesExportCommand {
  std::string taxon;
};

/// The form of a rule file, as JSON Schema.
struct RulesSchemaCommand {};

struct RulesGapsCommand {
  RulesGapsRequest request; ///< its in_hand is still empty
  bool in_hand = false;     ///< of the garden's packets only
};

struct SeedOutlookCommand {
  SeedOutlookRequest request;
  bool why = false;
};

/// --help or --version: the text is ready.
struct ShowText {
  std::string text;
};

using Command = std::variant<PlanCommand,
                             TodayCommand,
                             NightsCommand,
                             PastNightsCommand,
                             WhatIfCommand,
                             ClimateCommand,
                             BacktestCommand,
                             FetchCommand,
                             RulesListCommand,
                             RulesShowCommand,
                             RulesCheckCommand,
                             RulesExportCommand,
                             RulesGapsCommand,
                             RulesSchemaCommand,
                             SeedOutlookCommand,
                             PacketListCommand,
                             PacketAddCommand,
                             PacketUndoCommand,
                             PacketUseCommand,
                             SowCommand,
                             CountCommand,
                             AccountCommand,
                             CountSheetCommand,
                             CheckCommand,
                             WaterCommand,
                             PotCommand,
                             CloseCommand,
                             NoteCommand,
                             MoveCommand,
                             JournalListCommand,
                             JournalShowCommand,
                             JournalUndoCommand,
                             JournalExportCommand,
                             JournalImportCommand,
                             JournalSalvageCommand,
                             LearnCommand,
                             LearnTrialCommand,
                             ReviewCommand,
                             StartCommand,
                             ShowText>;

/// Options that may stand before or after any command.
struct CommonOptions {
  std::filesystem::path garden; ///< empty: the present folder
  std::optional<Date> today;    ///< empty: the civil date in the garden's time zone
  std::optional<int> season;
  bool json = false;
  bool quiet = false;
  bool strict = false;
  bool fahrenheit = false;
};

struct CommandLine {
  CommonOptions common;
  Command command;
};

/// Reads the words behind the program's name.
/// Throws UsageError on anything that cannot be understood, with the nearest right word.
[[nodiscard]] CommandLine read_command_line(std::span<const std::string> words);

} // namespace nightsow::planner
