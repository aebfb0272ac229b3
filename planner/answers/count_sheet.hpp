#pragma once

#include "planner/answers/count_sheet_answer.hpp"
#include "planner/garden/open_sowings.hpp"

#include <vector>

namespace nightsow::planner {

/// The sowings as lines of a sheet, in their order.
[[nodiscard]] CountSheetAnswer count_sheet(const std::vector<OpenSowing>& open, Date today);

} // namespace nightsow::planner
