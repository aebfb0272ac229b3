#pragma once

#include "climate/base/problem.hpp"
#include "planner/garden/packet.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace nightsow::planner {

// What can be said of packets only when all rows have been read. Appends to `problems`.

/// Gives every packet an id that no other has. Written ids come first, so that a made-up one never
/// takes a written one; a second packet of the same id gets "-2", with a warning. Without an id:
/// taxon and harvest ("bulbine-annua-2025-11"), in the order of the file; one note for all.
void give_ids(std::span<Packet> packets, std::string_view where, std::vector<Problem>& problems);

/// Cuts the harvest at the last day of receipt, and guesses it from the receipt where it is not
/// known. One note for all guesses and one for all packets whose age is unknown.
void settle_harvests(std::span<Packet> packets,
                     std::string_view where,
                     std::vector<Problem>& problems);

} // namespace nightsow::planner
