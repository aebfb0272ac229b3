#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/typed_words.hpp"

#include <optional>

namespace nightsow::planner {

/// The command that keeps the record; empty when another one was typed. Throws UsageError.
[[nodiscard]] std::optional<Command> typed_record(const TypedWords& typed);

} // namespace nightsow::planner
