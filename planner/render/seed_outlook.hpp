#pragma once

#include "planner/answers/seed_outlook_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

[[nodiscard]] std::string seed_outlook_text(const SeedOutlookAnswer& answer,
                                            const TextStyle& style);

[[nodiscard]] std::string to_json(const SeedOutlookAnswer& answer);

} // namespace nightsow::planner
