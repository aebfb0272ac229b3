#pragma once

#include "planner/answers/backtest_answer.hpp"
#include "planner/garden/load_garden.hpp"

namespace nightsow::planner {

/// How good the outlook of nights would have been in past years at the garden's station. Where the
/// garden holds a forecast, also what one of its length would have added. A place without a cooling
/// limb, or with too few seasons, has no event, and a warning says why.
/// Throws InputError when the nights do not show a year.
[[nodiscard]] BacktestAnswer backtest(const LoadedGarden& garden);

} // namespace nightsow::planner
