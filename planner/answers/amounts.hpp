#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/garden/load_garden.hpp"

#include <vector>

namespace nightsow::planner {

/// Says of each sowing how many seeds the plants wanted need, how many to sow for them (as many as
/// give them in 9 of 10 cases, else all) and the pots for these; warns where the packet is too
/// small. Packets and rules are those of the garden; a line without a packet is left as it is.
void add_amounts(const LoadedGarden& garden, std::vector<Sowing>& sowings);

/// What the sowings need: pots, labels (one a pot), parts of mixes, covers. Volumes are rounded up
/// to a tenth of a litre.
[[nodiscard]] Shopping shopping_for(const LoadedGarden& garden, const std::vector<Sowing>& sowings);

} // namespace nightsow::planner
