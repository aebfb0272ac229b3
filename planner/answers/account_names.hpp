#pragma once

#include "planner/model/account_advice.hpp"

#include <string_view>

namespace nightsow::planner {

// Names as they stand in JSON.

[[nodiscard]] std::string_view name_of(Cause cause);

/// One of account_steps.
[[nodiscard]] std::string_view name_of(NextStep step);

} // namespace nightsow::planner
