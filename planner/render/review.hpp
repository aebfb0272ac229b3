#pragma once

#include "planner/answers/review_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

// The season in one page, as text and as JSON: see answer_text.hpp and to_json.hpp.

[[nodiscard]] std::string review_text(const ReviewAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string review_json(const ReviewAnswer& answer);

/// A lesson in plain words.
[[nodiscard]] std::string lesson_text(const Lesson& lesson);

} // namespace nightsow::planner
