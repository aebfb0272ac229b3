#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/render/json_parts.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

// The plan beside the one saved last.

/// One change in words: "S04 Albuca spiralis: first water 12 Apr, was 5 Apr (7 days later); …".
[[nodiscard]] std::string change_text(const PlanChange& change, Date near);

/// A block of the plan's text: the weightiest changes, all of them when the reader asked why. Empty
/// where no plan was saved.
[[nodiscard]] std::string since_saved_text(const PlanAnswer& answer, const TextStyle& style);

/// The plan's "since_saved".
[[nodiscard]] Json since_saved_json(const PlanAnswer& answer);

/// The content of plans/<season>.json: the plan's JSON with what it was made from.
[[nodiscard]] std::string saved_plan_text(const PlanAnswer& answer, const PlanMarks& marks);

} // namespace nightsow::planner
