#pragma once

#include "planner/cli/record_commands.hpp"
#include "planner/cli/typed_words.hpp"

namespace nightsow::planner {

// What comes into packets and goes out of them. All throw UsageError.

[[nodiscard]] PacketListCommand typed_packet_list(const TypedWords& typed);
[[nodiscard]] PacketAddCommand typed_packet_add(const TypedWords& typed);
[[nodiscard]] PacketUndoCommand typed_packet_undo(const TypedWords& typed);
[[nodiscard]] PacketUseCommand typed_packet_use(const TypedWords& typed);

} // namespace nightsow::planner
