#pragma once

#include "climate/base/date.hpp"

#include <optional>
#include <string>

namespace nightsow::planner {

/// How to keep a packet until its first water.
struct Keep {
  std::string now; ///< warm_dry, cool_dry, warm_then_cool, sow_at_once
  std::optional<Date> until;
  std::string then; ///< empty: nothing after that
};

/// A way to deal with a packet, and what it comes to.
struct RouteAnswer {
  std::string
      route; ///< sow_now, keep_warm, warm_then_fridge, fridge, as_it_is, chilled, next_season
  std::optional<double> plants; ///< expected; empty: seeds not counted
  std::optional<Date> first_water;
  std::optional<Date> warm_until; ///< of warm_then_fridge
};

} // namespace nightsow::planner
