#include "planner/journal/quick_entry.hpp"

#include "climate/base/problem.hpp"
#include "planner/journal/who_is_meant.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

void refuse_more(const QuickSowing& typed, const std::string& packet, int left) {
  if (typed.seeds > left && !typed.anyway) {
    throw UsageError({Severity::error,
                      "",
                      0,
                      0,
                      fmt::format("{} seeds were typed, and packet {} {}",
                                  typed.seeds,
                                  packet,
                                  left > 0 ? fmt::format("holds {}", left) : "is used up"),
                      left > 0 ? fmt::format("1 to {}", left) : "",
                      "--anyway writes it down all the same; nothing was written"});
  }
}

/// The packet meant, empty where a plant's name is typed of which there is none.
std::optional<Packet> packet_to_sow(const QuickSowing& typed, const PacketsToSow& packets) {
  if (auto packet = packet_called(typed.what, packets.in_hand)) {
    if (packet->seeds.high) {
      refuse_more(typed, packet->id, static_cast<int>(std::floor(*packet->seeds.high)));
    }
    return packet;
  }
  const auto used_up = std::find_if(packets.all.begin(),
                                    packets.all.end(),
                                    [&](const Packet& packet) { return packet.id == typed.what; });
  if (used_up != packets.all.end()) {
    refuse_more(typed, used_up->id, 0);
    return *used_up;
  }
  if (looks_like_a_packet(typed.what)) {
    refuse_packet(typed.what, packets.all);
  }
  return std::nullopt;
}

} // namespace

RecordedSowing sowing_meant(const QuickSowing& typed,
                            const PacketsToSow& packets,
                            const std::string& first_bench,
                            Date today) {
  const auto packet = packet_to_sow(typed, packets);
  RecordedSowing sowing;
  if (packet) {
    sowing.packet = *packet;
    sowing.packet_id = sowing.packet.id;
  }
  sowing.taxon = packet ? sowing.packet.taxon : typed.what;
  sowing.packet.taxon = sowing.taxon;
  sowing.on = day_meant(typed.on, today);
  if (!typed.dry) {
    sowing.first_water = sowing.on;
  }
  sowing.seeds = typed.seeds;
  sowing.pots = typed.pots.value_or(1);
  sowing.bench = !typed.bench.empty()           ? typed.bench
                 : !sowing.packet.bench.empty() ? sowing.packet.bench
                                                : first_bench;
  sowing.mat = typed.mat;
  sowing.cover = typed.cover;
  sowing.mix = typed.mix;
  sowing.treatment = typed.treatment;
  sowing.trial = typed.trial;
  sowing.arm = typed.arm;
  return sowing;
}

SeedlingCount count_meant(const QuickCount& typed, const Records& records, Date today) {
  return {0,
          looked_after(typed.what, records, day_meant(typed.on, today)).id,
          day_meant(typed.on, today),
          typed.seen,
          typed.dead,
          typed.why,
          typed.phase};
}

} // namespace nightsow::planner
