#pragma once

#include "planner/answers/learn_answer.hpp"
#include "planner/answers/review_answer.hpp"

#include <vector>

namespace nightsow::planner {

/// The lessons of a season that matter most, three at most: by the plants that each cost, roughly,
/// as far as the record tells it (weights are judgement). Requires: all of the review but its
/// lessons; the trials of the season.
[[nodiscard]] std::vector<Lesson> lessons_of(const ReviewAnswer& review,
                                             const std::vector<LearnedTrialLine>& trials);

} // namespace nightsow::planner
