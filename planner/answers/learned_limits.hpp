#pragma once

#include "planner/answers/known_sowings.hpp"
#include "planner/answers/learn_answer.hpp"
#include "planner/model/bench_seasons.hpp"

#include <vector>

namespace nightsow::planner {

/// One line a rule of cool starters with a watched sowing, in the order of names. The catalogue's
/// value is what the record is held against, also where the grower's own stands over it: that may
/// have come from these very sowings. Empty where the station has no phases.
[[nodiscard]] std::vector<LearnedLimitLine> learned_limits(
    const std::vector<const KnownSowing*>& sowings, BenchSeasons& seasons);

/// The rule that the record is held against: see above.
[[nodiscard]] const species_rules::Rule& held_against(const species_rules::RuleFor& rule);

/// The course of days on the bench in the season that holds first water; null where none is known.
/// Requires: first water is known, the station has phases.
[[nodiscard]] const SeedCourse* first_course_of(const WhatCame& told, BenchSeasons& seasons);

/// The files of rules that the lines justify, one a rule.
[[nodiscard]] std::vector<OfferedRules> offered_rules(
    const std::vector<LearnedLimitLine>& limits,
    const std::vector<LearnedGerminationLine>& germinations);

} // namespace nightsow::planner
