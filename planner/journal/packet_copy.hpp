#pragma once

#include "planner/garden/packet.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace nightsow::planner {

/// The packet's row, as a sowing keeps it: JSON on one line, with every value of Packet that is
/// known.
[[nodiscard]] std::string packet_copy(const Packet& packet);

/// The way back; values that are not there are as Packet has them at first. Empty when the text is
/// no such copy.
[[nodiscard]] std::optional<Packet> packet_from_copy(std::string_view text);

} // namespace nightsow::planner
