#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"

namespace nightsow::planner {

// These need no garden: the catalogue is part of the program.

[[nodiscard]] Outcome run(const RulesListCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const RulesShowCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

} // namespace nightsow::planner
