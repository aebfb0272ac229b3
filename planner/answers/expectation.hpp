#pragma once

#include "planner/answers/line_timing.hpp"

namespace nightsow::planner {

/// What comes of a packet that gets its first water on that day: over the courses of the season and
/// the ranges of its rule. Empty when its seeds are not counted.
/// Requires: the station has phases; the day lies between the season's planning year's first day
/// and the day before its next hottest.
[[nodiscard]] std::optional<Expected> expectation(const LineInput& input,
                                                  BenchSeasons& seasons,
                                                  const climate::Season& season,
                                                  Date first_water);

/// The mat on the packet's bench, else the garden's first.
[[nodiscard]] std::optional<HeatMat> mat_for(const Garden& garden, const std::string& bench);

} // namespace nightsow::planner
