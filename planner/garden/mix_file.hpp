#pragma once

#include "climate/base/json_node.hpp"
#include "planner/garden/garden.hpp"

#include <vector>

namespace nightsow::planner {

/// Reads garden.json's "mix": {"mineral_share", "shrink", "mineral" and "organic" as {"pumice": 2},
/// "recipes": [{"name", "for": [taxa], and as above}]}. Throws InputError on what it is not.
void read_mix(Garden& garden, const JsonNode& node);

/// Reads garden.json's "pots": [{"depth", "top_cm", "base_cm", "deep_cm"}], one of a depth class.
[[nodiscard]] std::vector<PotSize> read_pot_sizes(const JsonNode& list);

} // namespace nightsow::planner
