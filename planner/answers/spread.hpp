#pragma once

#include "climate/base/date.hpp"

#include <optional>

namespace nightsow::planner {

/// Dates by which one in ten, half and nine in ten of the possible seasons are there; empty where
/// they lie beyond the nights searched. `never`: share not there at all, to 0.001.
struct Spread {
  std::optional<Date> p10;
  std::optional<Date> p50;
  std::optional<Date> p90;
  double never = 0.0;
};

/// A number that is not known exactly.
struct NumberSpread {
  double mean = 0.0;
  double p10 = 0.0;
  double p90 = 0.0;
};

} // namespace nightsow::planner
