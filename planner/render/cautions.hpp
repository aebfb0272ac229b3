#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>
#include <string_view>

namespace nightsow::planner {

/// What to mind about a kind of plant, by its caution code. Throws std::logic_error on a code that
/// has no sentence.
[[nodiscard]] std::string_view caution_sentence(std::string_view code);

/// Every caution of a plan once, with the packets it concerns: those of the plants, heat mats where
/// one is used, and the dust of dry mixes. Empty when nothing is sown.
[[nodiscard]] std::string cautions_text(const PlanAnswer& answer, const TextStyle& style);

} // namespace nightsow::planner
