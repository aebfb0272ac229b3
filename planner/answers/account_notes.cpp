#include "planner/answers/account_notes.hpp"

#include "planner/model/bench_climate.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

void add_place_notes(const Garden& garden, const PotPlace& place, std::vector<Reason>& notes) {
  const Bench& bench = bench_named(garden, place.bench);
  if (!place.bench.empty() && bench.name != place.bench) {
    notes.push_back({ReasonCode::sown_bench_gone, {{"text", place.bench}, {"bench", bench.name}}});
  }
  const bool mat_there = std::any_of(garden.mats.begin(),
                                     garden.mats.end(),
                                     [&](const HeatMat& mat) { return mat.name == place.mat; });
  if (!place.mat.empty() && !mat_there) {
    notes.push_back({ReasonCode::sown_mat_gone, {{"text", place.mat}}});
  }
}

} // namespace

std::vector<Reason> account_notes(const Garden& garden,
                                  const RecordedSowing& sowing,
                                  const SowingFacts& facts) {
  std::vector<Reason> notes;
  if (facts.up_in_all() > sowing.seeds) {
    notes.push_back(
        {ReasonCode::counted_more_than_sown, {{"up", facts.up_in_all()}, {"seeds", sowing.seeds}}});
  }
  if (facts.fell > 0) {
    notes.push_back({ReasonCode::counted_fell, {{"fell", facts.fell}}});
  }
  if (facts.water_taken) {
    notes.push_back({ReasonCode::first_water_taken, {{"on", *facts.first_water}}});
  }
  for (const PotPlace& place : facts.places) {
    add_place_notes(garden, place, notes);
  }
  if (facts.shade_or_bag_changed) {
    notes.push_back({ReasonCode::moves_left_out, {}});
  }
  if (sowing.packet_id.empty()) {
    notes.push_back({ReasonCode::sown_without_packet, {}});
  } else if (!sowing.packet.harvested) {
    notes.push_back({ReasonCode::seed_age_unknown, {}});
  }
  return notes;
}

void add_name_notes(const species_rules::Lookup& lookup,
                    const std::string& written,
                    std::vector<Reason>& notes) {
  if (!lookup.read_as.empty()) {
    notes.push_back({ReasonCode::spelling, {{"written", written}, {"read_as", lookup.read_as}}});
  }
  if (lookup.found->by_synonym) {
    notes.push_back(
        {ReasonCode::synonym, {{"written", written}, {"accepted", lookup.found->accepted}}});
  }
}

Packet packet_as_sown(const RecordedSowing& sowing, const Records& records) {
  Packet packet = sowing.packet;
  for (const PacketTest& test : records.germination_tests) {
    if (!sowing.packet_id.empty() && test.packet_id == sowing.packet_id &&
        test.test.on <= sowing.on) {
      packet.tested = test.test;
    }
  }
  return packet;
}

} // namespace nightsow::planner
