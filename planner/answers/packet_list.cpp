#include "planner/answers/packet_list.hpp"

#include "planner/answers/figures.hpp"
#include "planner/garden/packets_in_hand.hpp"
#include "planner/garden/plain_text.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr double year_days = 365.2425;

struct Used {
  int sown = 0;
  int sowings = 0;
  int otherwise = 0;
};

std::map<std::string, Used> used_by_packet(const Records& records) {
  std::map<std::string, Used> used;
  for (const RecordedSowing& sowing : records.sowings) {
    used[sowing.packet_id].sown += sowing.seeds;
    ++used[sowing.packet_id].sowings;
  }
  for (const PacketUse& use : records.uses) {
    used[use.packet_id].otherwise += use.seeds;
  }
  return used;
}

SeedsKnown known(const SeedCount& seeds) {
  return {seeds.low, seeds.high, seeds.grams};
}

bool wanted(const Packet& packet, const std::string& text) {
  return text.empty() || packet.id == text ||
         lower_case(packet.taxon).find(lower_case(text)) != std::string::npos;
}

ListedPacket listed(const Packet& packet, const Used& used, Date today) {
  ListedPacket one;
  one.packet = packet.id;
  one.taxon = packet.taxon;
  one.acquired = known(packet.seeds);
  one.left = {0.0, 0.0, {}};
  one.sown = used.sown;
  one.sowings = used.sowings;
  one.used = used.otherwise;
  if (packet.harvested) {
    one.harvested_from = packet.harvested->first;
    one.harvested_to = packet.harvested->last;
    one.harvest_guessed = packet.harvest_guessed;
    const int days = std::max(0, days_between(packet.harvested->middle(), today));
    one.age_years = rounded_tenth(days / year_days);
  }
  if (packet.tested) {
    one.tested = ListedTest{
        packet.tested->sprouted, packet.tested->of, packet.tested->on, packet.tested->at_c};
  }
  one.bench = packet.bench;
  one.irreplaceable = packet.irreplaceable;
  return one;
}

} // namespace

PacketListAnswer list_packets(const std::vector<Packet>& packets,
                              const Records& records,
                              const PacketListRequest& request,
                              Date today) {
  std::map<std::string, Packet> in_hand;
  for (Packet& packet : packets_in_hand(packets, records)) {
    in_hand[packet.id] = std::move(packet);
  }
  const auto used = used_by_packet(records);
  PacketListAnswer answer;
  answer.today = today;
  for (const Packet& packet : packets) {
    if (!wanted(packet, request.text)) {
      continue;
    }
    const auto left = in_hand.find(packet.id);
    if (left == in_hand.end() && !request.all) {
      ++answer.used_up;
      continue;
    }
    const auto of = used.find(packet.id);
    ListedPacket one = listed(left == in_hand.end() ? packet : left->second,
                              of == used.end() ? Used{} : of->second,
                              today);
    one.acquired = known(packet.seeds);
    if (left != in_hand.end()) {
      one.left = known(left->second.seeds);
    }
    answer.packets.push_back(std::move(one));
  }
  return answer;
}

} // namespace nightsow::planner
