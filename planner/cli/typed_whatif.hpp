#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/typed_words.hpp"

#include <optional>

namespace nightsow::planner {

/// What was typed behind `nightsow whatif`.
/// Throws UsageError on anything that cannot be understood, and when no change is given.
[[nodiscard]] WhatIfCommand typed_whatif(const TypedWords& typed, std::optional<int> season);

} // namespace nightsow::planner
