#pragma once

#include "planner/render/text_style.hpp"

#include <string>
#include <string_view>

namespace nightsow::planner {

// Figures as people read them. Temperatures as points: temperature_text in words.hpp.

/// One decimal, left out where it is 0: "5", "1.3".
[[nodiscard]] std::string number_text(double number);

/// "17".
[[nodiscard]] std::string whole_text(double number);

/// A difference of temperatures: "2.0 K", "3.6 °F"; with its sign "+2.0 K".
[[nodiscard]] std::string difference_text(double kelvin, const TextStyle& style, bool sign = false);

/// "none", "hardly any", "about 1 in 4", "about half", "about 8 in 10", "nearly all", "all"; goes
/// with "of".
[[nodiscard]] std::string share_text(double share);

/// "65 %", "99.8 %".
[[nodiscard]] std::string percent_text(double share);

/// "1 day", "3 days"; years under one in months.
[[nodiscard]] std::string counted_text(double number, std::string_view noun);

/// "33.0° S, 19.0° E".
[[nodiscard]] std::string place_text(double latitude, double longitude);

} // namespace nightsow::planner
