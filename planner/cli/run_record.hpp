#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"

namespace nightsow::planner {

// Seed in hand and what is done to sown pots. They need garden.json, packets.csv and the journal,
// and no readings. Throw UsageError when what was typed could mean several things, or nothing.

[[nodiscard]] Outcome run(const PacketListCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

/// Adds a row to packets.csv and leaves the rest of it as it is.
[[nodiscard]] Outcome run(const PacketAddCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

/// Takes the row of a packet out of packets.csv again, as long as the journal tells nothing of it.
[[nodiscard]] Outcome run(const PacketUndoCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const PacketUseCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

/// With a faulty line nothing is written: every one is in the notes.
[[nodiscard]] Outcome run(const CountSheetCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const CheckCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const WaterCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const PotCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const CloseCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const MoveCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const NoteCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

} // namespace nightsow::planner
