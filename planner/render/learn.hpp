#pragma once

#include "planner/answers/learn_answer.hpp"
#include "planner/answers/trial_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

// What the record says, and next year's trial, as text and as JSON: see answer_text.hpp and
// to_json.hpp.

[[nodiscard]] std::string learn_text(const LearnAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string learn_json(const LearnAnswer& answer);
[[nodiscard]] std::string trial_text(const TrialAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string trial_json(const TrialAnswer& answer);

} // namespace nightsow::planner
