#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/typed_words.hpp"

namespace nightsow::planner {

/// Either what the record says or next year's trial. Throws UsageError when options of both are
/// typed.
[[nodiscard]] Command typed_learn(const TypedWords& typed);

} // namespace nightsow::planner
