#pragma once

#include "planner/answers/line_timing.hpp"
#include "planner/answers/work_answer.hpp"

namespace nightsow::planner {

/// Whether a treatment of the seed is needed or helpful.
[[nodiscard]] bool helps(
    const std::optional<species_rules::Choice<species_rules::Treatment>>& treatment);

/// Whether so much of the seed waits a year longer that it is worth a warning, and its pots are
/// kept for another cooling limb.
[[nodiscard]] bool keeps_for_another_season(const species_rules::Rule& rule);

/// What the work on a packet needs of its rule, its row and the usual year of its bench.
/// `water` is the day on which first water is expected; empty: not known.
[[nodiscard]] WorkFacts work_facts(const LineInput& input,
                                   BenchSeasons& seasons,
                                   const std::optional<climate::Season>& season,
                                   const std::optional<Date>& water);

} // namespace nightsow::planner
