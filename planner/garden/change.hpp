#pragma once

#include "planner/garden/load_garden.hpp"

#include <variant>

namespace nightsow::planner {

/// The other hemisphere: every reading, forecast, date of a packet and today move by 183 days,
/// latitude changes its sign. Packets keep their distance to today, so age and ripeness of the seed
/// stay as they are.
struct Mirror {};

/// Every night and day of the readings, forecasts and monthly normals, that much warmer.
struct Warmer {
  CelsiusDelta by;
};

using Change = std::variant<Mirror, Warmer>;

inline constexpr int mirror_days = 183;

/// The loaded garden under a change. A pure function of both. (By value, so that a call is never
/// taken for std::apply, which a variant brings into the search.)
[[nodiscard]] LoadedGarden apply(Change change, LoadedGarden garden);

} // namespace nightsow::planner
