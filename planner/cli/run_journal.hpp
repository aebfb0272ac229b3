#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"

namespace nightsow::planner {

// They need garden.json, packets.csv and the journal, and no readings. The journal is made by the
// first entry. Throw UsageError when what was typed could mean several things, or nothing.

[[nodiscard]] Outcome run(const SowCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const CountCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const JournalListCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const JournalShowCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const JournalUndoCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const JournalExportCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

/// With a faulty row nothing is written unless `partial`: every one is in the notes.
[[nodiscard]] Outcome run(const JournalImportCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const JournalSalvageCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

} // namespace nightsow::planner
