#pragma once

#include "planner/answers/learn_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

/// The garden's own night limits and germination shares, what the record cannot tell and what it
/// would need, and the files of rules that it justifies. Whole lines, an empty one before each
/// block; empty without limits.
[[nodiscard]] std::string learned_limits_text(const LearnAnswer& answer, const TextStyle& style);

} // namespace nightsow::planner
