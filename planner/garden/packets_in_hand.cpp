#include "planner/garden/packets_in_hand.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <optional>
#include <string>

namespace nightsow::planner {

namespace {

using Taken = std::map<std::string, double, std::less<>>;

Taken taken_of(const Records& records) {
  Taken taken;
  for (const RecordedSowing& sowing : records.sowings) {
    taken[sowing.packet_id] += sowing.seeds;
  }
  for (const PacketUse& use : records.uses) {
    taken[use.packet_id] += use.seeds;
  }
  return taken;
}

// By date: the last of a packet stays.
std::map<std::string, GerminationTest, std::less<>> tests_of(const Records& records) {
  std::map<std::string, GerminationTest, std::less<>> tests;
  for (const PacketTest& of : records.germination_tests) {
    tests[of.packet_id] = of.test;
  }
  return tests;
}

void take_test(Packet& packet, const GerminationTest& test) {
  const bool later = !packet.tested || !packet.tested->on || *packet.tested->on <= test.on;
  if (later) {
    packet.tested = test;
  }
}

} // namespace

std::vector<Packet> packets_in_hand(const std::vector<Packet>& packets, const Records& records) {
  const Taken taken = taken_of(records);
  const auto tests = tests_of(records);
  std::vector<Packet> left;
  for (const Packet& packet : packets) {
    const auto used = packet.id.empty() ? taken.end() : taken.find(packet.id);
    const auto seeds = packet.seeds.middle();
    const bool known = used != taken.end() && seeds.has_value();
    if (known && *seeds - used->second <= 0) {
      continue;
    }
    Packet& less = left.emplace_back(packet);
    if (const auto test = tests.find(packet.id); test != tests.end() && !packet.id.empty()) {
      take_test(less, test->second);
    }
    for (std::optional<double>* end : {&less.seeds.low, &less.seeds.high}) {
      if (known && *end) {
        *end = std::max(0.0, **end - used->second);
      }
    }
  }
  return left;
}

} // namespace nightsow::planner
