#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/garden.hpp"

#include <vector>

namespace nightsow::planner {

/// When the grower is there.
struct Presence {
  Date today{};
  std::vector<AwayPeriod> away;
};

} // namespace nightsow::planner
