#include "planner/garden/what_came.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

void add_count(const SeedlingCount& count, int& dead_so_far, WhatCame& told) {
  dead_so_far += count.dead;
  if (count.dead > 0) {
    told.dead[count.why] += count.dead;
  }
  const int came =
      std::clamp(count.seen + dead_so_far, told.came(), std::max(told.came(), told.sowing->seeds));
  if (!told.looks.empty() && told.looks.back().on == count.on) {
    told.looks.back().came = came;
  } else {
    told.looks.push_back({count.on, came});
  }
  if (count.phase == CountPhase::back_after_rest) {
    told.back = count.seen;
  }
}

} // namespace

int WhatCame::came_by(Date day) const {
  int came = 0;
  for (const CameBy& look : looks) {
    if (look.on <= day) {
      came = look.came;
    }
  }
  return came;
}

std::vector<WhatCame> what_came(const Records& records) {
  std::vector<WhatCame> list;
  for (const RecordedSowing& sowing : records.sowings) {
    WhatCame told;
    told.sowing = &sowing;
    told.first_water = sowing.first_water;
    for (const Watering& watering : records.waterings) {
      if (watering.sowing == sowing.id && watering.kind == WateringKind::first_water &&
          !told.first_water) {
        told.first_water = watering.on;
      }
    }
    int dead_so_far = 0;
    for (const SeedlingCount& count : records.counts) {
      if (count.sowing == sowing.id) {
        add_count(count, dead_so_far, told);
      }
    }
    for (const PressTest& test : records.press_tests) {
      if (test.sowing == sowing.id) {
        told.firm += test.firm;
        told.soft += test.soft;
      }
    }
    list.push_back(std::move(told));
  }
  return list;
}

} // namespace nightsow::planner
