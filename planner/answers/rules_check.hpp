#pragma once

#include "planner/answers/rules_answer.hpp"
#include "species-rules/catalogue.hpp"

#include <memory>
#include <optional>
#include <span>

namespace nightsow::planner {

/// Every fault of files of rules, each laid over the catalogue after those before it: what is wrong
/// in the file itself, and what shows only beside the catalogue (overrides.hpp). `sources` are the
/// grower's own.
[[nodiscard]] RulesCheckAnswer check_rule_files(
    const std::shared_ptr<const species_rules::Catalogue>& catalogue,
    std::span<const species_rules::RuleText> files,
    const std::optional<species_rules::RuleText>& sources);

} // namespace nightsow::planner
