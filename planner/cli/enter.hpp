#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"
#include "planner/garden/records.hpp"
#include "planner/journal/entry.hpp"

#include <vector>

namespace nightsow::planner {

/// Writes one entry down and tells of it, and of the sowing that it belongs to.
[[nodiscard]] Outcome enter(const EntryValue& value,
                            const CommonOptions& common,
                            const Records& records);

/// Writes all of them down or none, and tells of them in a table. `tried`: only tells.
[[nodiscard]] Outcome enter_all(const std::vector<EntryValue>& values,
                                const CommonOptions& common,
                                const Surroundings& around,
                                const Records& records,
                                bool tried = false);

} // namespace nightsow::planner
