#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/render/json_parts.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

/// Trays, the season's work on them by date, and what is in no tray, as blocks of the plan's text;
/// empty without sowings.
[[nodiscard]] std::string work_text(const PlanAnswer& answer, const TextStyle& style);

/// Condition, days and spread of a first water.
[[nodiscard]] Json water_json(const FirstWater& water);

/// The plan's "lots", "no_day" and "tasks".
[[nodiscard]] Json lots_json(const PlanAnswer& answer);
[[nodiscard]] Json no_day_json(const PlanAnswer& answer);
[[nodiscard]] Json tasks_json(const PlanAnswer& answer);

} // namespace nightsow::planner
