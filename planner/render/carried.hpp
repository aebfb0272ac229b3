#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/render/json_parts.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

/// The pots of the record as blocks of the plan's text, by what they do at present; empty without
/// pots.
[[nodiscard]] std::string carried_text(const PlanAnswer& answer, const TextStyle& style);

/// The plan's "carried".
[[nodiscard]] Json carried_json(const PlanAnswer& answer);

} // namespace nightsow::planner
