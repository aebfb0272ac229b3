#pragma once

#include "climate/base/problem.hpp"
#include "planner/garden/packet.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

struct PacketFile {
  std::vector<Packet> packets;
  std::vector<Problem> problems; ///< faulty rows and cells (warnings), guesses (notes)
};

/// Reads packets.csv. Only taxon and seeds are required; header names are matched loosely ("Seeds",
/// "no. of seeds", "Species") and a column that was matched by guess is a note. A faulty row is
/// left out and listed; a faulty cell that is not required counts as empty and is listed. A packet
/// without id gets taxon and harvest as one, "-2" from the second on; that is noted once for the
/// file. A bench that the garden does not have is a problem with the nearest name; the packet then
/// stands on the first bench.
/// Throws InputError when the header lacks taxon or seeds, or the file is no table.
[[nodiscard]] PacketFile read_packet_file(std::string_view text,
                                          std::string_view where,
                                          std::span<const std::string> benches);

/// The header of a packets.csv, all columns, with line end.
[[nodiscard]] std::string packet_header();

} // namespace nightsow::planner
