#pragma once

#include "planner/model/establishment.hpp"
#include "species-rules/rule.hpp"

#include <string>

namespace nightsow::planner {

/// How a kind is sown by its rule, in a clean mineral mix. A cover that was written down stands in
/// the rule's place, unless it is empty; the word "none" is no cover.
[[nodiscard]] PotCare pot_care(const species_rules::Rule& rule, const std::string& cover);

} // namespace nightsow::planner
