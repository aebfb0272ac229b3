#pragma once

#include "planner/answers/today_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

/// "Frost, open bench: 1.2 °C is forecast for 22 Feb. …".
[[nodiscard]] std::string alarm_text(const WeatherAlarm& alarm, Date today, const TextStyle& style);

} // namespace nightsow::planner
