#include "planner/garden/packets_in_hand.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <optional>
#include <string>

namespace nightsow::planner {

std::vector<Packet> packets_in_hand(const std::vector<Packet>& packets, const Records& records) {
  std::map<std::string, double, std::less<>> sown;
  for (const RecordedSowing& sowing : records.sowings) {
    sown[sowing.packet_id] += sowing.seeds;
  }
  std::vector<Packet> left;
  for (const Packet& packet : packets) {
    const auto used = sown.find(packet.id);
    const auto seeds = packet.seeds.middle();
    if (packet.id.empty() || used == sown.end() || !seeds) {
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
