#include "planner/model/keeping.hpp"

#include "species-rules/viability.hpp"

namespace nightsow::planner {

namespace {

StoreStage stage_at(double store_c, std::optional<Date> until) {
  StoreStage stage;
  stage.store_c = store_c;
  stage.until = until;
  return stage;
}

} // namespace

std::vector<StoreStage> stages_until(const std::vector<StoreStage>& stages,
                                     Date today,
                                     bool known_when_empty) {
  std::vector<StoreStage> past;
  for (const StoreStage& next : stages) {
    past.push_back(next);
    if (!next.until || *next.until >= today) {
      break;
    }
  }
  if (past.empty()) {
    past.push_back(stage_at(species_rules::room_c, {}));
    past.back().known = known_when_empty;
  }
  past.back().until = today;
  return past;
}

Packet kept_so(const Packet& packet, const Keeping& keeping, Date today) {
  Packet kept = packet;
  if (keeping.way == Keeping::Way::as_it_is) {
    return kept;
  }
  kept.stored = stages_until(packet.stored, today, !packet.received);
  if (keeping.way != Keeping::Way::cool) {
    kept.stored.push_back(stage_at(species_rules::room_c, keeping.warm_until));
  }
  if (keeping.way != Keeping::Way::warm) {
    kept.stored.push_back(stage_at(keeping_cool_c, {}));
  }
  return kept;
}

} // namespace nightsow::planner
