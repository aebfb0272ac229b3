#pragma once

#include "planner/answers/reason.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

/// The reason as a sentence in plain words, with its values.
[[nodiscard]] std::string sentence(const Reason& reason, const TextStyle& style);

/// "13 °C", or "55 °F".
[[nodiscard]] std::string temperature_text(double degrees_c, const TextStyle& style);

} // namespace nightsow::planner
