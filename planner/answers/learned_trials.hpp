#pragma once

#include "planner/answers/known_sowings.hpp"
#include "planner/answers/learn_answer.hpp"

#include <vector>

namespace nightsow::planner {

/// One line a trial with a counted sowing, in the order of names: its arms, best first, and the
/// best against each other one.
[[nodiscard]] std::vector<LearnedTrialLine> learned_trials(
    const std::vector<const KnownSowing*>& sowings);

} // namespace nightsow::planner
