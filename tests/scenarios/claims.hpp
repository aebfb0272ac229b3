#pragma once

#include "planner/garden/load_garden.hpp"
#include "tests/scenarios/scenario.hpp"

#include <string>

namespace nightsow::scenarios {

/// What is wrong with what a garden's plan says of an expectation; empty when it holds. A claim
/// that is not understood is wrong, too.
[[nodiscard]] std::string fault_in(const Expectation& expectation,
                                   const planner::LoadedGarden& garden);

} // namespace nightsow::scenarios
