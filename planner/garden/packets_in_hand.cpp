#include "planner/garden/packets_in_hand.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <optional>
#include <string>

namespace nightsow::planner {

std::vector<Packet> packets_in_hand(const std::vector<Packet>& packets, const Records& records) {
  std::map<std::string, double, std::less<>> taken;
  for (const RecordedSowing& sowing : records.sowings) {
    taken[sowing.packet_id] += sowing.seeds;
  }
  for (const PacketUse& use : records.uses) {
    taken[use.packet_id] += use.seeds;
  }
  std::vector<Packet> left;
  for (const Packet& packet : packets) {
    const auto used = taken.find(packet.id);
    const auto seeds = packet.seeds.middle();
    if (packet.id.empty() || used == taken.end() || !seeds) {
      left.push_back(packet);
      continue;
    }
    if (*seeds - used->second <= 0) {
      continue;
    }
    Packet& less = left.emplace_back(packet);
    for (std::optional<double>* end : {&less.seeds.low, &less.seeds.high}) {
      if (*end) {
        *end = std::max(0.0, **end - used->second);
      }
    }
  }
  return left;
}

} // namespace nightsow::planner
