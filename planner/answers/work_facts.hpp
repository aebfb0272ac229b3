#pragma once

#include "planner/answers/line_timing.hpp"
#include "planner/answers/work_answer.hpp"

namespace nightsow::planner {

/// What the work on a packet needs of its rule, its row and the usual year of its bench.
/// `water` is the day on which first water is expected; empty: not known.
[[nodiscard]] WorkFacts work_facts(const LineInput& input,
                                   BenchSeasons& seasons,
                                   const std::optional<climate::Season>& season,
                                   const std::optional<Date>& water);

} // namespace nightsow::planner
