#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/render/json_parts.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

/// Trays, and the season's work on them by date, as blocks of the plan's text; empty without trays.
[[nodiscard]] std::string work_text(const PlanAnswer& answer, const TextStyle& style);

/// Condition, days and spread of a first water.
[[nodiscard]] Json water_json(const FirstWater& water);

/// The plan's "lots" and "tasks".
[[nodiscard]] Json lots_json(const PlanAnswer& answer);
[[nodiscard]] Json tasks_json(const PlanAnswer& answer);

} // namespace nightsow::planner
