#include "planner/model/store_history.hpp"

#include "species-rules/ripeness.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

constexpr double days_a_year = 365.25;
constexpr double fridge_c = 5.0;

StoreStage stage_at(double store_c, std::optional<Date> until) {
  StoreStage stage;
  stage.store_c = store_c;
  stage.until = until;
  return stage;
}

// The seller's fridge, after two months.
void add_cool_guess(const StoreStage& unknown, Date harvested, std::vector<StoreStage>& stages) {
  const Date cooled = harvested + unknown_warm_days;
  if (unknown.until && *unknown.until <= cooled) {
    stages.push_back(stage_at(species_rules::room_c, unknown.until));
    return;
  }
  if (stages.empty() || *stages.back().until < cooled) {
    stages.push_back(stage_at(species_rules::room_c, cooled));
  }
  stages.push_back(stage_at(fridge_c, unknown.until));
}

StoreStage unknown_stage() {
  StoreStage stage;
  stage.known = false;
  return stage;
}

// As written, or what stands for nothing written.
std::vector<StoreStage> stages_of(const Packet& packet) {
  if (!packet.stored.empty()) {
    return packet.stored;
  }
  return {packet.received ? unknown_stage() : stage_at(species_rules::room_c, {})};
}

} // namespace

double Kept::ripened_c_d(double base_c) const {
  double sum = 0.0;
  for (const RipeningStay& stay : stays) {
    sum += stay.weighted_days * std::max(0.0, stay.store_c - base_c);
  }
  return sum;
}

bool store_known(const Packet& packet) {
  const std::vector<StoreStage> stages = stages_of(packet);
  return std::all_of(stages.begin(), stages.end(), [](const StoreStage& s) { return s.known; });
}

std::vector<std::vector<StoreStage>> store_histories(const Packet& packet, Date harvested) {
  const std::vector<StoreStage> written = stages_of(packet);
  if (store_known(packet)) {
    return {written};
  }
  std::vector<StoreStage> warm;
  std::vector<StoreStage> cool;
  for (const StoreStage& stage : written) {
    if (stage.known) {
      warm.push_back(stage);
      cool.push_back(stage);
    } else {
      warm.push_back(stage_at(species_rules::room_c, stage.until));
      add_cool_guess(stage, harvested, cool);
    }
  }
  return {warm, cool};
}

Kept kept(std::span<const StoreStage> stages,
          Date from,
          Date until,
          species_rules::SeedStorage storage) {
  Kept sum;
  for (std::size_t i = 0; i < stages.size() && from < until; ++i) {
    const StoreStage& stage = stages[i];
    const bool last = i + 1 == stages.size() || !stage.until;
    const Date ends = last ? until : std::min(until, *stage.until);
    const int days = std::max(0, days_between(from, ends));
    sum.room_years +=
        days / days_a_year * species_rules::ageing_factor(storage, stage.store_c, stage.humidity);
    sum.stays.push_back({stage.store_c, days * species_rules::ripening_weight(stage.humidity)});
    from = std::max(from, ends);
  }
  return sum;
}

} // namespace nightsow::planner
