#include "planner/model/sowing_facts.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

void add_counts(const RecordedSowing& sowing, const Records& records, SowingFacts& facts) {
  int told = 0;
  for (const SeedlingCount& count : records.counts) {
    if (count.sowing != sowing.id) {
      continue;
    }
    told += count.dead;
    if (!facts.looks.empty() && facts.looks.back().on == count.on) {
      facts.looks.pop_back();
    }
    const int before = facts.up_in_all();
    facts.looks.push_back({count.on, count.seen, std::max(before, count.seen + told)});
  }
  if (!facts.looks.empty()) {
    facts.died = facts.up_in_all() - facts.looks.back().seen;
    facts.fell = std::max(0, facts.died - told);
  }
}

void add_water(const RecordedSowing& sowing, const Records& records, SowingFacts& facts) {
  if (sowing.first_water) {
    facts.waterings.push_back(*sowing.first_water);
  }
  for (const Watering& watering : records.waterings) {
    if (watering.sowing != sowing.id) {
      continue;
    }
    const bool dry_now = !facts.dry.empty() && !facts.dry.back().to;
    if (watering.kind != WateringKind::dry_rest) {
      facts.waterings.push_back(watering.on);
      if (dry_now) {
        facts.dry.back().to = std::max(facts.dry.back().from, watering.on - Days{1});
      }
    } else if (!dry_now) {
      facts.dry.push_back({watering.on, {}});
    }
  }
  std::sort(facts.waterings.begin(), facts.waterings.end());
  if (!facts.waterings.empty()) {
    facts.first_water = facts.waterings.front();
  } else if (facts.up_in_all() > 0) {
    facts.first_water = sowing.on;
    facts.water_taken = true;
  }
  std::erase_if(facts.dry, [&](const DrySpell& spell) {
    return !facts.first_water || spell.from < *facts.first_water;
  });
}

void add_places(const RecordedSowing& sowing, const Records& records, SowingFacts& facts) {
  facts.places.push_back({sowing.on, sowing.bench, sowing.mat});
  for (const Move& move : records.moves) {
    if (move.sowing != sowing.id) {
      continue;
    }
    PotPlace place = facts.places.back();
    place.from = move.on;
    switch (move.kind) {
    case MoveKind::bench:
      place.bench = move.to;
      break;
    case MoveKind::mat:
      place.mat = move.to == "off" ? "" : move.to;
      break;
    case MoveKind::shade:
    case MoveKind::bag:
      facts.shade_or_bag_changed = true;
      continue;
    }
    if (place.from == facts.places.back().from) {
      facts.places.pop_back();
    }
    facts.places.push_back(std::move(place));
  }
}

} // namespace

SowingFacts sowing_facts(const RecordedSowing& sowing, const Records& records) {
  SowingFacts facts;
  add_counts(sowing, records, facts);
  add_water(sowing, records, facts);
  add_places(sowing, records, facts);
  for (const PressTest& test : records.press_tests) {
    if (test.sowing == sowing.id) {
      facts.pressed.firm += test.firm;
      facts.pressed.soft += test.soft;
    }
  }
  const int not_up = std::max(0, sowing.seeds - facts.up_in_all());
  facts.pressed.firm = std::min(facts.pressed.firm, not_up);
  facts.pressed.soft = std::min(facts.pressed.soft, not_up - facts.pressed.firm);
  return facts;
}

} // namespace nightsow::planner
