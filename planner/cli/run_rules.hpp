#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"

namespace nightsow::planner {

// The catalogue is part of the program: these need a garden only where kinds in hand are asked for;
// a rules/ folder of the garden, or of the present folder, lies over it.

[[nodiscard]] Outcome run(const RulesListCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const RulesShowCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const RulesCheckCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const RulesExportCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const RulesGapsCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const RulesSchemaCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

} // namespace nightsow::planner
