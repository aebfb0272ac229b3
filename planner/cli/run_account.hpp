#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"

namespace nightsow::planner {

/// Throws UsageError, with the nearest names, where no sowing is called as typed.
[[nodiscard]] Outcome run(const AccountCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

} // namespace nightsow::planner
