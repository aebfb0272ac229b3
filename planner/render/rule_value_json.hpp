#pragma once

#include "planner/answers/rules_answer.hpp"

#include <nlohmann/json_fwd.hpp>

namespace nightsow::planner {

/// A rule's value with its range and ground, and what it would be without the grower's own rules.
[[nodiscard]] nlohmann::ordered_json json_rule_value(const RuleValue& value);

[[nodiscard]] nlohmann::ordered_json json_rule_source(const RuleSource& source);

} // namespace nightsow::planner
