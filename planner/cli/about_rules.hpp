#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"
#include "planner/garden/own_rules.hpp"

#include <string>

namespace nightsow::planner {

/// The catalogue, and over it the rules of the garden, or of the present folder, where there are
/// any. A garden is not needed.
[[nodiscard]] RulesInGarden rules_here(const CommonOptions& common);

/// The answer, and what was wrong with the files of rules; under --strict faults come instead of
/// it.
[[nodiscard]] Outcome outcome_of(std::string answer,
                                 const RulesInGarden& rules,
                                 const CommonOptions& common);

} // namespace nightsow::planner
