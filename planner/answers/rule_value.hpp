#pragma once

#include "planner/answers/rules_answer.hpp"
#include "species-rules/explain.hpp"

namespace nightsow::planner {

/// The same value as answers carry it.
[[nodiscard]] RuleValue rule_value(const species_rules::ExplainedValue& value);

} // namespace nightsow::planner
