#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"

namespace nightsow::planner {

/// Needs no garden; "today" is that of UTC where it is not asked for.
[[nodiscard]] Outcome run(const SeedOutlookCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

} // namespace nightsow::planner
