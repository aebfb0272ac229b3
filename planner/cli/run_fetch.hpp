#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"

namespace nightsow::planner {

/// Brings a file of readings from an open archive into the garden's readings/, with a sidecar that
/// says where it came from. garden.json is never touched. The source's terms are said before
/// anything is fetched. The only command that uses the network.
/// Throws UsageError when there is no garden and no place is given, StorageError when nothing can
/// be had and no earlier copy is there, InputError when something else than readings came.
[[nodiscard]] Outcome run(const FetchCommand& command,
                          const CommonOptions& common,
                          const Surroundings& around);

} // namespace nightsow::planner
