#pragma once

#include "planner/answers/packet_list_answer.hpp"
#include "planner/garden/packet.hpp"
#include "planner/garden/records.hpp"

#include <string>
#include <vector>

namespace nightsow::planner {

struct PacketListRequest {
  std::string text; ///< id, or a part of the taxon, capitals or not; empty: all
  bool all = false; ///< also those of which nothing is left
};

/// Requires: records up to today.
[[nodiscard]] PacketListAnswer list_packets(const std::vector<Packet>& packets,
                                            const Records& records,
                                            const PacketListRequest& request,
                                            Date today);

} // namespace nightsow::planner
