#pragma once

#include "planner/answers/count_sheet_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

/// The sheet to print: a line a sowing, with room for the pencil.
[[nodiscard]] std::string count_sheet_text(const CountSheetAnswer& answer, const TextStyle& style);

[[nodiscard]] std::string to_json(const CountSheetAnswer& answer);

} // namespace nightsow::planner
