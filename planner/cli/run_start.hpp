#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"

namespace nightsow::planner {

/// Makes a garden's folder: checks everything first, then writes garden.json last, so that a folder
/// with a garden.json is whole. What was there before stays as it is, whatever happens.
/// Throws UsageError when the folder holds a garden.json, InputError on a weather file that cannot
/// be read, StorageError when a file cannot be written; then nothing is left behind.
[[nodiscard]] Outcome run(const StartCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

} // namespace nightsow::planner
