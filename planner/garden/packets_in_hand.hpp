#pragma once

#include "planner/garden/records.hpp"

#include <vector>

namespace nightsow::planner {

/// The packets as they are after what was sown or used of them: seeds left = seeds - sum of those,
/// both ends of a range, not under 0. A packet is left out when no seed of the middle of its range
/// is left. One of which only a weight is known stays as it is, since nobody can tell what is left.
/// Germination tests take nothing off; what they used up is a PacketUse. The last one recorded of a
/// packet stands in place of its `tested`, unless that is of a later day.
[[nodiscard]] std::vector<Packet> packets_in_hand(const std::vector<Packet>& packets,
                                                  const Records& records);

} // namespace nightsow::planner
