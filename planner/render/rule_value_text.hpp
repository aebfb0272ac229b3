#pragma once

#include "planner/answers/rules_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

/// A value with its range as exact as the catalogue has it: "12 °C (9.5 to 14.5)", or in plain
/// words.
[[nodiscard]] std::string rule_value_text(const RuleValue& value, const TextStyle& style);

/// One end of a value's range, with its unit: "9.5 °C", "6 months", "30 %".
[[nodiscard]] std::string range_end_text(const RuleValue& value,
                                         double end,
                                         const TextStyle& style);

/// The range in brackets behind a blank: " (9.5 to 14.5)"; empty where there is none.
[[nodiscard]] std::string range_text(const RuleValue& value, const TextStyle& style);

/// A gap's trial as a sentence, with the ends of the range set in.
[[nodiscard]] std::string trial_text(const RuleGap& gap, const TextStyle& style);

} // namespace nightsow::planner
