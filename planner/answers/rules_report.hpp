#pragma once

#include "planner/answers/rules_answer.hpp"
#include "species-rules/catalogue.hpp"

#include <string_view>

namespace nightsow::planner {

[[nodiscard]] RulesListAnswer list_rules(const species_rules::Catalogue& catalogue);

/// The whole rule of a taxon with the origin of each value.
/// Throws UsageError when the catalogue does not know it, with the nearest right word.
[[nodiscard]] RuleShowAnswer show_rule(const species_rules::Catalogue& catalogue,
                                       std::string_view taxon);

} // namespace nightsow::planner
