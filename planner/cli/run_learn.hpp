#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"

namespace nightsow::planner {

/// Writes rules only where asked to, and none where one of them would be left aside; then throws
/// InputError. Nothing else is written but the file to share.
[[nodiscard]] Outcome run(const LearnCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const LearnTrialCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

[[nodiscard]] Outcome run(const ReviewCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

} // namespace nightsow::planner
