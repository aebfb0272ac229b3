#include "planner/journal/quick_entry.hpp"

#include "planner/journal/who_is_meant.hpp"

namespace nightsow::planner {

RecordedSowing sowing_meant(const QuickSowing& typed,
                            const std::vector<Packet>& in_hand,
                            const std::string& first_bench,
                            Date today) {
  const auto packet = packet_called(typed.what, in_hand);
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
          sowing_called(typed.what, records).id,
          day_meant(typed.on, today),
          typed.seen,
          typed.dead,
          typed.why,
          typed.phase};
}

} // namespace nightsow::planner
