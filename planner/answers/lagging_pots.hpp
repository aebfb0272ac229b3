#pragma once

#include "planner/answers/carried_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/model/bench_seasons.hpp"

#include <vector>

namespace nightsow::planner {

/// Adds behind_expected to growing pots of which fewer came by the last count than nine in ten
/// cases let expect. An account takes its time: it is asked for only where the main look was taken
/// and less than half came. Requires: pots of the garden's records, at a place with phases.
void tell_lagging(const LoadedGarden& garden, BenchSeasons& seasons, std::vector<CarriedPot>& pots);

} // namespace nightsow::planner
