#pragma once

#include "planner/answers/known_sowings.hpp"
#include "planner/answers/learn_answer.hpp"
#include "planner/model/bench_seasons.hpp"

#include <vector>

namespace nightsow::planner {

/// The garden's own germination share, one line a rule with a counted sowing off the mat, in the
/// order of names, held against the catalogue's as the night limits are. What could have come of a
/// sowing by its last look is reckoned with the weather of its first season and the packet as it
/// was sown, without its germination test; with the garden's own night limit where `limits` offers
/// it. Empty where the station has no phases.
[[nodiscard]] std::vector<LearnedGerminationLine> learned_germinations(
    const std::vector<const KnownSowing*>& sowings,
    const std::vector<LearnedLimitLine>& limits,
    BenchSeasons& seasons);

} // namespace nightsow::planner
