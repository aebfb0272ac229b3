#pragma once

#include "climate/base/date.hpp"

#include <optional>
#include <string>

namespace nightsow::planner {

// What stands at the head of several answers.

struct GardenHead {
  std::string name;
  double latitude = 0.0;
  double longitude = 0.0;
};

/// Dates in the season the answer is about.
struct PhasesHead {
  Date hottest_night{};
  Date coldest_night{};
  Date cooling_limb_begins{};
  double nights_swing_c = 0.0;
};

struct ReadingsHead {
  std::optional<Date> from;
  std::optional<Date> to;
  int seasons = 0;       ///< usable past seasons
  double complete = 0.0; ///< share of nights that are there
  int findings = 0;
};

} // namespace nightsow::planner
