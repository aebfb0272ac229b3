#pragma once

#include <string_view>

namespace nightsow::planner {

/// The version of the program, as it stands in every JSON answer.
inline constexpr std::string_view version = "0.1.0";

} // namespace nightsow::planner
